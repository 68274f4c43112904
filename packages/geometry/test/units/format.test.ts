import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type FileUnits,
  formatAngle,
  formatArea,
  formatDensity,
  formatLength,
  formatMass,
  formatNumber,
  formatShare,
  formatTemperature,
  formatVolume,
  GRAMS_PER_OUNCE,
  GRAMS_PER_POUND,
  MM_PER_INCH,
  parseQuantity,
  type QuantityKind,
} from "../../src/units/index.js";

const SEED = 1959;

function read(text: string, kind: QuantityKind, units: FileUnits): number {
  const reading = parseQuantity(text, kind, units);
  if (!reading.ok) throw new Error(`${text}: ${reading.error.code}`);
  return reading.quantity.value;
}

describe("formatLength", () => {
  it.each([
    [190, "190 mm"],
    [190.5, "190.5 mm"],
    [0.005, "0.01 mm"],
    [-0.001, "0 mm"],
    [-26, "-26 mm"],
    [1e6, "1000000 mm"],
  ])("shows %s mm as %s", (mm, text) => expect(formatLength(mm, "mm")).toBe(text));

  it.each([
    [200.025, '7 7/8"'],
    [25.4, '1"'],
    [0, '0"'],
    [4.7625, '3/16"'],
    [-4.7625, '-3/16"'],
    [190.5, '7 1/2"'],
    [200.1, '7 7/8"+'],
    [199.95, '7 7/8"−'],
    [200.029, '7 7/8"'],
    [0.1, '0"+'],
  ])("shows %s mm in inches as %s", (mm, text) => expect(formatLength(mm, "in")).toBe(text));

  it("takes other resolutions", () => {
    expect(formatLength(190.567, "mm", { resolution: 0.5 })).toBe("190.5 mm");
    expect(formatLength(0.5, "in", { resolution: 0.001 })).toBe('0.02"');
    expect(formatLength(0.508, "in", { resolution: 0.0001 })).toBe('0.02"');
    expect(formatLength(6.4, "in", { resolution: 1 / 16 })).toBe('1/4"+');
    expect(formatLength(6.4, "in", { resolution: 1 / 16, remainder: false })).toBe('1/4"');
  });
});

describe("the other formatters", () => {
  it("show masses in grams, or in pounds and ounces", () => {
    expect(formatMass(480, "mm")).toBe("480 g");
    expect(formatMass(480.26, "mm")).toBe("480.3 g");
    expect(formatMass(480.26, "mm", 1)).toBe("480 g");
    expect(formatMass(10 * GRAMS_PER_OUNCE, "in")).toBe("10 oz");
    expect(formatMass(18 * GRAMS_PER_OUNCE, "in")).toBe("1 lb 2 oz");
    expect(formatMass(GRAMS_PER_POUND, "in")).toBe("1 lb");
    expect(formatMass(GRAMS_PER_POUND - 0.01, "in")).toBe("1 lb");
    expect(formatMass(2 * GRAMS_PER_POUND - 0.001, "in", 0.1)).toBe("2 lb");
    expect(formatMass(-GRAMS_PER_POUND, "in")).toBe("-1 lb");
    expect(formatMass(0, "in")).toBe("0 oz");
  });

  it("show angles, temperatures, densities, areas, volumes and shares", () => {
    expect(formatAngle(Math.PI / 12)).toBe("15°");
    expect(formatTemperature(820, "mm")).toBe("820 °C");
    expect(formatTemperature(815.5556, "in")).toBe("1500 °F");
    expect(formatDensity(0.00785, "mm")).toBe("7.85 g/cm³");
    // 0.2836 lb/in³ is the usual handbook figure for 7.85 g/cm³ (from memory).
    expect(formatDensity(0.00785, "in")).toBe("0.2836 lb/in³");
    expect(formatVolume(25333.333, "mm")).toBe("25.33 cm³");
    expect(formatVolume(MM_PER_INCH ** 3, "in")).toBe("1 in³");
    expect(formatArea(645.16, "mm")).toBe("645.2 mm²");
    expect(formatArea(645.16, "in")).toBe("1 in²");
    expect(formatShare(0.012)).toBe("1.2 %");
  });

  it("write numbers without trailing zeros, exponents or negative zero", () => {
    expect(formatNumber(1e-9, 0.01)).toBe("0");
    expect(formatNumber(-1e-9, 0.01)).toBe("0");
    expect(formatNumber(100, 1)).toBe("100");
    expect(formatNumber(1234, 50)).toBe("1250");
    expect(formatNumber(0.15, 0.05)).toBe("0.15");
  });
});

describe("what is written reads back within the resolution", () => {
  const units = fc.constantFrom<FileUnits>("mm", "in");
  const slack = 1 + 1e-9;

  it("lengths", () => {
    fc.assert(
      fc.property(fc.double({ min: -2000, max: 2000, noNaN: true }), units, (mm, unit) => {
        const step = unit === "mm" ? 0.01 : MM_PER_INCH / 64;
        const back = read(formatLength(mm, unit, { remainder: false }), "length", unit);
        expect(Math.abs(back - mm)).toBeLessThanOrEqual((step / 2) * slack);
      }),
      { seed: SEED },
    );
  });

  it("lengths in thousandths of an inch", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 300, noNaN: true }), (mm) => {
        const back = read(formatLength(mm, "in", { resolution: 0.001 }), "length", "mm");
        expect(Math.abs(back - mm)).toBeLessThanOrEqual(0.0127 * slack);
      }),
      { seed: SEED },
    );
  });

  it("every 64th of an inch, exactly and without a remainder mark", () => {
    for (let count = 0; count <= 64 * 24; count++) {
      const mm = read(`${count}/64 in`, "length", "mm");
      const text = formatLength(mm, "in");
      expect(text).toMatch(/"$/u);
      expect(read(text, "length", "mm")).toBe(mm);
    }
  });

  it("masses, angles, temperatures, densities and shares", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5000, noNaN: true }), units, (value, unit) => {
        const massStep = unit === "mm" ? 0.1 : 0.01 * GRAMS_PER_OUNCE;
        expect(Math.abs(read(formatMass(value, unit), "mass", unit) - value)).toBeLessThanOrEqual(
          (massStep / 2) * slack,
        );
        const degrees = (value / 5000) * 180;
        const back = read(formatAngle((degrees * Math.PI) / 180), "angle", unit) * (180 / Math.PI);
        expect(Math.abs(back - degrees)).toBeLessThanOrEqual(0.05 * slack);
        expect(
          Math.abs(read(formatTemperature(value, unit), "temperature", unit) - value),
        ).toBeLessThanOrEqual(0.5 * slack);
        const density = value / 250_000;
        const densityStep = unit === "mm" ? 1e-6 : 1e-4 * (GRAMS_PER_POUND / MM_PER_INCH ** 3);
        expect(Math.abs(read(formatDensity(density, unit), "density", unit) - density)).toBeLessThanOrEqual(
          (densityStep / 2) * slack,
        );
        const share = value / 5000;
        expect(Math.abs(read(formatShare(share), "share", unit) - share)).toBeLessThanOrEqual(0.0005 * slack);
      }),
      { seed: SEED },
    );
  });
});
