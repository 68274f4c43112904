import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fewestWedges, wedgeSets } from "../../src/bench/wedges.js";
import { SEED } from "../blade/random-knives.js";

const DEGREE = Math.PI / 180;
const degrees = (...angles: readonly number[]): number[] => angles.map((angle) => angle * DEGREE);

describe("angle wedges", () => {
  test("20° and 11° make 31° (common practice, no source)", () => {
    const set = fewestWedges(degrees(5, 11, 20), 31 * DEGREE);
    expect(set?.add).toEqual(degrees(11, 20));
    expect(set?.subtract).toEqual([]);
    expect(set?.error).toBeCloseTo(0, 12);
  });

  test("20° and 11° the other way round make 9°", () => {
    const set = fewestWedges(degrees(11, 20), 9 * DEGREE);
    expect([set?.add, set?.subtract]).toEqual([degrees(20), degrees(11)]);
  });

  test("one that is near enough goes before two that are exact", () => {
    expect(fewestWedges(degrees(15.05, 10, 5), 15 * DEGREE)?.add).toEqual(degrees(15.05));
    expect(fewestWedges(degrees(15.2, 10, 5), 15 * DEGREE)?.add).toEqual(degrees(10, 5));
  });

  test("of two ways as near the one that only adds", () => {
    expect(fewestWedges(degrees(18, 3, 10, 5), 15 * DEGREE)).toMatchObject({ subtract: [] });
  });

  test("none from an empty drawer, the nearest where nothing comes near", () => {
    expect(fewestWedges([], 0.3)).toBeUndefined();
    expect(fewestWedges(degrees(5), 40 * DEGREE)?.error).toBeCloseTo(-35 * DEGREE, 12);
  });

  // Every sign of every wedge, counted in base three: another way through the same choices.
  test("are as near as any choice of signs, and no more of them than needed", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 1, max: 60 }),
        (wedges, wanted) => {
          const nearest = new Map<number, number>();
          for (let code = 1; code < 3 ** wedges.length; code++) {
            const signs = wedges.map((_, i) => (Math.floor(code / 3 ** i) % 3) - 1);
            const sum = wedges.reduce((total, wedge, i) => total + wedge * (signs[i] ?? 0), 0);
            const used = signs.filter((sign) => sign !== 0).length;
            if (used === 0 || sum <= 0) continue;
            nearest.set(used, Math.min(nearest.get(used) ?? Infinity, Math.abs(sum - wanted)));
          }
          const sets = wedgeSets(wedges, wanted);
          for (const { add, subtract, angle, error } of sets) {
            const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
            expect(sum(add) - sum(subtract)).toBe(angle);
            expect(Math.abs(error)).toBe(nearest.get(add.length + subtract.length));
          }
          expect(Math.abs(sets.at(-1)?.error ?? Infinity)).toBe(Math.min(...nearest.values()));
        },
      ),
      { seed: SEED, numRuns: 150 },
    );
  });
});
