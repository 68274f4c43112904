import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { ForgedStation } from "../../../src/stock/blade-states.js";
import {
  forgeBevels,
  makePreform,
  type PreformStation,
  preformAt,
  preformSteps,
} from "../../../src/stock/forge/preform.js";

const SEED = 20261127;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Forged sections with steel in every one: the mean thickness is a share of that at the spine. */
const sections: fc.Arbitrary<ForgedStation[]> = fc
  .array(
    fc.record({ step: number(0.01, 8), height: number(5, 95), spine: number(1.5, 9), mean: number(0.4, 1) }),
    { minLength: 2, maxLength: 60 },
  )
  .map((given) => {
    let x = -20;
    return given.map(({ step, height, spine, mean }) => {
      x += step;
      return { x, height, area: height * spine * mean, thickness: spine };
    });
  });

const volumeOf = (pieces: readonly { readonly x: number; readonly area: number }[]): number =>
  pieces.slice(1).reduce((sum, b, i) => {
    const a = pieces[i];
    return a === undefined ? sum : sum + ((b.x - a.x) * (a.area + b.area)) / 2;
  }, 0);

const asPieces = (preform: readonly PreformStation[]) =>
  preform.map(({ at, height, thickness }) => ({ x: at, area: height * thickness }));

describe("preform", () => {
  test("holds the volume of the forged blade in every piece, at every station and in sum, to 10⁻¹²", () => {
    fc.assert(
      fc.property(sections, number(0, 1), (forged, share) => {
        const preform = makePreform(forged, share, 0);
        const pieces = asPieces(preform);
        expect(Math.abs(volumeOf(pieces) / volumeOf(forged) - 1)).toBeLessThan(1e-12);
        for (let i = 1; i < forged.length; i++) {
          const own = volumeOf(forged.slice(i - 1, i + 1));
          const made = volumeOf(pieces.slice(i - 1, i + 1));
          // The distances are differences of sums: their last digits are those of the whole length.
          expect(Math.abs(made - own)).toBeLessThan(1e-12 * volumeOf(forged));
        }
        preform.forEach(({ height, thickness, meanThickness }, i) => {
          const area = forged[i]?.area ?? 0;
          const stretch = (meanThickness / thickness) ** (1 - share);
          expect(Math.abs((height * thickness * stretch) / area - 1)).toBeLessThan(1e-12);
        });
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test("hammering the bevels in gives the forged sections back, to 10⁻¹²", () => {
    fc.assert(
      fc.property(sections, number(0, 1), (forged, share) => {
        const start = forged[0]?.x ?? 0;
        const back = forgeBevels(makePreform(forged, share, start), share, start);
        const long = (forged.at(-1)?.x ?? 0) - start;
        back.forEach(({ x, height, area }, i) => {
          const own = forged[i] as ForgedStation;
          expect(Math.abs(height / own.height - 1)).toBeLessThan(1e-12);
          expect(Math.abs(area / own.area - 1)).toBeLessThan(1e-12);
          expect(Math.abs(x - own.x)).toBeLessThan(1e-12 * Math.max(1, long, Math.abs(own.x)));
        });
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test("is never higher nor longer than the forged blade; all into height keeps the length, none keeps the height", () => {
    fc.assert(
      fc.property(sections, number(0, 1), (forged, share) => {
        const start = forged[0]?.x ?? 0;
        const long = (forged.at(-1)?.x ?? 0) - start;
        const preform = makePreform(forged, share, start);
        preform.forEach(({ height }, i) => {
          expect(height).toBeLessThanOrEqual((forged[i]?.height ?? 0) * (1 + 1e-12));
        });
        expect(makePreform(forged, 1, start).at(-1)?.at).toBeCloseTo(long, 9);
        for (const [i, { height }] of makePreform(forged, 0, start).entries())
          expect(height).toBe(forged[i]?.height);
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  test("a wedge by hand: 6 mm to a mean of 3 mm, half of it into height", () => {
    const wedge = [0, 50, 100].map((x) => ({ x, height: 40, area: 120, thickness: 6 }));
    // 40·(1/2)^½ = 28.284; 100·(1/2)^½ = 70.711.
    const preform = makePreform(wedge, 0.5, 0);
    expect(preform[2]?.height).toBeCloseTo(40 / Math.SQRT2, 9);
    expect(preform[2]?.at).toBeCloseTo(100 / Math.SQRT2, 9);
  });

  test("distances start where they are asked to; behind it they are negative", () => {
    const bar = [-30, 0, 40].map((x) => ({ x, height: 20, area: 80, thickness: 4 }));
    expect(makePreform(bar, 0.4, 0).map(({ at }) => at)).toEqual([-30, 0, 40]);
  });

  test("steps: from the shoulder in full ones to the end", () => {
    const bar = [0, 61].map((x) => ({ x, height: 20 + x, area: 4 * (20 + x), thickness: 4 }));
    const steps = preformSteps(makePreform(bar, 0, 0), 20);
    expect(steps.map(({ at }) => at)).toEqual([0, 20, 40, 61]);
    expect(steps[1]?.height).toBeCloseTo(40, 9);
    expect(preformAt(makePreform(bar, 0, 0), -5).at).toBe(0);
    expect(preformAt(makePreform(bar, 0, 0), 99).at).toBe(61);
  });

  test("no share beyond the whole, no preform of nothing", () => {
    const bar = [0, 60].map((x) => ({ x, height: 20, area: 80 }));
    expect(() => makePreform(bar, 1.1, 0)).toThrow(expect.objectContaining({ code: "spread-share-wrong" }));
    expect(() => forgeBevels([], Number.NaN, 0)).toThrow(
      expect.objectContaining({ code: "spread-share-wrong" }),
    );
    expect(() => makePreform(bar.slice(1), 0.4, 0)).toThrow(
      expect.objectContaining({ code: "stations-too-few" }),
    );
    expect(() => preformAt([], 0)).toThrow(expect.objectContaining({ code: "stations-too-few" }));
  });
});
