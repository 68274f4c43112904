import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FitDimension } from "../../src/fitting/dimension.js";
import { settingsOf } from "../../src/fitting/settings.js";

const one = (
  drawn: number,
  least: number,
  most: number,
  steps: readonly number[] = [0.1, 0.05, 0.01],
): FitDimension => ({
  name: "one",
  kind: "length",
  sizes: [{ path: "tang.buttThickness", drawn, steps }],
  least,
  most,
});

const sizesIn = (dimension: FitDimension, fineness = 0) =>
  settingsOf(dimension, fineness).map(({ sizes }) => sizes?.[0]);

describe("settings of one size", () => {
  it("are whole steps from end to end, the drawing among them as it is drawn", () => {
    expect(sizesIn(one(2.4, 2.2, 2.6))).toEqual([2.2, 2.3, undefined, 2.5, 2.6]);
    expect(sizesIn(one(2.44, 2.35, 2.55))).toEqual([2.4, undefined, 2.5]);
  });

  it("have finer steps where they are asked for", () => {
    expect(sizesIn(one(2.4, 2.3, 2.5), 1)).toEqual([2.3, 2.35, undefined, 2.45, 2.5]);
    expect(sizesIn(one(2.4, 2.39, 2.41), 2)).toEqual([2.39, undefined, 2.41]);
    expect(sizesIn(one(2.4, 2.41, 2.49))).toEqual([]);
  });

  it("leave the drawing out where the range does", () => {
    expect(sizesIn(one(3, 2.2, 2.4))).toEqual([2.2, 2.3, 2.4]);
  });

  it("are 64ths of an inch where it is set in inches", () => {
    const steps = [25.4 / 64];
    const found = sizesIn(one(3.175, 2.8, 3.6, steps)).map((mm) =>
      mm === undefined ? "as drawn" : (mm / 25.4) * 64,
    );
    expect(found.map((each) => (typeof each === "string" ? each : Math.round(each * 1e9) / 1e9))).toEqual([
      "as drawn",
      9,
    ]);
  });

  it("count changes from the drawing in widths of the range", () => {
    expect(settingsOf(one(2.4, 2, 3), 0).map(({ change }) => Number(change.toFixed(9)))).toEqual([
      -0.4, -0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6,
    ]);
  });
});

describe("settings in proportion", () => {
  const taper = (drawn: readonly number[], least: number, most: number): FitDimension => ({
    name: "thickness",
    kind: "length",
    sizes: drawn.map((each, i) => ({ path: `blade.thickness[${i}].is`, drawn: each, steps: [0.1] })),
    least,
    most,
  });

  it("are all ways in which the sizes round together: by hand", () => {
    // 4 and 1.5 from 95 to 105 %: 4 turns at 96.25, 98.75, 101.25 and 103.75 %, 1.5 at 96.67 and 103.33 %.
    expect(settingsOf(taper([4, 1.5], 0.95, 1.05), 0).map(({ sizes }) => sizes ?? "as drawn")).toEqual([
      [3.8, 1.4],
      [3.9, 1.4],
      [3.9, 1.5],
      "as drawn",
      [4.1, 1.5],
      [4.1, 1.6],
      [4.2, 1.6],
    ]);
  });

  it("are the rounded sizes of every share, and nothing else: shares at random", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 6, max: 60 }), { minLength: 2, maxLength: 4 }),
        fc.double({ min: 0.8, max: 1.2, noNaN: true }),
        (tenths, share) => {
          const drawn = tenths.map((each) => each / 10);
          const found = settingsOf(taper(drawn, 0.8, 1.2), 0);
          const rounded = drawn.map((each) => Math.round(each * share * 10) / 10);
          const all = found.map(({ sizes }) => (sizes ?? drawn).map((size) => size.toFixed(1)).join(" "));
          expect(all).toContain(rounded.map((size) => size.toFixed(1)).join(" "));
          expect(new Set(all).size).toBe(all.length);
        },
      ),
      { seed: 20262, numRuns: 500 },
    );
  });

  it("grow with their change", () => {
    const found = settingsOf(taper([4.6, 3.6, 2.2], 0.8, 1.2), 0);
    const sums = found.map(({ sizes }) => (sizes ?? [4.6, 3.6, 2.2]).reduce((sum, size) => sum + size, 0));
    for (const [i, sum] of sums.slice(1).entries()) expect(sum).toBeGreaterThan(sums[i] ?? 0);
    expect(found.filter(({ change }) => Math.abs(change) > 0.5 + 0.05)).toEqual([]);
  });
});
