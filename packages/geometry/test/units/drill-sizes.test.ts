import { describe, expect, test } from "vitest";
import { drillSizes, findDrill } from "../../src/units/drill-sizes.js";

const sizeOf = (name: string): number =>
  drillSizes().find((drill) => drill.name === name)?.diameter ?? Number.NaN;

describe("drill sizes", () => {
  // ASME B94.11M, in inches, as six public tables agree.
  test.each([
    ["#1", 0.228],
    ["#10", 0.1935],
    ["#12", 0.189],
    ["#30", 0.1285],
    ["#43", 0.089],
    ["#60", 0.04],
    ["A", 0.234],
    ["E", 0.25],
    ["O", 0.316],
    ["Z", 0.413],
    ["1/16 in", 0.0625],
    ["9/64 in", 0.140625],
    ["1/2 in", 0.5],
  ])("%s is %s in", (name, inches) => {
    expect(sizeOf(name)).toBeCloseTo(inches * 25.4, 12);
  });

  test("metric ones are the decimal that their name says", () => {
    for (const { name, diameter } of drillSizes(["metric"])) expect(`${diameter} mm`).toBe(name);
    expect(drillSizes(["metric"])).toHaveLength(91);
  });

  test("sets are whole, fall and rise as they are numbered", () => {
    const numbers = drillSizes(["number"]);
    expect(numbers).toHaveLength(60);
    expect(numbers.map(({ name }) => name)).toEqual(Array.from({ length: 60 }, (_, i) => `#${60 - i}`));
    const letters = drillSizes(["letter"]);
    expect(letters.map(({ name }) => name).join("")).toBe("ABCDEFGHIJKLMNOPQRSTUVWXYZ");
    expect(drillSizes(["fraction"]).map(({ diameter }) => (diameter * 64) / 25.4)).toEqual(
      Array.from({ length: 32 }, (_, i) => expect.closeTo(i + 1, 9)),
    );
    expect(drillSizes()).toHaveLength(60 + 26 + 32 + 91);
    expect(drillSizes([])).toEqual([]);
  });

  test.each([
    ["#30", "#30"],
    ["no. 7", "#7"],
    ["Number 07", "#7"],
    ["f", "F"],
    [" Z ", "Z"],
  ])("%s is found", (text, name) => {
    expect(findDrill(text)?.name).toBe(name);
  });

  test.each(["#0", "#61", "AA", "4 mm", ""])("%s is no drill of a number or letter set", (text) => {
    expect(findDrill(text)).toBeUndefined();
  });
});
