import { type GateRoute, ledgerBodies, planStock, stageNeed } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { drawnHeight } from "../orders/drawn.js";
import { forgedVolume } from "../orders/forged.js";
import { DENSITY } from "../orders/hand-sums.js";
import { drawingOf, loadOrder } from "../orders/load.js";
import { ORDERS } from "../orders/orders.js";

// Mass of the one solid bar of each order, worked out by hand: forged volume × 7.85 g/cm³ ÷ 0.988 for every heat. Where ours is
// not within 2 % of it, the forged blade is not: docs/orders.md says why, and the second computation here which is right.
const BARS = [
  { code: "CK-2603", hand: 622, heats: 12, asHand: false },
  { code: "BN-2608", hand: 131, heats: 7, asHand: true },
  { code: "SL-2602", hand: 256, heats: 10, asHand: false },
] as const;
/** The tolerance of the hand checks. */
const SHARE = 0.02;
/** Of the second computation, which sums on a coarse grid. */
const GRID = 0.003;
const KEPT = 0.988;

describe.each(BARS)("$code at the saw", async ({ code, hand, heats, asHand }) => {
  const order = ORDERS.find((one) => one.code === code);
  if (order === undefined) throw new Error(`no order ${code}`);
  const loaded = await loadOrder(order.name);
  const { job, knife } = loaded;
  const bodies = ledgerBodies(knife);
  const [plan] = planStock(bodies, job.shop, { ...knife.forging, steel: job.spec.steel.name }).plans;
  const { losses, limits } = job.shop;
  const route: GateRoute = {
    losses,
    limits,
    forging: knife.forging,
    ...(plan === undefined ? {} : { stack: plan }),
  };
  const need = stageNeed(bodies, route, "cut")?.value ?? Number.NaN;

  test("is made of one solid bar", () => {
    expect(plan?.bars).toBe(1);
    expect(knife.forging.heats).toBe(heats);
  });

  test("the hand's figure comes out of its own trapezoid", () => {
    const byHand = (forgedVolume(order, "trapezoid") * DENSITY) / KEPT ** heats;
    expect(Math.abs(byHand / hand - 1)).toBeLessThan(0.01);
  });

  test("ours is the model's rule, summed apart from the library and divided heat by heat", () => {
    const drawn = drawingOf(loaded);
    let mass = forgedVolume(order, "face allowance everywhere", (x) => drawnHeight(drawn, x)) * DENSITY;
    for (let heat = 0; heat < heats; heat++) mass /= KEPT;
    expect(Math.abs(need / mass - 1)).toBeLessThan(GRID);
  });

  test(
    asHand ? "within 2 % of the hand's" : "more than the hand's by over 2 %, for the forged blade is",
    () => {
      if (asHand) expect(Math.abs(need / hand - 1)).toBeLessThan(SHARE);
      else expect(need / hand - 1).toBeGreaterThan(SHARE);
    },
  );
});
