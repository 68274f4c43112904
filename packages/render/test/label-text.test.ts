import { describe, expect, it } from "vitest";
import { uprightDimension } from "../src/dimension.js";
import { flattenItems } from "../src/drawing.js";
import { caliperCell, lengthText, linesOf, massText, onOneLine, sizeText } from "../src/label-text.js";
import { besideUnits, type FigureStyle, mainUnits, unitsWords } from "../src/sheet-units.js";
import { volumeText } from "../src/sheets/plots/figures.js";
import { hammeredText, ruleText, ruleUpText } from "../src/sheets/preform/figures.js";

const style = (main: "mm" | "in", both: boolean, inches: FigureStyle["inches"]): FigureStyle => ({
  main,
  both,
  inches,
});

// 7 7/8" is 200.025 mm; 0.1" is 2.54 mm; 1/16" is 1.5875 mm.
describe("figures of a sheet", () => {
  it.each([
    ["mm", '200.03 mm [7 7/8"]', '2.54 mm [0.100"]'],
    ["in", '7 7/8" [200.03 mm]', '0.100" [2.54 mm]'],
    [style("mm", true, "decimals"), '200.03 mm [7.875"]', '2.54 mm [0.100"]'],
    [style("in", true, "decimals"), '7.875" [200.03 mm]', '0.100" [2.54 mm]'],
    [style("mm", false, "fractions"), "200.03 mm", "2.54 mm"],
    [style("in", false, "fractions"), '7 7/8"', '0.100"'],
    [style("in", false, "decimals"), '7.875"', '0.100"'],
  ] as const)("in %j", (units, tape, caliper) => {
    expect(onOneLine(lengthText(200.025, units))).toBe(tape);
    expect(onOneLine(sizeText(2.54, units))).toBe(caliper);
  });

  it("are to the nearest 1/64 or 0.001 in with a tape, and always to 0.001 with a caliper, in columns as 0.01 mm are", () => {
    const [fractions, decimals] = [style("in", false, "fractions"), style("in", false, "decimals")];
    expect(lengthText(100, fractions).main).toBe('3 15/16"');
    expect(lengthText(100, decimals).main).toBe('3.937"');
    // 1/16" is 0.0625: what is a fraction stands as one, and 4.7625 mm is the 3/16" drill.
    expect(sizeText(1.5875, decimals).main).toBe('0.063"');
    expect(sizeText(1.5875, fractions).main).toBe('1/16"');
    expect(sizeText(4.7625, fractions).main).toBe('3/16"');
    expect(sizeText(25.4, decimals).main).toBe('1.000"');
    for (const units of [fractions, decimals]) {
      // 15/64" is 5.953 mm and 5.96 mm are not.
      expect(sizeText(5.96, units).main).toBe('0.235"');
      expect(sizeText(6.096, units).main).toBe('0.240"');
      expect(sizeText(-0.001, units).main).toBe('0.000"');
    }
    expect(onOneLine(sizeText(4, "mm"))).toBe('4 mm [0.157"]');
    expect(onOneLine(caliperCell(4, "mm"))).toBe('4.00 mm [0.157"]');
    expect(caliperCell(-2.5, "mm").main).toBe("−2.50 mm");
    expect(lengthText(-2.54, decimals).main).toBe('−0.1"');
  });

  it("of masses and volumes leave the other unit out too", () => {
    const own = style("in", false, "fractions");
    expect(linesOf(massText(500, "mm"))).toEqual(["500 g", "[1 lb 1.6 oz]"]);
    expect(linesOf(massText(500, own))).toEqual(["1 lb 1.6 oz"]);
    expect(linesOf(volumeText(16387.064, "in"))).toEqual(["1 in³", "[16.4 cm³]"]);
    expect(linesOf(volumeText(16387.064, own))).toEqual(["1 in³"]);
  });

  it("for hot steel are hundredths of an inch where there are no fractions, a mark never short of its place", () => {
    const decimals = style("in", false, "decimals");
    expect(ruleText(100, "in").main).toBe('3 15/16"');
    expect(ruleText(100, decimals).main).toBe('3.94"');
    expect(hammeredText(2.5, decimals)).toEqual(hammeredText(2.5, style("in", false, "fractions")));
    // 0.2 in and 3 mm stand beside 0.18 in and 4.6 mm.
    expect(hammeredText(5.08, "in")).toEqual({ main: '0.20"', other: "[5.1 mm]" });
    expect(hammeredText(4.572, "in").main).toBe('0.18"');
    expect(hammeredText(3, "mm")).toEqual({ main: "3.0 mm", other: '[0.12"]' });
    // 100.1 mm are 3.9409 in.
    expect(ruleUpText(100.1, decimals).main).toBe('3.95"');
    expect(ruleUpText(100.1, style("in", false, "fractions")).main).toBe('3 31/32"');
  });
});

describe("units of a sheet", () => {
  it("that are a plain word stand for both, with fractions", () => {
    for (const main of ["mm", "in"] as const) {
      const whole = style(main, true, "fractions");
      expect([mainUnits(main), besideUnits(main), unitsWords(main)]).toEqual([
        mainUnits(whole),
        besideUnits(whole),
        unitsWords(whole),
      ]);
      expect(lengthText(123.4, main)).toEqual(lengthText(123.4, whole));
    }
    expect(unitsWords("mm")).toBe("mm [inches]");
  });

  it("are said alone where there are no others", () => {
    expect(unitsWords(style("mm", false, "fractions"))).toBe("mm");
    expect(unitsWords(style("in", false, "decimals"))).toBe("inches");
  });
});

describe("an upright dimension without the other unit", () => {
  it.each([92, 20, 12, 4])("of %f mm has its figure once, on no line", (high) => {
    const items = uprightDimension({
      low: 0,
      high,
      lowFrom: 10,
      highFrom: 10,
      x: 20,
      ...lengthText(high, style("mm", false, "fractions")),
    });
    const texts = flattenItems(items).flatMap((item) => (item.kind === "text" ? [item] : []));
    expect(texts.map(({ text }) => text)).toEqual([`${high} mm`]);
  });
});
