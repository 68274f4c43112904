import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bernsteinRoots,
  bracketedRoot,
  differentiateBernstein,
  evaluateBernstein,
  multiplyBernstein,
  quadraticRoots,
} from "../../src/numeric/polynomial.js";

const SEED = 20_260_714;

describe("quadraticRoots", () => {
  it("gives two, one, none", () => {
    expect(quadraticRoots(1, -3, 2)).toEqual([1, 2]);
    expect(quadraticRoots(1, -2, 1)).toEqual([1]);
    expect(quadraticRoots(1, 0, 1)).toEqual([]);
    expect(quadraticRoots(0, 2, -1)).toEqual([0.5]);
    expect(quadraticRoots(0, 0, 3)).toEqual([]);
    expect(quadraticRoots(0, 0, 0)).toEqual([]);
    expect(quadraticRoots(1, 0, 0)).toEqual([expect.closeTo(0, 15)]);
  });

  it("loses no digits where one coefficient dwarfs the others", () => {
    // x² − 10⁹x + 1: the small root is 10⁻⁹ to 18 digits.
    const [small, large] = quadraticRoots(1, -1e9, 1);
    expect((small ?? 0) / 1e-9).toBeCloseTo(1, 14);
    expect((large ?? 0) / 1e9).toBeCloseTo(1, 14);
    expect(quadraticRoots(1e-20, 1, -0.5)[1]).toBeCloseTo(0.5, 14);
    expect(quadraticRoots(1e-200, -3e-200, 2e-200)).toEqual([expect.closeTo(1, 14), expect.closeTo(2, 14)]);
  });
});

describe("Bernstein form", () => {
  const factors = (roots: readonly number[]): number[] =>
    roots.reduce<number[]>((product, root) => multiplyBernstein(product, [-root, 1 - root]), [1]);

  it("multiplies and differentiates as the power form does", () => {
    // (t − ¼)(t − ¾) = t² − t + 3/16; slope 2t − 1.
    const product = factors([0.25, 0.75]);
    expect(evaluateBernstein(product, 0.5)).toEqual({
      value: expect.closeTo(-1 / 16, 15),
      slope: expect.closeTo(0, 15),
    });
    expect(differentiateBernstein(product)).toEqual([expect.closeTo(-1, 15), expect.closeTo(1, 15)]);
  });

  it("finds every root of degrees 1 to 6 that lies inside, and none that lies outside", () => {
    const root = fc.integer({ min: -500, max: 1500 }).map((i) => i / 1000);
    fc.assert(
      fc.property(fc.uniqueArray(root, { minLength: 1, maxLength: 6 }), (roots) => {
        const inside = roots.filter((r) => r >= 0 && r <= 1).sort((a, b) => a - b);
        const found = bernsteinRoots(factors(roots));
        expect(found.length).toBe(inside.length);
        for (const [i, r] of found.entries()) expect(Math.abs(r - (inside[i] ?? 9))).toBeLessThan(1e-8);
      }),
      { seed: SEED, numRuns: 1000, examples: [[[0, 1, 0.5]], [[0]], [[1]]] },
    );
  });

  it("finds a double root where no rounding hides it, and its derivative's root anyhow", () => {
    const found = bernsteinRoots(factors([0.5, 0.5, 2]));
    expect(found.length).toBeGreaterThan(0);
    for (const r of found) expect(r).toBeCloseTo(0.5, 6);
    const touching = factors([0.3, 0.3, 2]);
    expect(bernsteinRoots(differentiateBernstein(touching))).toContainEqual(expect.closeTo(0.3, 12));
  });

  it("finds nothing where there is nothing", () => {
    expect(bernsteinRoots([0, 0, 0])).toEqual([]);
    expect(bernsteinRoots([1, 2, 3])).toEqual([]);
    expect(bernsteinRoots([])).toEqual([]);
  });
});

it("bracketedRoot keeps inside where Newton would fly off", () => {
  const f = (t: number): { value: number; slope: number } => ({
    value: Math.atan(20 * (t - 0.9)),
    slope: 20 / (1 + 400 * (t - 0.9) ** 2),
  });
  expect(bracketedRoot(f, -5, 5, -1)).toBeCloseTo(0.9, 14);
});
