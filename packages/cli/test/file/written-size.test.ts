import type { FitKind } from "@scantling/geometry";
import { type FileUnits, inchesToMm, parseQuantity } from "@scantling/geometry/units";
import { describe, expect, it } from "vitest";
import { readWritten, stepsOf, writeSize } from "../../src/file/written-size.js";

/** A size in place of another, as it is written. */
function rewritten(
  source: string | undefined,
  value: number,
  kind: FitKind = "length",
  units: FileUnits = "mm",
) {
  const written = readWritten(source, kind, units);
  return written === undefined ? undefined : writeSize(written, value);
}

describe("a size in place of another", () => {
  const inch = inchesToMm;
  const deg = (degrees: number): number => (degrees * Math.PI) / 180;

  it.each<readonly [string, FitKind, FileUnits, number, string]>([
    ["4.6", "length", "mm", 4.3, "4.3"],
    ["4.6 mm", "length", "mm", 4.3, "4.3 mm"],
    ["4.6mm", "length", "in", 4.35, "4.35mm"],
    ["0.46 cm", "length", "mm", 4.3, "0.43 cm"],
    ["4.6 ± 0.2 mm", "length", "mm", 4.3, "4.3 ± 0.2 mm"],
    ["4.6 +/- 0.2", "length", "mm", 4.3, "4.3 +/- 0.2"],
    ["4.6 +0.3/-0.1 mm", "length", "mm", 5, "5 +0.3/-0.1 mm"],
    ["480 g ± 2 %", "mass", "mm", 500, "500 g ± 2 %"],
    ["1/4 in", "length", "mm", inch(15 / 64), "15/64 in"],
    ["5/32", "length", "in", inch(9 / 64), "9/64"],
    ["7 1/2", "length", "in", inch(7.25), "7 1/4"],
    ['7-1/2"', "length", "mm", inch(7.625), '7 5/8"'],
    ["7½ in", "length", "mm", inch(7.25), "7 1/4 in"],
    ["0.1875 in", "length", "mm", inch(0.171875), "0.171875 in"],
    ["3/16 in", "length", "mm", inch(0.18), "0.18 in"],
    ["30 thou", "length", "mm", inch(0.025), "25 thou"],
    ["5/32 ± 5 thou", "length", "in", inch(9 / 64), "9/64 ± 5 thou"],
    ["47 g", "mass", "mm", 78, "78 g"],
    ["17 oz", "mass", "in", 16 * 28.349523125, "16 oz"],
    ["1 lb 2 oz", "mass", "mm", 17 * 28.349523125, "17 oz"],
    ["16 deg", "angle", "mm", deg(15.5), "15.5 deg"],
    ["16°", "angle", "mm", deg(15), "15°"],
    ["8 %", "share", "mm", 0.07, "7 %"],
    ["8 ± 1 %", "share", "mm", 0.07, "7 ± 1 %"],
    ["0.08", "share", "mm", 0.07, "0.07"],
  ])("%s", (source, kind, units, value, wanted) => {
    expect(rewritten(source, value, kind, units)).toBe(wanted);
    const read = parseQuantity(wanted, kind, units);
    expect(read.ok && read.quantity.value).toBeCloseTo(value, 6);
  });

  it("is written as the file writes others where it was not there", () => {
    expect(rewritten(undefined, 2.4)).toBe("2.4");
    expect(rewritten(undefined, inch(3 / 32), "length", "in")).toBe("3/32");
    expect(rewritten(undefined, 0.0007, "density")).toBe("0.7");
  });

  it("is none where the writing is not known, or is of another kind", () => {
    for (const source of ["full", "four", "4.6 furlongs", "4,6", "47 g"])
      expect(rewritten(source, 4.3), source).toBeUndefined();
  });

  it("is read back as what was set: sizes of every step in several writings", () => {
    const writings: readonly (readonly [string, FileUnits])[] = [
      ["3", "mm"],
      ["3 mm ± 0.1 mm", "in"],
      ["1/8", "in"],
      ["1/8 in", "mm"],
      ["120 thou", "mm"],
    ];
    for (const [source, units] of writings) {
      const written = readWritten(source, "length", units);
      for (const step of stepsOf(written, "length", 3, units)) {
        for (const count of [1, 3, 7, 64, 97, 333, 899]) {
          const text = rewritten(source, count * step, "length", units) ?? "";
          const read = parseQuantity(text, "length", units);
          expect(read.ok && Math.abs(read.quantity.value / (count * step) - 1), text).toBeLessThan(1e-7);
        }
      }
    }
  });
});

describe("steps of a size", () => {
  it("go by the unit that it is written in, and are finer for what is thin", () => {
    const steps = (source: string, drawn: number, units: FileUnits = "mm") =>
      stepsOf(readWritten(source, "length", units), "length", drawn, units);
    expect(steps("4.6", 4.6)).toEqual([0.1, 0.05, 0.01]);
    expect(steps("0.5", 0.5)).toEqual([0.05, 0.02, 0.01]);
    expect(steps("1/4 in", 6.35)[0]).toBeCloseTo(25.4 / 64, 12);
    expect(steps("4.6 mm", 4.6, "in")).toEqual([0.1, 0.05, 0.01]);
    expect(stepsOf(undefined, "mass", 20, "in")[0]).toBeCloseTo(2.8349523125, 12);
    expect(stepsOf(undefined, "angle", 0.3, "mm")[0]).toBeCloseTo(Math.PI / 360, 12);
  });
});
