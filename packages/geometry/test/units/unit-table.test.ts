import convert from "convert-units";
import { describe, expect, it } from "vitest";
import {
  FAHRENHEIT_AT_ZERO_CELSIUS,
  findUnit,
  GRAMS_PER_OUNCE,
  GRAMS_PER_POUND,
  inchesToMm,
  MM_PER_INCH,
  unitNames,
} from "../../src/units/index.js";

describe("the exact constants", () => {
  // Source: international yard and pound agreement, 1959: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, both exactly.
  it("are those of the 1959 agreement, digit for digit", () => {
    expect(MM_PER_INCH).toBe(25.4);
    expect(GRAMS_PER_POUND).toBe(453.59237);
    expect(GRAMS_PER_OUNCE).toBe(28.349523125);
    expect(GRAMS_PER_OUNCE * 16).toBe(GRAMS_PER_POUND);
    expect(36 * MM_PER_INCH).toBeCloseTo(914.4, 12);
  });

  it("are needed, for the library's own inch is short by three parts in 10⁸, its pound and ounce by eight in 10⁷", () => {
    // Its feet in a metre are rounded to 3.28084. On a 10 m bar list that is 0.3 µm, and still not a drawing's 25.4.
    const inch = convert(1).from("in").to("mm");
    expect(inch).not.toBe(25.4);
    expect(inch / 25.4 - 1).toBeGreaterThan(-3.3e-8);
    expect(inch / 25.4 - 1).toBeLessThan(-3.1e-8);
    expect(convert(1).from("lb").to("g") / GRAMS_PER_POUND - 1).toBeCloseTo(-8.2e-7, 8);
    expect(convert(1).from("oz").to("g") / GRAMS_PER_OUNCE - 1).toBeCloseTo(-8.2e-7, 8);
    expect(inchesToMm(1)).toBe(25.4);
  });
});

describe("the unit table", () => {
  it("takes its names from the library", () => {
    expect(findUnit("in")).toMatchObject({ singular: "inch", plural: "inches", kind: "length" });
    expect(findUnit("lb")).toMatchObject({ singular: "pound", plural: "pounds", kind: "mass" });
    expect(findUnit("F")).toMatchObject({ plural: "degrees Fahrenheit", kind: "temperature" });
    expect(unitNames("angle")).toEqual(["rad", "deg"]);
  });

  it("sizes agree with the library to its own accuracy", () => {
    for (const [kind, base] of [
      ["length", "mm"],
      ["mass", "g"],
      ["angle", "deg"],
    ] as const) {
      for (const { abbr } of convert().list(kind)) {
        const unit = findUnit(abbr);
        if (unit === undefined || unit.abbreviation !== abbr) continue;
        const ratio = unit.factor.valueOf() / convert(1).from(abbr).to(base);
        expect(Math.abs(ratio - 1), abbr).toBeLessThan(1e-6);
      }
    }
  });

  it("leaves out words that mean different things to different readers, and what no shop measures in", () => {
    const refused = ["t", "mt", "ft-us", "yd", "mi", "km", "mg", "mcg", "grad", "arcmin", "arcsec", "K", "R"];
    for (const name of refused) expect(findUnit(name), name).toBeUndefined();
  });

  it("fixes the two points of each temperature scale", () => {
    const celsius = (name: string, value: number): number => {
      const unit = findUnit(name);
      if (unit === undefined) throw new Error(name);
      return (value - unit.offset.valueOf()) * unit.factor.valueOf();
    };
    expect(celsius("F", FAHRENHEIT_AT_ZERO_CELSIUS)).toBe(0);
    expect(celsius("F", 212)).toBeCloseTo(100, 12);
  });
});
