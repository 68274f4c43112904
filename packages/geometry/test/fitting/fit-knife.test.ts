import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findConflict, fitKnife } from "../../src/fitting/fit-knife.js";
import type { FitAnswer, FitProblem } from "../../src/fitting/fit-problem.js";
import { SLAB_KNIFE } from "../blade/interval-knives.js";
import { expectWithin } from "../numeric/close.js";
import { balance, dimension, mass } from "./grid.js";
import {
  balanceAsk,
  balanceBy,
  DRAWN_MASS,
  DRAWN_WEIGHT,
  GRAMS_PER_MM,
  massAsk,
  massBy,
  PRISM,
  thickness,
  weight,
} from "./prism.js";

function fitted(problem: FitProblem): FitAnswer {
  const answer = fitKnife(problem);
  if (answer === undefined) throw new Error("a knife can be built");
  return answer;
}

const sizesOf = ({ knife }: FitAnswer) => knife.dimensions.map(({ sizes }) => sizes?.[0]);

describe("a prism, by hand", () => {
  it("weighs and balances as its sums say", () => {
    const answer = fitted({
      spec: PRISM,
      dimensions: [thickness(3, 5), weight(5, 40)],
      asks: [massAsk({ atMost: 1000 }), balanceAsk({ atMost: 1000 })],
    });
    expect(answer.isMet).toBe(true);
    expectWithin(answer.knife.figures[0] ?? 0, DRAWN_MASS + DRAWN_WEIGHT, 1e-9);
    expectWithin(answer.knife.figures[1] ?? 0, balanceBy(4, DRAWN_WEIGHT), 1e-9);
    // What is met as drawn is left as drawn.
    expect(sizesOf(answer)).toEqual([undefined, undefined]);
    expect(answer.knife.change).toBe(0);
  });

  it("is thinned by as much as the mass is too great, and rounded to the lighter side", () => {
    const answer = fitted({ spec: PRISM, dimensions: [thickness(3, 5)], asks: [massAsk({ atMost: 120 })] });
    const ideal = (120 - DRAWN_WEIGHT) / GRAMS_PER_MM;
    expectWithin(answer.ideal.change, ((ideal - 4) / 2) ** 2 / 2, 1e-8);
    expect(ideal).toBeGreaterThan(3.6);
    expect(sizesOf(answer)).toEqual([3.6]);
    expectWithin(answer.knife.figures[0] ?? 0, massBy(3.6, DRAWN_WEIGHT), 1e-9);
  });

  it("shares a mass between two dimensions by the squares of their ranges", () => {
    // Grams for a whole range: 2 mm of thickness 59.66, 20 g of weight 20; shares as their squares, by Lagrange.
    const fine = { thickness: thickness(3, 5, [1e-4]), weight: weight(5, 25, [1e-3]) };
    const missing = DRAWN_MASS + DRAWN_WEIGHT - 120;
    const answer = fitted({
      spec: PRISM,
      dimensions: [fine.thickness, fine.weight],
      asks: [massAsk({ atMost: 120 })],
    });
    const whole = (2 * GRAMS_PER_MM) ** 2 + 20 ** 2;
    const [mm = 0, grams = 0] = sizesOf(answer);
    expectWithin(mm, 4 - (missing * 4 * GRAMS_PER_MM) / whole, 5e-3);
    expectWithin(grams, DRAWN_WEIGHT - (missing * 400) / whole, 0.15);
    expectWithin(answer.ideal.change, missing ** 2 / whole / 2, 1e-8);
  });

  it("finds the weight that a balance needs", () => {
    const answer = fitted({
      spec: PRISM,
      dimensions: [weight(0, 40)],
      asks: [balanceAsk({ atLeast: -12, atMost: -10 })],
    });
    expect(answer.isMet).toBe(true);
    const [grams = 0] = sizesOf(answer);
    // The first whole gram at which it balances at −10 or behind.
    expect(balanceBy(4, grams)).toBeLessThanOrEqual(-10);
    expect(balanceBy(4, grams - 1)).toBeGreaterThan(-10);
  });

  it("takes a bevel angle from thickness, edge and height", () => {
    const spec = {
      ...PRISM,
      blade: { ...PRISM.blade, bevel: { form: "flat" as const, height: 15, edgeThickness: 0.5 } },
    };
    const dimensions = [
      { ...thickness(3, 5), name: "a" },
      dimension(spec, "blade.bevel.edgeThickness", 0.3, 0.8, 0.05),
      dimension(spec, "blade.bevel.height", 12, 20, 0.5),
    ];
    const answer = fitted({
      spec,
      dimensions,
      asks: [{ name: "angle", figure: { kind: "bevel-angle", side: "right" }, atMost: 0.1, scale: 0.002 }],
    });
    expect(answer.isMet).toBe(true);
    const [t = 4, e = 0.5, b = 15] = sizesOf(answer).map((size, i) => size ?? [4, 0.5, 15][i]);
    expectWithin(answer.knife.figures[0] ?? 0, Math.atan((t - e) / 2 / b), 1e-12);
    expect(answer.knife.figures[0]).toBeLessThanOrEqual(0.1);
  });
});

