import { describe, expect, test } from "vitest";
import { flatMass, massPerLength } from "../../src/stock/bar-mass.js";
import { GRAMS_PER_POUND, MM_PER_INCH } from "../../src/units/constants.js";

/**
 * EN 10058 nominal masses, kg/m at the section tables' 7.85 kg/dm³. The second figure, where given, is the rounded one
 * of a public file of EN 10058 profiles (a secondary copy); the first is arithmetic.
 */
const EN_10058: readonly [width: number, thickness: number, kgPerMetre: number, published?: string][] = [
  [20, 3, 0.471, "0.47"],
  [25, 3, 0.58875, "0.59"],
  [30, 3, 0.7065, "0.71"],
  [20, 5, 0.785],
  [20, 6, 0.942],
  [25, 5, 0.98125],
  [25, 6, 1.1775],
  [25, 8, 1.57],
  [30, 5, 1.1775],
  [30, 6, 1.413],
  [30, 8, 1.884],
  [30, 10, 2.355],
  [40, 5, 1.57, "1.57"],
  [40, 6, 1.884],
  [40, 8, 2.512],
  [40, 10, 3.14],
  [50, 5, 1.9625, "1.96"],
  [50, 6, 2.355],
  [50, 8, 3.14],
  [50, 10, 3.925],
  [50, 12, 4.71],
  [60, 5, 2.355, "2.36"],
  [60, 8, 3.768],
  [60, 10, 4.71],
  [60, 12, 5.652],
  [80, 8, 5.024, "5.02"],
  [80, 10, 6.28],
  [100, 6, 4.71],
  [100, 8, 6.28, "6.28"],
  [100, 10, 7.85],
  [120, 8, 7.536, "7.54"],
  [150, 10, 11.775, "11.8"],
  [200, 12, 18.84, "18.8"],
  [250, 15, 29.4375, "29.4"],
  [300, 20, 47.1, "47.1"],
];

describe("EN 10058 flats", () => {
  test.each(EN_10058)("%d x %d is %d kg/m", (width, thickness, kgPerMetre, published) => {
    const computed = massPerLength(width, thickness);
    expect(Math.abs(computed / kgPerMetre - 1)).toBeLessThan(1e-12);
    if (published !== undefined) {
      // Half a unit of the last printed figure.
      const half = 0.5001 * 10 ** -(published.split(".")[1]?.length ?? 0);
      expect(Math.abs(computed - Number(published))).toBeLessThanOrEqual(half);
    }
  });

  test("six metres of 50 x 10 weigh 23.550 kg", () => {
    expect(flatMass({ width: 50, thickness: 10, length: 6000 })).toBeCloseTo(23_550, 8);
  });

  test("seven bars 40 x 3 x 150 weigh 989.10 g", () => {
    expect(7 * flatMass({ width: 40, thickness: 3, length: 150 })).toBeCloseTo(989.1, 9);
  });
});

const MM_PER_FOOT = 12 * MM_PER_INCH;
/** g/mm³ of a density in lb/ft³. */
const lbPerFt3 = (density: number): number => (density * GRAMS_PER_POUND) / MM_PER_FOOT ** 3;
const lbPerFoot = (width: number, thickness: number, density: number): number =>
  (massPerLength(width * MM_PER_INCH, thickness * MM_PER_INCH, density) * MM_PER_FOOT) / GRAMS_PER_POUND;

/**
 * lb/ft of inch flats. First: the handbook convention 489.6 lb/ft³, 3.400·w·t (convention from memory, arithmetic
 * exact). Second: 490 lb/ft³, 3.4028·w·t. Third: the tool-steel rule 3.396·w·t printed by Lincoln Machine and by the
 * Blacksmiths Association of Missouri (secondary copies).
 */
const INCH_FLATS: readonly [thickness: number, width: number, by4896: number, by490: number, rule: number][] =
  [
    [1 / 8, 1, 0.425, 0.4253, 0.4245],
    [1 / 8, 1.5, 0.6375, 0.638, 0.6367],
    [3 / 16, 1, 0.6375, 0.638, 0.6367],
    [3 / 16, 1.5, 0.9563, 0.957, 0.9551],
    [1 / 4, 1, 0.85, 0.8507, 0.849],
    [1 / 4, 1.25, 1.0625, 1.0634, 1.0613],
    [1 / 4, 1.5, 1.275, 1.276, 1.2735],
    [1 / 4, 2, 1.7, 1.7014, 1.698],
    [3 / 8, 1.5, 1.9125, 1.9141, 1.9102],
    [3 / 8, 2, 2.55, 2.5521, 2.547],
    [1 / 2, 1.5, 2.55, 2.5521, 2.547],
    [1 / 2, 2, 3.4, 3.4028, 3.396],
    [1, 2, 6.8, 6.8056, 6.792],
  ];

describe("inch flats", () => {
  test.each(INCH_FLATS)("%d x %d", (thickness, width, by4896, by490, rule) => {
    // Half a unit of the last printed figure.
    expect(Math.abs(lbPerFoot(width, thickness, lbPerFt3(489.6)) - by4896)).toBeLessThanOrEqual(0.5001e-4);
    expect(Math.abs(lbPerFoot(width, thickness, lbPerFt3(490)) - by490)).toBeLessThanOrEqual(0.5001e-4);
    // The conventions differ in the third figure: 0.3 % covers all three at 7.85 g/cm³.
    const at785 = lbPerFoot(width, thickness, 0.00785);
    for (const printed of [by4896, by490, rule]) expect(Math.abs(at785 / printed - 1)).toBeLessThan(0.003);
  });

  test("7.85 g/cm³ is 490.06 lb/ft³, and 489.6 lb/ft³ is 7.8426 g/cm³", () => {
    expect(0.00785 / lbPerFt3(1)).toBeCloseTo(490.06, 2);
    expect(lbPerFt3(489.6) * 1000).toBeCloseTo(7.8426, 4);
  });
});

/**
 * Worked bar weights of a machining trade article (secondary copy), by 0.2833 lb/in³. Its first result is 0.4 % off its
 * own arithmetic (40.97 printed, 40.8 by its figures), so both are stated.
 */
describe("worked bar weights", () => {
  const POUND_PER_CUBIC_INCH = GRAMS_PER_POUND / MM_PER_INCH ** 3;
  const pounds = (width: number, thickness: number, inches: number): number =>
    flatMass(
      { width: width * MM_PER_INCH, thickness: thickness * MM_PER_INCH, length: inches * MM_PER_INCH },
      0.2833 * POUND_PER_CUBIC_INCH,
    ) / GRAMS_PER_POUND;

  test("1 in square, 12 ft", () => {
    expect(pounds(1, 1, 144)).toBeCloseTo(40.8, 1);
    expect(Math.abs(pounds(1, 1, 144) / 40.97 - 1)).toBeLessThan(0.005);
  });

  test("1/2 x 2 in flat, 10 ft", () => {
    expect(pounds(2, 0.5, 120)).toBeCloseTo(34.0, 1);
    expect(Math.abs(pounds(2, 0.5, 120) - 33.99)).toBeLessThan(0.01);
  });

  /** Blacksmiths Association of Missouri quick rule, flats: w·t·10/3 lb/ft; 2 % below the exact figure. */
  test.each([
    [4, 4, 53.33],
    [4, 1, 13.33],
  ])("quick rule %d x %d", (width, thickness, printed) => {
    expect(Math.abs(lbPerFoot(width, thickness, 0.00785) / printed - 1)).toBeLessThan(0.025);
  });
});
