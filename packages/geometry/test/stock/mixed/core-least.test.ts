import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type KnifeSpec, ledgerBodies, makeKnife } from "../../../src/index.js";
import { coreBudget } from "../../../src/stock/mixed/core-line.js";
import { coreReport, forgedThicknessAt, leastBudget } from "../../../src/stock/mixed/core-report.js";
import { planMixed } from "../../../src/stock/mixed/plan-mixed.js";
import type { CladSpec } from "../../../src/stock/mixed/spec.js";
import { shopWith } from "../fixtures.js";
import { petty, pettyStack } from "./stacks.js";

type Stations = KnifeSpec["blade"]["thickness"];
const at = (mm: number) => ({ kind: "distance", mm }) as const;

/** An invented petty, 150 mm, that thins from 3 to 2.4 over 135 mm and then to 0.4 at the tip. */
const knifeWith = (thickness: Stations, edgeThickness: KnifeSpec["blade"]["bevel"]["edgeThickness"] = 0.3) =>
  makeKnife({
    steel: { name: "1095" },
    blade: {
      outline: { family: "petty", edgeLength: 150, heelHeight: 32 },
      ricasso: 8,
      thickness,
      bevel: { form: "flat", height: "full", edgeThickness },
      edgeAngle: 0.3,
    },
    tang: { form: "hidden", length: 100, heights: { front: 16, middle: 13, butt: 9 } },
  });
const thinTip = knifeWith([
  { at: { kind: "heel" }, is: 3 },
  { at: at(135), is: 2.4 },
  { at: { kind: "tip" }, is: 0.4 },
]);
const CLAD: CladSpec = {
  kind: "clad",
  core: { steel: { name: "1095" }, thickness: 1.55 },
  cladding: { steel: { name: "1020" }, thickness: 3.2 },
  width: 35,
};

describe("a core that leaves the edge toward the tip, ahead of every place of the table", () => {
  const plan = planMixed(thinTip, ledgerBodies(thinTip), shopWith({ rack: [] }), CLAD);

  test("stops, and names the tip", () => {
    const places = plan.core?.stations ?? [];
    expect(Math.min(...places.map(({ budget }) => budget.edge))).toBeCloseTo(0.14, 3);
    const found = plan.findings.filter(
      ({ code }) => code.startsWith("core-at") || code.startsWith("core-near"),
    );
    expect(found).toMatchObject([
      { code: "core-at-edge", severity: "stop", values: { x: { quantity: "length", value: 150 } } },
    ]);
  });

  test("by hand: the core at the tip is its share of what is forged there, less the edge", () => {
    const share = plan.core?.share ?? Number.NaN;
    expect(plan.core?.least.x).toBe(150);
    expect(plan.core?.least.budget.edge).toBeCloseTo((forgedThicknessAt(thinTip, 150) * share - 0.3) / 2, 12);
    expect(plan.core?.least.budget.edge).toBeLessThan(0);
  });

  test("a warning where some is left, with the place and the room", () => {
    const thicker = { ...CLAD, core: { ...CLAD.core, thickness: 1.8 } };
    const { findings, core } = planMixed(thinTip, ledgerBodies(thinTip), shopWith({ rack: [] }), thicker);
    expect(core?.least.budget.edge).toBeGreaterThan(0);
    expect(findings.find(({ code }) => code === "core-near-edge")).toMatchObject({
      severity: "warn",
      values: { x: { value: 150 } },
    });
  });
});

test("the table keeps its places: heel, quarters, nine tenths, and the stations of the thickness", () => {
  const input = { knife: thinTip, stack: CLAD, cleaning: 0.2, keptByScale: 1, centring: 0.125 };
  expect(coreReport(input).stations.map(({ x }) => x)).toEqual([0, 37.5, 75, 112.5, 135]);
  const straight = knifeWith([
    { at: { kind: "heel" }, is: 3 },
    { at: { kind: "tip" }, is: 1 },
  ]);
  // 135 is there although no station is given near the tip.
  expect(coreReport({ ...input, knife: straight }).stations.map(({ x }) => x)).toEqual([
    0, 37.5, 75, 112.5, 135,
  ]);
});

describe("the least budget", () => {
  test("is met in a notch that is narrower than a millimetre, on either side of a step too", () => {
    const notched = knifeWith([
      { at: { kind: "heel" }, is: 3 },
      { at: at(60.3), is: 2.9 },
      { at: at(60.5), is: 1.4 },
      { at: at(60.7), is: 2.9 },
      { at: { kind: "tip" }, is: 2 },
    ]);
    const least = leastBudget(notched, 0.3);
    expect(least.x).toBeCloseTo(60.5, 5);
    expect(least.budget.edge).toBeCloseTo((forgedThicknessAt(notched, 60.5) * 0.3 - 0.3) / 2, 5);
    const thickEdge = knifeWith(
      [
        { at: { kind: "heel" }, is: 3 },
        { at: { kind: "tip" }, is: 2 },
      ],
      [
        { at: { kind: "heel" }, is: 0.3 },
        { at: at(40.4), is: 0.3 },
        { at: at(40.5), is: 0.9 },
        { at: at(40.6), is: 0.3 },
        { at: { kind: "tip" }, is: 0.3 },
      ],
    );
    expect(leastBudget(thickEdge, 0.3).x).toBeCloseTo(40.5, 5);
  });

  test("no place between heel and tip has less", () => {
    const knives = [thinTip, petty(), petty({ apex: 0.1 })];
    fc.assert(
      fc.property(
        fc.constantFrom(...knives),
        fc.double({ min: 0.05, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (knife, share, place) => {
          const x = place * knife.outline.edgeLength;
          const { budget } = leastBudget(knife, share);
          // Laws are straight between their stations, and so is the budget.
          expect(budget.edge).toBeLessThanOrEqual(
            coreBudget(knife, x, forgedThicknessAt(knife, x) * share).edge + 1e-6,
          );
        },
      ),
      { seed: 2806, numRuns: 200 },
    );
  });

  test("where the apex leaves the core, that is what is said", () => {
    const off = petty({ apex: 0.9 });
    const { budget } = leastBudget(off, 0.05);
    expect(budget.apex).toBeLessThan(0);
    const stack = { ...pettyStack(0.5, 5), cleaning: { value: 0, low: 0, high: 0 } };
    const { findings } = planMixed(off, ledgerBodies(off), shopWith({ rack: [] }), stack);
    expect(findings.map(({ code }) => code)).toContain("core-not-at-apex");
  });
});