describe("what can be set at the bench", () => {
  it("is finer where coarse steps miss a narrow ask, and that is said", () => {
    const ask = massAsk({ atLeast: 119.9, atMost: 120.1 });
    const answer = fitted({ spec: PRISM, dimensions: [thickness(3, 5)], asks: [ask] });
    // 0.1 mm are 3 g, 0.05 mm 1.5 g; 3.69 mm give 120.07 g.
    expect(answer.knife.fineness).toBe(2);
    expect(sizesOf(answer)).toEqual([3.69]);
    expect(answer.isMet).toBe(true);
  });

  it("misses an ask that lies between the finest steps, though it is no quarrel", () => {
    const ask = massAsk({ atLeast: 119.9, atMost: 119.91 });
    const answer = fitted({ spec: PRISM, dimensions: [thickness(3, 5, [0.1])], asks: [ask] });
    expect(answer.isMet).toBe(false);
    expect(answer.ideal.miss).toBe(0);
    expect(answer.conflict).toBeUndefined();
    expect(answer.knife.miss).toBeGreaterThan(0);
  });

  it("is never a knife that breaks a rule: an edge thicker than its blade", () => {
    const edge = dimension(PRISM, "blade.bevel.edgeThickness", 0.05, 8, 0.05);
    const heavy = fitted({ spec: PRISM, dimensions: [edge], asks: [massAsk({ atLeast: 500 })] });
    expect(heavy.isMet).toBe(false);
    expect(sizesOf(heavy)[0]).toBeLessThanOrEqual(4);
    const never = dimension(PRISM, "blade.bevel.edgeThickness", 6, 8, 0.05);
    expect(fitKnife({ spec: PRISM, dimensions: [never], asks: [massAsk({ atLeast: 500 })] })).toBeUndefined();
  });

  it("comes into the range from outside it", () => {
    const answer = fitted({ spec: PRISM, dimensions: [thickness(3, 3.5)], asks: [massAsk({ atMost: 200 })] });
    expect(answer.isMet).toBe(true);
    expect(sizesOf(answer)).toEqual([3.5]);
  });
});

describe("what makes no sense", () => {
  const dimensions = [thickness(3, 5)];
  const asks = [massAsk({ atMost: 120 })];
  it.each([
    ["a range without width", { dimensions: [thickness(4, 4)], asks }],
    ["a range the wrong way round", { dimensions: [thickness(5, 3)], asks }],
    ["a limit that is no number", { dimensions, asks: [massAsk({ atMost: Number.NaN })] }],
    ["misses counted in nothing", { dimensions, asks: [{ ...massAsk({ atMost: 120 }), scale: 0 }] }],
  ])("is refused: %s", (_, problem) => {
    expect(() => fitKnife({ spec: PRISM, ...problem })).toThrow(RangeError);
    expect(() => findConflict({ spec: PRISM, ...problem })).toThrow(RangeError);
  });
});

describe("relations", () => {
  const problem: FitProblem = {
    spec: SLAB_KNIFE,
    dimensions: [
      dimension(SLAB_KNIFE, "tang.buttThickness", 2.4, 4),
      dimension(SLAB_KNIFE, "blade.thickness[0].is", 3.4, 4.8),
      dimension(SLAB_KNIFE, "handle.slabs.thickness", 6, 10),
    ],
    asks: [mass({ atMost: 156 }), balance({ atLeast: -32, atMost: -29 })],
  };

  it("do not hang on the order of dimensions and asks", () => {
    const first = fitted(problem);
    const named = ({ knife }: FitAnswer) =>
      Object.fromEntries(knife.dimensions.map(({ dimension: { name }, sizes }) => [name, sizes]));
    for (const order of [
      [0, 2, 1],
      [1, 0, 2],
      [1, 2, 0],
      [2, 0, 1],
      [2, 1, 0],
    ]) {
      const dimensions = order.flatMap((i) => problem.dimensions[i] ?? []);
      const other = fitted({ ...problem, dimensions, asks: [...problem.asks].reverse() });
      expect(named(other)).toEqual(named(first));
      expect([...other.knife.figures].reverse()).toEqual(first.knife.figures);
      expect(other.ideal).toEqual(first.ideal);
    }
  });

  it("come to the same when they are asked twice", () => {
    expect(fitted(problem).knife).toEqual(fitted(problem).knife);
  });

  it("are never worse in a wider range, nor with an ask less", () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 4, maxLength: 4 }),
        part,
        ([a = 0, b = 0, c = 0, d = 0], level) => {
          const narrow = [thickness(3.9 - 0.5 * a, 4.1 + 0.5 * b), weight(8 - 2 * c, 12 + 8 * d)];
          const wide = [
            thickness(3.9 - 0.5 * a - 0.3, 4.1 + 0.5 * b + 0.2),
            weight(8 - 2 * c - 3, 12 + 8 * d + 5),
          ];
          const asks = [massAsk({ atMost: 118 + 6 * level }), balanceAsk({ atMost: balanceBy(4, 10) - 2 })];
          const [of, ofWide] = [narrow, wide].map((dimensions) => fitted({ spec: PRISM, dimensions, asks }));
          const ofOne = fitted({ spec: PRISM, dimensions: narrow, asks: asks.slice(0, 1) });
          if (of === undefined || ofWide === undefined) throw new Error("a knife can be built");
          for (const better of [ofWide, ofOne]) {
            expect(better.ideal.miss).toBeLessThanOrEqual(of.ideal.miss + 1e-5);
            // Changes are counted in widths of the range, which are no smaller.
            if (of.ideal.miss === 0) expect(better.ideal.change).toBeLessThanOrEqual(of.ideal.change + 1e-6);
          }
        },
      ),
      { seed: 20263, numRuns: 25 },
    );
  });
});
