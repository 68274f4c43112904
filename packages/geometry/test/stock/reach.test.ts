import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DEFAULT_LIMITS } from "../../src/stock/defaults.js";
import {
  classifyReach,
  makeReachStations,
  reachableHeight,
  reachShare,
  worstShare,
  worstStation,
} from "../../src/stock/reach.js";

const SEED = 20261125;

/** Spread law with constant volume: w₁/w₀ = (h₀/h₁)^s, l₁/l₀ = (h₀/h₁)^(1−s) (definition). */
describe("spread law", () => {
  /**
   * Worked case: w₀ 40, h 10 → 8 and s = 0.3065 (Tomlinson and Stringer's coefficient at a bite of half the width, from
   * memory) give w₁ = 42.8315 and l₁/l₀ = 1.167366 (arithmetic).
   */
  test("40 wide, 10 to 8 thick, s = 0.3065", () => {
    expect(reachableHeight(8, 40, 10, 0.3065)).toBeCloseTo(42.8315, 3);
    expect(reachShare(42.8315, 8, 40, 10)).toBeCloseTo(0.3065, 4);
    const elongation = (10 / 8) ** (1 - 0.3065);
    expect(elongation).toBeCloseTo(1.167366, 5);
    expect((reachableHeight(8, 40, 10, 0.3065) / 40) * elongation).toBeCloseTo(1.25, 12);
  });

  test("share and height undo each other, and volume is kept", () => {
    const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(size(10, 80), size(4, 30), size(0.2, 0.95), size(0.01, 0.99), (w0, t0, part, s) => {
        const tm = t0 * part;
        const height = reachableHeight(tm, w0, t0, s);
        const stretch = (t0 / tm) ** (1 - s);
        return (
          Math.abs(reachShare(height, tm, w0, t0) - s) < 1e-9 &&
          Math.abs((height * tm * stretch) / (w0 * t0) - 1) < 1e-12
        );
      }),
      { seed: SEED },
    );
  });

  test("no spread where the bar is as high as the blade; none to be had where it is as thin", () => {
    expect(reachShare(40, 3, 40, 6)).toBe(0);
    expect(reachShare(30, 9, 40, 6)).toBe(0);
    expect(reachShare(41, 6, 40, 6)).toBe(Number.POSITIVE_INFINITY);
    expect(reachShare(41, 7, 40, 6)).toBe(Number.POSITIVE_INFINITY);
    expect(reachableHeight(7, 40, 6, 0.85)).toBe(40);
  });
});

/**
 * Five invented orders, reach worked by hand from the as-forged sizes: height + 2·outline, thickness + 2·face,
 * forged edge 1.6 mm, section a plain trapezoid unless said. Heights, thicknesses and bars mm.
 */
describe("hand checks", () => {
  const trapezoid = (thickness: number): number => (thickness + 1.6) / 2;

  test("bowie from 38.1 x 12.7: 0.33", () => {
    // Height 50.8 + 3 at 100 mm; spine 8 → 6 over 120 mm, so 6.333 + 1.
    expect(reachShare(53.8, trapezoid(7.3333), 38.1, 12.7)).toBeCloseTo(0.33, 2);
  });

  test("camp knife from 38.1 x 9.525: 0.29", () => {
    // Height 47.6 + 3 at 140 mm; spine 5 → 2.4 over 111 mm from 120, so 4.53 + 1.
    expect(reachShare(50.6, trapezoid(5.5315), 38.1, 9.525)).toBeCloseTo(0.29, 2);
  });

  test("slicer from 38.1 x 6.35: 0.08", () => {
    expect(Math.abs(reachShare(41.1, trapezoid(3.6), 38.1, 6.35) - 0.08)).toBeLessThan(0.01);
  });

  test("nakiri from 38.1 x 6.35: 0.50 with the bevel zone forged, 0.41 as a full trapezoid", () => {
    // Outline +1 and face +0.1 a side: 56 high, 3.4 thick; bevel zone 29 mm high.
    const zoned = (3.4 * (56 - 29) + 29 * trapezoid(3.4)) / 56;
    expect(reachShare(56, zoned, 38.1, 6.35)).toBeCloseTo(0.5, 2);
    expect(reachShare(56, trapezoid(3.4), 38.1, 6.35)).toBeCloseTo(0.41, 2);
  });

  test("boning knife from 25.4 x 4.7625 needs none", () => {
    expect(reachShare(25.2, trapezoid(3.8), 25.4, 4.7625)).toBe(0);
  });
});

describe("worst station", () => {
  const stations = makeReachStations([
    { x: -50, height: 60, area: 360, thickness: 7 },
    { x: 0, height: 50, area: 200 },
    { x: 100, height: 55, area: 200 },
    { x: 150, height: 0, area: 0 },
  ]);

  test("is sought ahead of the heel or over the whole blade", () => {
    expect(worstShare(stations, 40, 10, 0)).toBeCloseTo(reachShare(55, 200 / 55, 40, 10), 12);
    expect(worstShare(stations, 40, 10, Number.NEGATIVE_INFINITY)).toBeCloseTo(reachShare(60, 6, 40, 10), 12);
    expect(worstStation(stations, 80, 10, 0)).toBe(-1);
    expect(worstShare(stations, 80, 10, 0)).toBe(0);
  });

  test("stations without steel are left out; thickness stands before the mean", () => {
    expect(stations.x.length).toBe(3);
    expect(stations.greatestThickness).toBe(7);
    expect(stations.greatestHeight).toBe(55);
  });
});

test("classes by the shop's limits", () => {
  const { reach } = DEFAULT_LIMITS;
  expect([0, 0.3, 0.31, 0.6, 0.7, 0.85, 0.86].map((s) => classifyReach(s, reach))).toEqual([
    "easy",
    "easy",
    "flat dies",
    "flat dies",
    "fullers",
    "fullers",
    "refused",
  ]);
});
