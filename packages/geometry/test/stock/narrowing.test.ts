import { describe, expect, test } from "vitest";
import { DEFAULT_LIMITS, DEFAULT_LOSSES } from "../../src/stock/defaults.js";
import { narrowingOnEdge } from "../../src/stock/narrowing.js";
import { planStock } from "../../src/stock/plan.js";
import { effortTier, plainestNarrowed, rankStacks } from "../../src/stock/ranking.js";
import type { FeasibleStack } from "../../src/stock/search.js";
import type { RackBar, ShopSpec } from "../../src/stock/shop.js";
import { exactly, NO_LOSSES, plainBodies, shopWith } from "./fixtures.js";
import { forgeForwards } from "./forward.js";

const FORGING = { heats: 9, weldingHeats: 3 };
/** A small knife, 35 high and 4.4 thick from the hammer, of about 130 g. */
const SMALL = plainBodies(16_500, [
  { x: -60, height: 20, area: 80, thickness: 4.4 },
  { x: 0, height: 35, area: 140, thickness: 4.4 },
  { x: 80, height: 25, area: 80, thickness: 3.5 },
]);
const flat = (width: number, changes: Partial<RackBar> = {}): RackBar => ({
  name: `5 x ${width}`,
  width,
  thickness: 5,
  length: 500,
  ...changes,
});
const best = (bar: RackBar, changes: Partial<ShopSpec> = {}) =>
  planStock(SMALL, shopWith({ rack: [bar], ...changes }), FORGING).plans[0];

describe("how much is driven in on edge", () => {
  test.each([
    // A fifth of 45, nine times as high as thick.
    [36, 45, 5, 0.2],
    // A tenth is light work however thin the bar is, and stout bars take heavy blows.
    [36, 40, 5, 0],
    [36, 60, 20, 0],
    [30, 60, 19.9, 0.5],
    // The blade is higher.
    [50, 45, 5, 0],
  ])("%f from a bar %f x %f: %f", (needed, height, thickness, share) => {
    expect(narrowingOnEdge(needed, { height, thickness }, DEFAULT_LIMITS)).toBeCloseTo(share, 12);
  });
});

describe("a bar that is a little too high", () => {
  test("stays one bar up to the most narrowing, with a warning from a tenth on", () => {
    let before = Number.POSITIVE_INFINITY;
    for (let width = 35; width <= 50; width++) {
      const plan = best(flat(width));
      expect(plan?.bars, `${width}`).toBe(1);
      const warned = plan?.findings.some(({ code }) => code === "narrowed-on-edge") === true;
      expect(warned, `${width}`).toBe(35 < 0.9 * width);
      expect(plan?.narrowing !== undefined, `${width}`).toBe(warned);
      // Of a wider bar it takes less length, never more.
      expect(plan?.cutLength).toBeLessThanOrEqual(before);
      before = plan?.cutLength ?? 0;
    }
    expect(best(flat(51))?.bars).not.toBe(1);
  });

  test("the shop's own limit moves that", () => {
    const limits = (mostNarrowing: number) => ({ limits: { ...DEFAULT_LIMITS, mostNarrowing } });
    expect(best(flat(51), limits(0.32))?.bars).toBe(1);
    expect(best(flat(45), limits(0.2))?.bars).not.toBe(1);
    // A tenth goes at any rate.
    expect(best(flat(38), limits(0))?.bars).toBe(1);
    expect(best(flat(39), limits(0))?.bars).not.toBe(1);
  });

  test("the warning says how many times as high as thick, and to what and how long it could be sawn", () => {
    const plan = best(flat(45));
    const [finding] = plan?.findings ?? [];
    expect(finding).toMatchObject({ code: "narrowed-on-edge", severity: "warn", path: "rack[0]" });
    expect(finding?.values).toMatchObject({
      times: { quantity: "count", value: 9 },
      most: { quantity: "count", value: 3 },
      // 35 / 0.9, down to half a millimetre.
      sawn: { quantity: "length", value: 38.5 },
      length: { quantity: "length", value: plan?.narrowing?.sawn?.cutLength },
    });
    expect(finding?.text).toContain("{sawn}");
  });

  test.each(["fraction", "skin"] as const)(
    "sawn down it feeds the blade forwards, heat by heat, and a step less does not: %s",
    (scaleModel) => {
      const losses = { ...DEFAULT_LOSSES, scaleModel };
      const shop = shopWith({ rack: [flat(48)], losses, cutStep: 2.5 });
      const bodies = { ...SMALL, forgedSurface: 16_000 };
      const [plan] = planStock(bodies, shop, FORGING).plans;
      const { width = 0, cutLength = 0 } = plan?.narrowing?.sawn ?? {};
      const needed = plan?.ledgerHigh.find(({ row }) => row === "forged-blade")?.volume ?? 0;
      const fed = (length: number): number =>
        forgeForwards({
          bars: 1,
          width,
          thickness: 5,
          length,
          losses,
          side: "high",
          ...FORGING,
          reduction: shop.limits.minWeldReduction,
          spread: shop.limits.weldSpreadShare,
          forgedSurface: bodies.forgedSurface,
        }).forged;
      expect(cutLength).toBeGreaterThan(plan?.cutLength ?? 0);
      expect(fed(cutLength) / needed).toBeGreaterThan(1 - 1e-9);
      expect(fed(cutLength - 2.5)).toBeLessThan(needed);
    },
  );

  test("nothing lost: what is sawn off is made up for to the millimetre", () => {
    const plan = best(flat(50), { losses: NO_LOSSES, cutStep: 0.1 });
    // 16 500 mm³ of 50 x 5, and of 38.5 x 5.
    expect(plan?.cutLength).toBeCloseTo(75, 6);
    const { width, cutLength } = plan?.narrowing?.sawn ?? {};
    expect([width, cutLength]).toEqual([38.5, expect.closeTo(85.8, 6)]);
  });

  test("no sawing is proposed that the bars in hand are too short for", () => {
    const plan = best(flat(50, { length: 84 }), { losses: NO_LOSSES, cutStep: 0.1 });
    expect(plan?.bars).toBe(1);
    expect(plan?.narrowing).toBeDefined();
    expect(plan?.narrowing).not.toHaveProperty("sawn");
    expect(plan?.findings[0]?.text).not.toContain("{sawn}");
  });

  test("a stack's bars are sawn down, so that the dressed billet is narrowed by light blows only", () => {
    const thick = plainBodies(60_000, [{ x: 0, height: 60, area: 360, thickness: 6.4 }]);
    const rack = [{ name: "70 x 5", width: 70, thickness: 5 }];
    const losses = { ...NO_LOSSES, weldDressingPerSide: exactly(1.5) };
    const shop = shopWith({ rack, losses, limits: { ...DEFAULT_LIMITS, maxBars: 2 } });
    const [plan] = planStock(thick, shop, FORGING).plans;
    const { width = 0 } = plan?.narrowing?.sawn ?? {};
    expect(plan?.bars).toBe(2);
    const dressed = (bar: number): number => bar / 0.7 ** 0.3 - 3;
    expect(plan?.narrowing?.share).toBeCloseTo(1 - 60 / dressed(70), 9);
    expect(1 - 60 / dressed(width)).toBeLessThanOrEqual(0.1);
    expect(1 - 60 / dressed(width + 0.5)).toBeGreaterThan(0.1);
  });
});

