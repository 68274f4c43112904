import { describe, expect, it } from "vitest";
import { integrateAdaptive, type Piece } from "../../src/numeric/adaptive.js";
import { gaussLegendre, gaussRule } from "../../src/numeric/gauss.js";
import { findRoot } from "../../src/numeric/roots.js";
import { expectWithin } from "./close.js";

describe("a Gauss rule of n points on [0, 1]", () => {
  it.each([1, 2, 3, 5, 8, 12, 17, 24])("of %i points is exact up to degree 2n − 1, and not beyond", (n) => {
    const { nodes, weights } = gaussRule(n);
    const sum = (degree: number): number =>
      nodes.reduce((total, x, i) => total + (weights[i] as number) * x ** degree, 0);
    for (let degree = 0; degree < 2 * n; degree++) {
      expectWithin(sum(degree), 1 / (degree + 1), 1e-15, `degree ${degree}`);
    }
    if (n <= 8) {
      // What the rule misses at degree 2n is (n!)⁴ / ((2n + 1) (2n)!²) (Abramowitz & Stegun 25.4.30).
      const factorial = (k: number): number => (k < 2 ? 1 : k * factorial(k - 1));
      const missed = factorial(n) ** 4 / ((2 * n + 1) * factorial(2 * n) ** 2);
      expectWithin(1 / (2 * n + 1) - sum(2 * n), missed, 1e-3 * missed + 1e-16, "degree 2n");
    }
  });

  it("has the published nodes of three points", () => {
    const { nodes, weights } = gaussLegendre(3);
    [1 / 2 - Math.sqrt(0.15), 1 / 2, 1 / 2 + Math.sqrt(0.15)].forEach((x, i) => {
      expectWithin(nodes[i] as number, x, 1e-15);
    });
    [5 / 18, 8 / 18, 5 / 18].forEach((w, i) => {
      expectWithin(weights[i] as number, w, 1e-15);
    });
  });

  it("is not prepared for 0 or 25 points", () => {
    expect(() => gaussRule(0)).toThrow(RangeError);
    expect(() => gaussRule(25)).toThrow(RangeError);
  });
});

const one = (
  f: (x: number) => number,
  pieces: readonly Piece[],
  tolerance: number,
  maxPieces?: number,
  trust?: "wary" | "smooth",
): { value: number; error: number } => {
  const result = integrateAdaptive(
    (x, out) => {
      out[0] = f(x);
    },
    1,
    pieces,
    {
      tolerance: new Float64Array([tolerance]),
      ...(maxPieces === undefined ? {} : { maxPieces }),
      ...(trust === undefined ? {} : { trust }),
    },
  );
  return { value: result.value[0] as number, error: result.error[0] as number };
};

