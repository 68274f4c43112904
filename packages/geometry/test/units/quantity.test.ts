import { describe, expect, it } from "vitest";
import { type FileUnits, parseQuantity, type QuantityKind } from "../../src/units/index.js";

// Expected values are worked out by hand from 1 in = 25.4 mm and 1 lb = 453.59237 g exactly
// (international yard and pound agreement, 1959), 1 oz = 1/16 lb.
const INCH = 25.4;
const POUND = 453.59237;
const OUNCE = 28.349523125;
const DEGREE = Math.PI / 180;

type Row = readonly [text: string | number, kind: QuantityKind, units: FileUnits, value: number];

const VALUES: readonly Row[] = [
  // times, in seconds
  ["3 h", "time", "mm", 10_800],
  [3, "time", "in", 10_800],
  ["90 min", "time", "mm", 5_400],
  ["1 h 30 min", "time", "mm", 5_400],
  ["1 1/2 hours", "time", "mm", 5_400],
  ["2 days", "time", "mm", 172_800],
  ["1 week", "time", "in", 604_800],
  // metric lengths
  ["190 mm", "length", "mm", 190],
  ["190mm", "length", "in", 190],
  ["19 cm", "length", "mm", 190],
  ["0.19 m", "length", "mm", 190],
  ["190 millimetres", "length", "mm", 190],
  ["19 Centimeters", "length", "mm", 190],
  ["190 MM", "length", "mm", 190],
  ["190 mm.", "length", "mm", 190],
  [190, "length", "mm", 190],
  ["190", "length", "mm", 190],
  ["4.60", "length", "mm", 4.6],
  [".5", "length", "mm", 0.5],
  ["+5 mm", "length", "mm", 5],
  ["-26 mm", "length", "mm", -26],
  ["\u221226 mm", "length", "mm", -26],
  ["\u201326 mm", "length", "mm", -26],
  [-26, "length", "mm", -26],
  [1e-7, "length", "mm", 1e-7],
  // inches
  ["7 1/2 in", "length", "mm", 190.5],
  ['7-1/2"', "length", "mm", 190.5],
  ["7-1/2 inches", "length", "mm", 190.5],
  ["7½ in", "length", "mm", 190.5],
  ["7 ½ in", "length", "mm", 190.5],
  ["7-½ in", "length", "mm", 190.5],
  ["7\u20131/2 in", "length", "mm", 190.5],
  ["7 1\u20442 in", "length", "mm", 190.5],
  ["7⅞ in", "length", "mm", 200.025],
  ['3/16"', "length", "mm", 4.7625],
  ["3/16\u2033", "length", "mm", 4.7625],
  ["3/16\u201d", "length", "mm", 4.7625],
  ["3/16''", "length", "mm", 4.7625],
  ["½ in", "length", "mm", 12.7],
  ["8.25in", "length", "mm", 209.55],
  ["8.25 in.", "length", "mm", 209.55],
  ["1 inch", "length", "mm", 25.4],
  ["9/8 in", "length", "mm", 28.575],
  ["-7 1/2 in", "length", "mm", -190.5],
  ["25 thou", "length", "mm", 0.635],
  [8.25, "length", "in", 209.55],
  ["8 1/4", "length", "in", 209.55],
  ["8-1/4", "length", "in", 209.55],
  ["3/16", "length", "in", 4.7625],
  ["7 1/2 mm", "length", "mm", 7.5],
  // feet
  ["6'2\"", "length", "mm", 74 * INCH],
  ["6' 2 1/2\"", "length", "mm", 1892.3],
  ["6\u20322½\u2033", "length", "mm", 1892.3],
  ["6\u20192\u201d", "length", "mm", 74 * INCH],
  ["6 ft 2 in", "length", "mm", 74 * INCH],
  ["6ft2in", "length", "mm", 74 * INCH],
  ["6 feet", "length", "mm", 1828.8],
  ["1 m 20 cm", "length", "mm", 1200],
  // masses
  ["480 g", "mass", "mm", 480],
  ["0.5 kg", "mass", "mm", 500],
  ["480 grams", "mass", "in", 480],
  ["17 oz", "mass", "mm", 481.941893125],
  ["1 lb", "mass", "mm", POUND],
  ["1 lb 2 oz", "mass", "mm", 510.29141625],
  ["1lb2oz", "mass", "mm", 510.29141625],
  ["1 pound 2 ounces", "mass", "mm", 510.29141625],
  ["2 lbs", "mass", "mm", 2 * POUND],
  ["1 1/2 lb", "mass", "mm", 680.388555],
  [17, "mass", "in", 17 * OUNCE],
  [480, "mass", "mm", 480],
  // angles
  ["15 deg", "angle", "mm", 15 * DEGREE],
  ["15°", "angle", "mm", 15 * DEGREE],
  ["15 º", "angle", "mm", 15 * DEGREE],
  ["15 degrees", "angle", "mm", 15 * DEGREE],
  ["12 1/2 deg", "angle", "mm", 12.5 * DEGREE],
  ["0.28 rad", "angle", "mm", 0.28],
  [15, "angle", "mm", 15 * DEGREE],
  [15, "angle", "in", 15 * DEGREE],
  // temperatures
  ["820 C", "temperature", "mm", 820],
  ["820 °C", "temperature", "in", 820],
  ["820\u2103", "temperature", "in", 820],
  ["1500 °F", "temperature", "mm", 7340 / 9],
  ["1500 F", "temperature", "mm", 7340 / 9],
  ["1500 deg F", "temperature", "mm", 7340 / 9],
  ["1500 degrees Fahrenheit", "temperature", "mm", 7340 / 9],
  ["-40 °F", "temperature", "mm", -40],
  ["32 °F", "temperature", "mm", 0],
  [1500, "temperature", "in", 7340 / 9],
  [820, "temperature", "mm", 820],
  // densities
  ["7.83 g/cm3", "density", "mm", 0.00783],
  ["7.83 g/cm³", "density", "mm", 0.00783],
  ["7.83 g/cm^3", "density", "mm", 0.00783],
  ["7.83 g / cc", "density", "mm", 0.00783],
  ["7850 kg/m3", "density", "mm", 0.00785],
  ["0.2836 lb/in3", "density", "mm", (0.2836 * POUND) / INCH ** 3],
  ["489.6 lb/ft3", "density", "mm", (489.6 * POUND) / (12 * INCH) ** 3],
  [7.83, "density", "mm", 0.00783],
  [0.2836, "density", "in", (0.2836 * POUND) / INCH ** 3],
  // shares
  ["60 %", "share", "mm", 0.6],
  ["60%", "share", "in", 0.6],
  ["1.2 %", "share", "mm", 0.012],
  ["1/3 %", "share", "mm", 1 / 300],
  ["60 percent", "share", "mm", 0.6],
  [0.6, "share", "mm", 0.6],
  ["0.6", "share", "mm", 0.6],
];

