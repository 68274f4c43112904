import { describe, expect, it } from "vitest";
import {
  describeQuantityError,
  parseQuantity,
  type QuantityError,
  type QuantityKind,
} from "../../src/units/index.js";

function errorOf(text: string | number, kind: QuantityKind): QuantityError {
  const reading = parseQuantity(text, kind, "mm");
  if (reading.ok) throw new Error(`read as ${reading.quantity.value}`);
  return reading.error;
}

type Row = readonly [text: string | number, kind: QuantityKind, code: QuantityError["code"]];

const ERRORS: readonly Row[] = [
  ["", "length", "empty"],
  ["   ", "length", "empty"],
  [Number.NaN, "length", "not-finite"],
  [Number.POSITIVE_INFINITY, "length", "not-finite"],
  ["NaN", "length", "number-unreadable"],
  ["1".repeat(100), "length", "too-long"],
  ["6,4 mm", "length", "comma"],
  ["1,000 mm", "length", "comma"],
  ["thick", "length", "number-unreadable"],
  ["mm", "length", "number-unreadable"],
  ["6.4.1 mm", "length", "number-unreadable"],
  ["7.5 1/2 in", "length", "number-unreadable"],
  ["7 1/2 in 3", "length", "unit-missing"],
  ["6'2", "length", "unit-missing"],
  ["2 in 6 ft", "length", "parts-out-of-order"],
  ["6 in 2 in", "length", "parts-out-of-order"],
  ["15° 0.01 rad", "angle", "parts-out-of-order"],
  ["3/0 in", "length", "fraction-zero"],
  ["7 3/0 in", "length", "fraction-zero"],
  ["7 9/8 in", "length", "fraction-improper"],
  ["7 1/2", "length", "fraction-without-unit"],
  ["3/16", "length", "fraction-without-unit"],
  ["480 g", "length", "unit-wrong-kind"],
  ["15 deg", "length", "unit-wrong-kind"],
  ["60 %", "length", "unit-wrong-kind"],
  ["190 mm", "mass", "unit-wrong-kind"],
  ["1500 °", "temperature", "unit-wrong-kind"],
  ["7.8 g", "density", "unit-wrong-kind"],
  ["5 psi", "length", "unit-wrong-kind"],
  ["3 h", "length", "unit-wrong-kind"],
  ["3 m", "time", "unit-wrong-kind"],
  ["1 month", "time", "unit-not-taken"],
  ["30 min 1 h", "time", "parts-out-of-order"],
  ["3 in3", "length", "unit-wrong-kind"],
  ["190 mmm", "length", "unit-unknown"],
  ["190 furlong", "length", "unit-unknown"],
  ["7.8 g/inch4", "density", "unit-unknown"],
  ["7.8 kg/cm3", "density", "unit-unknown"],
  ["7.8 g/mm3", "density", "unit-unknown"],
  ["1 yd", "length", "unit-not-taken"],
  ["2 Yards", "length", "unit-not-taken"],
  ["1 km", "length", "unit-not-taken"],
  ["1 mile", "length", "unit-not-taken"],
  ["500 mg", "mass", "unit-not-taken"],
  ["1 t", "mass", "unit-not-taken"],
  ["1 mt", "mass", "unit-not-taken"],
  ["30 arcmin", "angle", "unit-not-taken"],
  ["30 arcsec", "angle", "unit-not-taken"],
  ["293.15 K", "temperature", "unit-not-taken"],
  ["527.67 R", "temperature", "unit-not-taken"],
  ["20 grad", "angle", "unit-gradian"],
  ["20 Grad", "angle", "unit-gradian"],
  ["20 gradians", "angle", "unit-gradian"],
  ["20 gon", "angle", "unit-gradian"],
  ["16 ± 1 grad", "angle", "unit-gradian"],
  ["1 yd", "mass", "unit-wrong-kind"],
  ["6.4 ± mm", "length", "tolerance-unreadable"],
  ["6.4 ± -0.2 mm", "length", "tolerance-unreadable"],
  ["6.4 ± 0.2 ± 0.1 mm", "length", "tolerance-unreadable"],
  ["6.4 +0.3 mm", "length", "tolerance-unreadable"],
  ["6.4 +0.3/+0.1 mm", "length", "tolerance-unreadable"],
  ["6.4 +0.3/0.1 mm", "length", "tolerance-unreadable"],
  ["6.4 - 3 mm", "length", "tolerance-unreadable"],
  ["6.4 ± 0.2 g", "length", "unit-wrong-kind"],
  ["8 ± 0.02 in", "length", "tolerance-other-unit"],
  ["1/4 ± 1/64 in", "length", "tolerance-other-unit"],
  ["19 ± 0.1 cm", "length", "tolerance-other-unit"],
  ["17 ± 1 oz", "mass", "tolerance-other-unit"],
  ["820 °C ± 1 %", "temperature", "unit-wrong-kind"],
  ["6.4 mm $", "length", "number-unreadable"],
  ["1e3 mm", "length", "unit-unknown"],
  ['7 7/8"+', "length", "tolerance-unreadable"],
];

