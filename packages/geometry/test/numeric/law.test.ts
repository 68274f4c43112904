import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Law, type LawPoint } from "../../src/numeric/law.js";
import { expectWithin } from "./close.js";

const SEED = 20_261_125;
const points = (...pairs: readonly (readonly [number, number])[]): LawPoint[] =>
  pairs.map(([at, is]) => ({ at, is }));

describe("a straight law", () => {
  const law = Law.straight(points([10, 4], [0, 6], [30, 1]));

  it("runs straight between stations, whatever their order, and holds its end values", () => {
    expect([-5, 0, 5, 10, 20, 30, 99].map((x) => law.valueAt(x))).toEqual([6, 6, 5, 4, 2.5, 1, 1]);
    expect([-5, 5, 20, 99].map((x) => law.slopeAt(x))).toEqual([0, -0.2, -0.15, 0]);
  });

  it("steps where two stations share a place", () => {
    const step = Law.straight(points([0, 2], [10, 4], [10, 7], [20, 7]));
    expectWithin(step.valueAt(10 - 1e-9), 4, 1e-8);
    expectWithin(step.valueAt(10 + 1e-9), 7, 1e-8);
  });

  it("raised to a least value is the larger of the two everywhere", () => {
    for (const least of [0, 1, 1.5, 4, 5, 7]) {
      const raised = law.atLeast(least);
      for (let x = -2; x <= 34; x += 0.37) {
        expectWithin(raised.valueAt(x), Math.max(least, law.valueAt(x)), 1e-14, `least ${least} at ${x}`);
      }
    }
  });

  it("keeps one station as a constant", () => {
    expect(Law.constant(3).valueAt(-7)).toBe(3);
    expect(Law.constant(3).breaks).toEqual([]);
    expect(Law.straight(points([5, 3])).valueAt(100)).toBe(3);
  });
});

describe("a smooth law by hand", () => {
  // Stations 0, 2, 3, 7 with values 1, 5, 6, 4: steps 2, 1, 4; secants 2, 1, −1/2.
  // Second slope: w1 = 2·1 + 2 = 4, w2 = 1 + 2·2 = 5, so 9/(4/2 + 5/1) = 9/7. Third: secants of opposite sign, so 0.
  // First: ((2·2 + 1)·2 − 2·1)/3 = 8/3. Last: ((2·4 + 1)·(−1/2) − 4·1)/5 = −17/10, larger than 3 × 1/2 with the secants
  // turning: limited to −3/2.
  const law = Law.smooth(points([0, 1], [2, 5], [3, 6], [7, 4]));
  const slopes = [8 / 3, 9 / 7, 0, -3 / 2];

  it("has the slopes of Fritsch and Butland with limited ends", () => {
    [0, 2, 3, 7].forEach((x, i) => {
      expectWithin(law.slopeAt(x), slopes[i] as number, 1e-14, `slope at ${x}`);
    });
  });

  it("is the cubic with those slopes", () => {
    // Half way: (y0 + y1)/2 + h(m0 − m1)/8.
    expectWithin(law.valueAt(1), 3 + (2 * (8 / 3 - 9 / 7)) / 8, 1e-14);
    expectWithin(law.valueAt(2.5), 5.5 + 9 / 7 / 8, 1e-14);
    expectWithin(law.valueAt(5), 5 + (4 * 1.5) / 8, 1e-14);
    expect([-3, 12].map((x) => law.valueAt(x))).toEqual([1, 4]);
  });

  it("drops an end slope that points the wrong way", () => {
    // Steps 1 and 1, secants 1 and 4: three-point slope (3·1 − 4)/2 < 0 while the curve rises: 0.
    expect(Law.smooth(points([0, 0], [1, 1], [2, 5])).slopeAt(0)).toBe(0);
  });

  it("is straight through two stations", () => {
    expect(Law.smooth(points([0, 2], [8, 6])).valueAt(2)).toBe(3);
  });
});

const stations = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 600 })), {
    minLength: 3,
    maxLength: 7,
  })
  .map((steps) => {
    let at = 0;
    return steps.map(([step, is]) => {
      at += step / 10;
      return { at, is: is / 100 };
    });
  });

describe("a smooth law of any stations", () => {
  it("never leaves the range of the two stations beside it, and runs one way between them", () => {
    fc.assert(
      fc.property(stations, (list) => {
        const law = Law.smooth(list);
        for (let i = 0; i + 1 < list.length; i++) {
          const [a, b] = [list[i] as LawPoint, list[i + 1] as LawPoint];
          let before = law.valueAt(a.at);
          for (let k = 1; k <= 20; k++) {
            const value = law.valueAt(a.at + ((b.at - a.at) * k) / 20);
            const rising = Math.sign(b.is - a.is) * (value - before);
            if (b.is === a.is) expectWithin(value, a.is, 1e-12);
            else expect(rising).toBeGreaterThan(-1e-12);
            before = value;
          }
          expectWithin(law.valueAt(b.at), b.is, 1e-12);
        }
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("has the slope that differences show", () => {
    fc.assert(
      fc.property(stations, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (list, u) => {
        const law = Law.smooth(list);
        const step = 1e-5;
        for (let i = 0; i + 1 < list.length; i++) {
          const [a, b] = [list[i] as LawPoint, list[i + 1] as LawPoint];
          const x = a.at + (b.at - a.at) * u;
          if (Math.min(x - a.at, b.at - x) < 2 * step) continue;
          const shown = (law.valueAt(x + step) - law.valueAt(x - step)) / (2 * step);
          expectWithin(law.slopeAt(x), shown, 1e-4 * Math.max(1, Math.abs(shown)));
        }
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("raised to a least value is the larger of the two everywhere, and keeps its shape above it", () => {
    fc.assert(
      fc.property(stations, fc.integer({ min: 0, max: 700 }), (list, level) => {
        const law = Law.smooth(list);
        const least = level / 100;
        const raised = law.atLeast(least);
        const end = (list[list.length - 1] as LawPoint).at;
        for (let x = -1; x < end + 1; x += end / 97) {
          expectWithin(raised.valueAt(x), Math.max(least, law.valueAt(x)), 1e-11, `at ${x}`);
        }
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("with every value moved by the same amount has the same shape", () => {
    fc.assert(
      fc.property(stations, (list) => {
        const law = Law.smooth(list);
        const moved = law.map((value) => value + 0.75);
        for (let x = 0; x < 200; x += 3.1) expectWithin(moved.valueAt(x), law.valueAt(x) + 0.75, 1e-12);
      }),
      { seed: SEED, numRuns: 50 },
    );
  });
});
