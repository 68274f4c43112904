import { describe, expect, test } from "vitest";
import { rockwellOf, vickersOf } from "../../../src/materials/hardness/hardness-scales.js";

describe("hardness scales", () => {
  // ASTM E140 table 1, rows of a distributor's chart and of a machine parts maker's technical data that agree (secondary copies).
  test.each([
    [68, 940],
    [65, 832],
    [62, 746],
    [60, 697],
    [58, 653],
    [55, 595],
    [50, 513],
    [45, 446],
    [40, 392],
    [30, 302],
    [20, 238],
  ])("%d HRC is %d HV and back", (rockwell, vickers) => {
    expect(vickersOf(rockwell)).toBeCloseTo(vickers, 9);
    expect(rockwellOf(vickers)).toBeCloseTo(rockwell, 9);
  });

  // ISO 18265 table A.1 (DIN 50150), from memory: another body's table, made from other measurements.
  test.each([
    [640, 57.3],
    [680, 59.2],
    [700, 60.1],
    [720, 61.0],
    [740, 61.8],
    [760, 62.5],
    [780, 63.3],
    [800, 64.0],
    [840, 65.3],
    [880, 66.4],
    [940, 68.0],
  ])("%d HV is within 0.3 HRC of what ISO 18265 says, %d", (vickers, rockwell) => {
    const found = rockwellOf(vickers) ?? Number.NaN;
    expect(Math.abs(found - rockwell)).toBeLessThanOrEqual(0.3);
  });

  test("rises all the way, and the two ways undo each other between the rows", () => {
    for (let rockwell = 20; rockwell < 67.9; rockwell += 0.1) {
      const vickers = vickersOf(rockwell) ?? Number.NaN;
      expect(vickersOf(rockwell + 0.1)).toBeGreaterThan(vickers);
      expect(rockwellOf(vickers)).toBeCloseTo(rockwell, 9);
    }
  });

  test("says nothing outside the table", () => {
    expect([
      vickersOf(19.9),
      vickersOf(68.1),
      rockwellOf(237),
      rockwellOf(941),
      vickersOf(Number.NaN),
    ]).toEqual(Array.from({ length: 5 }));
  });
});