describe("what parseQuantity refuses", () => {
  it.each(ERRORS)("%s as a %s: %s", (text, kind, code) => {
    const error = errorOf(text, kind);
    expect(error).toMatchObject({ code, kind, read: String(text) });
    expect(describeQuantityError(error)).not.toMatch(/undefined|\[object/u);
  });

  it("names the nearest unit of the right kind", () => {
    expect(errorOf("190 mmm", "length").nearest).toBe("mm");
    expect(errorOf("19 centimters", "length").nearest).toBe("cm");
    expect(errorOf("480 gr", "mass").nearest).toBe("g");
    expect(errorOf("17 onces", "mass").nearest).toBe("oz");
    expect(errorOf("7.8 g/cm", "density").nearest).toBe("g/cm3");
    expect(errorOf("190 furlong", "length").nearest).toBeUndefined();
  });

  it("says what was read, what is wrong and what to write", () => {
    expect(describeQuantityError(errorOf("480 g", "length"))).toBe(
      '"480 g" is a mass; a length belongs here, for example 190 mm, 7 1/2 in or 3/16"',
    );
    expect(describeQuantityError(errorOf("5 psi", "length"))).toMatch(/^"5 psi" is a unit of pressure;/u);
    expect(describeQuantityError(errorOf("190 mmm", "length"))).toBe(
      '"mmm" is not a unit of length; did you mean mm?',
    );
    expect(describeQuantityError(errorOf("3/16", "length"))).toBe(
      '"3/16" has no unit in a file in mm; write 3/16 in, or a decimal number of mm',
    );
    expect(describeQuantityError(errorOf("6,4 mm", "length"))).toMatch(/point, such as 6\.4/u);
  });

  it("shows foreign text short and without control characters", () => {
    const text = describeQuantityError(errorOf(`\u001b[31m${"x".repeat(60)}`, "length"));
    expect(text).not.toContain("\u001b");
    expect(text.length).toBeLessThan(120);
  });

  it("answers hostile text at once", () => {
    const started = performance.now();
    for (const text of ["7 ".repeat(40), "-".repeat(80), "1/".repeat(40), " ".repeat(1e6), '"'.repeat(80)]) {
      expect(parseQuantity(text, "length", "mm").ok).toBe(false);
    }
    expect(performance.now() - started).toBeLessThan(500);
  });
});

describe("a unit that is known and not taken", () => {
  it("is told with those that are", () => {
    expect(describeQuantityError(errorOf("2 yd", "length"))).toBe(
      '"2 yd": yd is not taken here; write mm, cm, m, in, ft, thou',
    );
    expect(describeQuantityError(errorOf("293 K", "temperature"))).toBe(
      '"293 K": K is not taken here; write C, F',
    );
  });

  it("is told with the number in degrees where a grad may be one", () => {
    expect(describeQuantityError(errorOf("20 grad", "angle"))).toBe(
      '"20 grad": grad can mean 1° or 0.9°, so it is not taken; write 20 deg if degrees are meant',
    );
    expect(describeQuantityError(errorOf("20Grad", "angle"))).toContain("write 20 deg if");
    expect(describeQuantityError(errorOf("20 gon", "angle"))).toContain("write 20 deg if");
    expect(describeQuantityError(errorOf("16 ± 1 gradians", "angle"))).toContain("write 16 ± 1 deg if");
    expect(errorOf("950 grad", "temperature").code).not.toBe("unit-gradian");
  });
});

describe("a unit after the tolerance alone", () => {
  it("that is not the file's is told with both ways to write it", () => {
    expect(describeQuantityError(errorOf("8 ± 0.02 in", "length"))).toBe(
      '"8 ± 0.02 in": only the tolerance has a unit, and a bare number here is in mm; write 8 mm ± 0.02 in, or 8 in ± 0.02 in',
    );
    expect(describeQuantityError(errorOf("17 +1/-2 oz", "mass"))).toContain(
      "write 17 g +1/-2 oz, or 17 oz +1/-2 oz",
    );
    // A sign in front is no tolerance; where the two cannot be told apart the units alone are named.
    expect(describeQuantityError(errorOf("+8 ± 0.02 in", "length"))).toContain(
      "the value's own unit too: mm or in",
    );
  });
});