describe("parseQuantity", () => {
  it.each(VALUES)("reads %s as a %s in a file in %s", (text, kind, units, value) => {
    const reading = parseQuantity(text, kind, units);
    if (!reading.ok) throw new Error(reading.error.code);
    // One part in 10¹⁵: exact ratios, rounded once or twice to the nearest double.
    expect(Math.abs(reading.quantity.value - value)).toBeLessThanOrEqual(1e-15 * Math.abs(value));
    expect(reading.quantity).toMatchObject({ plus: 0, minus: 0 });
  });

  it("rounds inch sizes once: decimal results are the nearest doubles themselves", () => {
    // 8.25 · 25.4 in floating point is not 209.55.
    expect(parseQuantity("8.25 in", "length", "mm")).toEqual({
      ok: true,
      quantity: { value: 209.55, plus: 0, minus: 0 },
    });
    expect(parseQuantity("1 lb 2 oz", "mass", "mm")).toMatchObject({ quantity: { value: 510.29141625 } });
  });
});

type ToleranceRow = readonly [
  text: string,
  kind: QuantityKind,
  units: FileUnits,
  value: number,
  plus: number,
  minus: number,
];

const TOLERANCES: readonly ToleranceRow[] = [
  ["6.4 ± 0.2 mm", "length", "mm", 6.4, 0.2, 0.2],
  ["6.4±0.2mm", "length", "mm", 6.4, 0.2, 0.2],
  // The value is in the file's units: a finer unit after its tolerance does not divide it.
  ["5/32 ± 5 thou", "length", "in", 3.96875, 0.127, 0.127],
  ["0.14 +5/-2 thou", "length", "in", 3.556, 0.127, 0.0508],
  ["6.4 +/- 0.2 mm", "length", "mm", 6.4, 0.2, 0.2],
  ["6.4 +- 0.2 mm", "length", "mm", 6.4, 0.2, 0.2],
  ["6.4 mm ± 0.2 mm", "length", "mm", 6.4, 0.2, 0.2],
  ["6.4 mm ± 0.2", "length", "in", 6.4, 0.2, 0.2],
  ["6.4 ± 0.2", "length", "mm", 6.4, 0.2, 0.2],
  ["6.4 mm ± 1/64 in", "length", "mm", 6.4, 0.396875, 0.396875],
  ["6.4 +0.3/-0.1 mm", "length", "mm", 6.4, 0.3, 0.1],
  ["6.4 +0.3 / \u22120.1 mm", "length", "mm", 6.4, 0.3, 0.1],
  ["6.4 -0.1/+0.3 mm", "length", "mm", 6.4, 0.3, 0.1],
  ["6.4 +0.3 -0.1 mm", "length", "mm", 6.4, 0.3, 0.1],
  ["6.4 mm +0.3/-0", "length", "mm", 6.4, 0.3, 0],
  ["6.4 mm +0.3/0", "length", "mm", 6.4, 0.3, 0],
  ["6.4 +0.3 mm/-0.1 mm", "length", "mm", 6.4, 0.3, 0.1],
  ["1/4 ± 1/64 in", "length", "in", 6.35, 0.396875, 0.396875],
  ['1/4" +1/32/-1/64', "length", "mm", 6.35, 0.79375, 0.396875],
  ["7½″ ± ⅛″", "length", "mm", 190.5, 3.175, 3.175],
  ["1/4 ± 0.01", "length", "in", 6.35, 0.254, 0.254],
  ["-26 ± 0.5 mm", "length", "mm", -26, 0.5, 0.5],
  ["480 g ± 2 %", "mass", "mm", 480, 9.6, 9.6],
  ["480 ± 2 %", "mass", "mm", 480, 9.6, 9.6],
  ["1 lb 2 oz ± 1 oz", "mass", "mm", 510.29141625, OUNCE, OUNCE],
  ["16 ± 1 deg", "angle", "mm", 16 * DEGREE, DEGREE, DEGREE],
  ["16° ± 0.5°", "angle", "mm", 16 * DEGREE, 0.5 * DEGREE, 0.5 * DEGREE],
  // A difference of temperatures takes no offset: 18 °F is 10 °C wide.
  ["1500 ± 18 °F", "temperature", "in", 7340 / 9, 10, 10],
  ["820 °C ± 18 °F", "temperature", "mm", 820, 10, 10],
  ["7.83 g/cm3 ± 1 %", "density", "mm", 0.00783, 0.0000783, 0.0000783],
  ["7.83 ± 0.02 g/cm3", "density", "mm", 0.00783, 0.00002, 0.00002],
  ["80 ± 5 %", "share", "mm", 0.8, 0.05, 0.05],
  ["1.2 % ± 0.6 %", "share", "mm", 0.012, 0.006, 0.006],
];

describe("tolerances", () => {
  it.each(TOLERANCES)("reads %s as a %s in a file in %s", (text, kind, units, value, plus, minus) => {
    const reading = parseQuantity(text, kind, units);
    if (!reading.ok) throw new Error(reading.error.code);
    const { quantity } = reading;
    expect(Math.abs(quantity.value - value)).toBeLessThanOrEqual(1e-15 * Math.abs(value));
    expect(Math.abs(quantity.plus - plus)).toBeLessThanOrEqual(1e-15 * plus);
    expect(Math.abs(quantity.minus - minus)).toBeLessThanOrEqual(1e-15 * minus);
  });
});
