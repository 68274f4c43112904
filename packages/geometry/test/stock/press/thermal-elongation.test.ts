import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { GeometryError } from "../../../src/errors/errors.js";
import { stopHeight, stopHeightFindings } from "../../../src/stock/forge/stop-height.js";
import {
  coldSize,
  hotDensity,
  hotSize,
  thermalElongation,
} from "../../../src/stock/forge/thermal-elongation.js";

const SEED = 20261127;
/** The polynomial of the standard as it is printed, for the range below 750 °C: a second spelling of the same curve. */
const asPrinted = (t: number): number => 1.2e-5 * t + 0.4e-8 * t ** 2 - 2.416e-4;

describe("elongation of carbon steel, EN 1993-1-2:2005, 3.4.1.1", () => {
  // Worked out from the three formulas by hand; elongation to 6 decimals, hot height of 6 mm to 4, density to 3.
  test.each([
    [100, 0.000998, 6.006, 7.827],
    [400, 0.005198, 6.0312, 7.729],
    [600, 0.008398, 6.0504, 7.656],
    [700, 0.010118, 6.0607, 7.617],
    [749.9999999, 0.011008, 6.066, 7.596],
    [750, 0.011, 6.066, 7.597],
    [860, 0.011, 6.066, 7.597],
    [900, 0.0118, 6.0708, 7.579],
    [950, 0.0128, 6.0768, 7.556],
    [1000, 0.0138, 6.0828, 7.534],
    [1050, 0.0148, 6.0888, 7.512],
    [1100, 0.0158, 6.0948, 7.489],
    [1200, 0.0178, 6.1068, 7.445],
  ])("at %d °C", (celsius, elongation, hot, density) => {
    expect(Math.abs(thermalElongation(celsius) - elongation)).toBeLessThan(5e-7);
    expect(Math.abs(hotSize(6, celsius) - hot)).toBeLessThan(6e-5);
    expect(Math.abs(hotDensity(7.85, celsius) - density)).toBeLessThan(6e-4);
  });

  test("is exactly nothing at 20 °C", () => {
    expect(thermalElongation(20)).toBe(0);
    expect(hotSize(7.35, 20)).toBe(7.35);
    expect(hotDensity(7.85, 20)).toBe(7.85);
  });

  test("steps down by 8.4e-6 at 750 °C and is level to 860 °C", () => {
    // 0.0110084 by the polynomial at 750 °C, 0.011 by the level part.
    expect(thermalElongation(750 - 1e-9) - thermalElongation(750)).toBeCloseTo(8.4e-6, 12);
    expect(thermalElongation(805)).toBe(thermalElongation(750));
    expect(thermalElongation(860)).toBe(thermalElongation(750));
    expect(thermalElongation(860 + 1e-9) - thermalElongation(860)).toBeCloseTo(0, 12);
  });

  test("is the printed polynomial below 750 °C", () => {
    fc.assert(
      fc.property(fc.double({ min: 20, max: 749.999, noNaN: true }), (celsius) => {
        expect(Math.abs(thermalElongation(celsius) - asPrinted(celsius))).toBeLessThan(1e-16);
      }),
      { seed: SEED },
    );
  });

  test("agrees with the mean expansion of 1095 to 650 °C within 1 %", () => {
    // 14.6e-6 per K, 20 to 650 °C: steel data pages for AISI 1095, a secondary source.
    const mean = thermalElongation(650) / (650 - 20);
    expect(Math.abs(mean / 14.6e-6 - 1)).toBeLessThan(0.01);
  });

  test.each([19.99, -40, 1200.01, 2000, Number.NaN, Number.POSITIVE_INFINITY])("refuses %d °C", (celsius) => {
    expect(() => thermalElongation(celsius)).toThrow(GeometryError);
    expect(() => coldSize(6, celsius)).toThrow(GeometryError);
  });

  test("cold size undoes hot size", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 500, noNaN: true }),
        fc.double({ min: 20, max: 1200, noNaN: true }),
        (cold, celsius) => {
          expect(Math.abs(coldSize(hotSize(cold, celsius), celsius) / cold - 1)).toBeLessThan(1e-15 * 4);
        },
      ),
      { seed: SEED },
    );
  });
});

describe("height of a stop", () => {
  // The camp knife's heel, middle and point at 950 °C, hand checks to two decimals.
  test.each([
    [7.35, 7.44],
    [6.0, 6.08],
    [3.4, 3.44],
  ])("for %d mm cold at 950 °C is %d mm", (cold, stop) => {
    expect(Math.abs(stopHeight(cold, 950) - stop)).toBeLessThan(0.005);
  });

  test("is lower by what the press comes out thicker", () => {
    expect(stopHeight(6, 950, 0.3)).toBeCloseTo(5.7768, 10);
  });

  test("a stop of the cold size is noted, with the right one; the right one is not", () => {
    const work = { temperature: 950, stopOffset: 0.3 };
    const [note, ...others] = stopHeightFindings(5.7, 6, work, "press");
    expect(others).toEqual([]);
    expect(note).toMatchObject({ code: "stop-under-hot-height", severity: "note", path: "press" });
    expect(note?.values).toMatchObject({ right: { quantity: "length", value: stopHeight(6, 950, 0.3) } });
    expect(note?.basis).toMatch(/EN 1993-1-2/);
    expect(stopHeightFindings(stopHeight(6, 950, 0.3), 6, work, "press")).toEqual([]);
    expect(stopHeightFindings(5.77, 6, work, "press")).toEqual([]);
    expect(stopHeightFindings(5.76, 6, work, "press")).toHaveLength(1);
  });
});