describe("its place among the plans", () => {
  const stack = (waste: number, joints: number, narrowing = 0, reach = 0): FeasibleStack => ({
    barIndex: 0,
    bars: joints + 1,
    layers: "flat",
    cutLength: 100,
    waste,
    // Dearer where less is wasted, so that no plan is better in nothing.
    cost: 1000 - waste,
    joints,
    heats: joints === 0 ? 9 : 12,
    reach,
    narrowing,
  });
  const order = (...stacks: FeasibleStack[]): FeasibleStack[] =>
    rankStacks([...stacks].reverse(), DEFAULT_LIMITS.reach);

  test("behind a bar that need not be, whatever steel that wastes; before four bars; before fullers", () => {
    const plain = stack(300, 0);
    const narrowed = stack(110, 0, 0.2);
    const four = stack(480, 3);
    const fullers = stack(100, 0, 0, 0.7);
    expect(order(fullers, four, narrowed, plain)).toEqual([plain, narrowed, four, fullers]);
  });

  test("the first of a rack of the one bar is that bar, not the stack that saves the narrowing", () => {
    const narrowed = stack(110, 0, 0.2);
    const five = stack(490, 4);
    expect(order(five, narrowed)).toEqual([narrowed, five]);
    expect(effortTier(five, DEFAULT_LIMITS.reach, narrowed)).toBe("welded-instead");
  });

  test("a stack that wastes less stands where its waste puts it, as it does before a bar that is not narrowed", () => {
    const narrowed = stack(300, 0, 0.2);
    const two = stack(150, 1);
    expect(order(narrowed, two)).toEqual([two, narrowed]);
  });

  test("what is narrowed and welded more stands behind what is only welded", () => {
    const narrowed = stack(110, 0, 0.25);
    const both = stack(200, 1, 0.2);
    const welded = stack(250, 1);
    expect(order(both, welded, narrowed)).toEqual([narrowed, welded, both]);
    expect(plainestNarrowed([both, narrowed, welded], DEFAULT_LIMITS.reach)).toBe(narrowed);
  });

  test("less narrowing is an advantage of its own: a taller bar does not crowd out a lower one", () => {
    const rack = [flat(44, { pricePerKg: 5 }), flat(40, { pricePerKg: 9 })];
    const plans = planStock(SMALL, shopWith({ rack, cutStep: 0.1 }), FORGING).plans;
    expect(plans.filter(({ bars }) => bars === 1)).toHaveLength(2);
  });

  test("each place is told with its reason", () => {
    const { plans } = planStock(
      SMALL,
      shopWith({ rack: [flat(40), flat(36), flat(40, { length: 900 })] }),
      FORGING,
    );
    const codes = plans.map(({ bars, why }) => `${bars} ${why[0]?.code}`);
    expect(codes[0]).toMatch(/^1 /);
    expect(codes.some((code) => /welded-instead|needs-narrowing/.test(code))).toBe(true);
    for (const { why } of plans) for (const { text } of why) expect(text).not.toBe("");
  });
});