describe("adaptive quadrature", () => {
  const known: readonly (readonly [string, (x: number) => number, number, number, number])[] = [
    ["a polynomial", (x) => 7 * x ** 6 - x, 0, 2, 126],
    ["sin", Math.sin, 0, Math.PI, 2],
    ["exp", Math.exp, -1, 3, Math.exp(3) - Math.exp(-1)],
    ["1/(1 + 25x²)", (x) => 1 / (1 + 25 * x * x), -1, 1, (2 / 5) * Math.atan(5)],
    ["√x, upright at its end", Math.sqrt, 0, 4, 16 / 3],
    ["1/√x, singular at its end", (x) => 1 / Math.sqrt(x), 0, 9, 6],
    ["√(1 − x²), upright at both ends", (x) => Math.sqrt(1 - x * x), -1, 1, Math.PI / 2],
    ["|x − 0.3|, a corner", (x) => Math.abs(x - 0.3), 0, 1, (0.09 + 0.49) / 2],
    ["max(0, x − 1/3)², a gentle corner", (x) => Math.max(0, x - 1 / 3) ** 2, 0, 1, (2 / 3) ** 3 / 3],
    ["cos 40x", (x) => Math.cos(40 * x), 0, 1, Math.sin(40) / 40],
  ];

  it.each(known)("of %s: right, and its error covers the truth", (_, f, from, to, truth) => {
    for (const tolerance of [1e-3, 1e-6, 1e-10]) {
      const { value, error } = one(f, [{ from, to }], tolerance);
      expect(Math.abs(value - truth)).toBeLessThanOrEqual(error + 1e-14 * Math.abs(truth));
      expectWithin(value, truth, Math.max(tolerance, 3e-8 * (tolerance < 1e-8 ? 1 : 0)));
    }
  });

  it.each(known)("of %s, wary of kinks: right, and its error covers the truth", (_, f, from, to, truth) => {
    for (const tolerance of [1e-3, 1e-6, 1e-10]) {
      const { value, error } = one(f, [{ from, to }], tolerance, undefined, "wary");
      expect(Math.abs(value - truth)).toBeLessThanOrEqual(error + 1e-14 * Math.abs(truth));
      expectWithin(value, truth, Math.max(tolerance, 3e-8 * (tolerance < 1e-8 ? 1 : 0)));
    }
  });

  const smooth: readonly (readonly [string, (x: number) => number, number, number, number])[] = [
    ["a cubic", (x) => x ** 3 - 2 * x + 5, 0, 3, 81 / 4 - 9 + 15],
    ["a power of six", (x) => 7 * x ** 6 - x, 0, 2, 126],
    ["sin", Math.sin, 0, 1, 1 - Math.cos(1)],
    ["exp", Math.exp, -1, 3, Math.exp(3) - Math.exp(-1)],
    ["1/x, a singularity one length away", (x) => 1 / x, 1, 2, Math.LN2],
    ["1/(1 + 25x²)", (x) => 1 / (1 + 25 * x * x), 0, 1, Math.atan(5) / 5],
    ["√(x + 0.01)", (x) => Math.sqrt(x + 0.01), 0, 1, (2 / 3) * (1.01 ** 1.5 - 0.01 ** 1.5)],
    ["cos 12x", (x) => Math.cos(12 * x), 0, 1, Math.sin(12) / 12],
  ];

  it.each(smooth)(
    "of %s, sure to be smooth: right, and its error covers the truth",
    (_, f, from, to, truth) => {
      for (const tolerance of [1e-1, 1e-3, 1e-6, 1e-9, 1e-12]) {
        const { value, error } = one(f, [{ from, to }], tolerance * Math.abs(truth), undefined, "smooth");
        expect(Math.abs(value - truth)).toBeLessThanOrEqual(error + 1e-14 * Math.abs(truth));
        expectWithin(value, truth, tolerance * Math.abs(truth) + 1e-14);
      }
    },
  );

  it("asks less often where it is sure that nothing is hidden", () => {
    const asked = (trust?: "smooth"): number =>
      integrateAdaptive(
        (x, out) => {
          out[0] = Math.exp(x);
        },
        1,
        [{ from: 0, to: 0.5 }],
        { tolerance: new Float64Array([1e-2]), ...(trust === undefined ? {} : { trust }) },
      ).evaluations;
    expect(asked("smooth")).toBe(3);
    expect(asked()).toBe(7);
  });

  it("takes a step where it is broken at it", () => {
    const pieces = [
      { from: 0, to: 0.123456 },
      { from: 0.123456, to: 1 },
    ];
    expectWithin(one((x) => (x < 0.123456 ? 1 : 3), pieces, 1e-12).value, 3 - 2 * 0.123456, 1e-14);
  });

  it("sums pieces, and leaves out those that have no length", () => {
    const pieces = [
      { from: 0, to: 1 },
      { from: 2, to: 2 },
      { from: 3, to: 5 },
    ];
    expectWithin(one((x) => x, pieces, 1e-12).value, 0.5 + 8, 1e-14);
    expect(one((x) => x, [], 1e-12)).toEqual({ value: 0, error: 0 });
  });

  it("says what is missing when it may not look at more pieces", () => {
    const { value, error } = one(
      (x) => Math.sqrt(Math.abs(Math.sin(31 * x))),
      [{ from: 0, to: 3 }],
      1e-12,
      6,
    );
    const better = one((x) => Math.sqrt(Math.abs(Math.sin(31 * x))), [{ from: 0, to: 3 }], 1e-9, 5000).value;
    expect(error).toBeGreaterThan(1e-12);
    expect(Math.abs(value - better)).toBeLessThanOrEqual(error);
  });

  it("aims at every component", () => {
    const { value, error } = integrateAdaptive(
      (x, out) => {
        out[0] = x;
        out[1] = Math.sqrt(x);
      },
      2,
      [{ from: 0, to: 1 }],
      { tolerance: new Float64Array([1e-3, 1e-11]) },
    );
    expectWithin(value[0] as number, 0.5, 1e-15);
    expectWithin(value[1] as number, 2 / 3, 1e-11);
    expect(error[1]).toBeLessThanOrEqual(1e-11);
  });
});

describe("findRoot", () => {
  const cases: readonly (readonly [string, (x: number) => number, number, number, number])[] = [
    ["x² = 2", (x) => x * x - 2, 0, 2, Math.SQRT2],
    ["cos x = x (Dottie's number)", (x) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ["x⁹, flat at its root", (x) => (x - 0.25) ** 9, 0, 1, 0.25],
    ["a falling line", (x) => 3 - 2 * x, -10, 10, 1.5],
    ["a step", (x) => (x < 0.7 ? -1 : 1), 0, 1, 0.7],
    ["a root at the left end", (x) => x - 2, 2, 3, 2],
    ["a root at the right end", (x) => x - 3, 2, 3, 3],
  ];

  it.each(cases)("of %s", (_, f, a, b, root) => {
    let calls = 0;
    const found = findRoot(
      (x) => {
        calls++;
        expect(x).toBeGreaterThanOrEqual(a);
        expect(x).toBeLessThanOrEqual(b);
        return f(x);
      },
      a,
      b,
      1e-12,
    );
    expectWithin(found ?? Number.NaN, root, 2e-12);
    expect(calls).toBeLessThan(60);
  });

  it("finds none where both ends have the same sign", () => {
    expect(findRoot((x) => x * x + 1, -1, 1, 1e-9)).toBeUndefined();
  });
});
