import { formatCaliper } from "@scantling/geometry/units";
import { describe, expect, it } from "vitest";
import {
  fineMassText,
  fixed,
  inBoth,
  lengthText,
  massText,
  percentText,
  placeText,
  range,
  signedText,
  volumeText,
} from "../../src/report/figures.js";

describe("numbers as reports show them", () => {
  it("shows masses to 1 g or 0.1 oz; a pound is 453.59237 g and 16 oz", () => {
    expect(massText(544.6, "mm")).toBe("545 g");
    expect(massText(453.59237, "in")).toBe("1 lb");
    expect(massText(544.6, "in")).toBe("1 lb 3.2 oz");
  });

  it("shows volumes to 0.1 cm³ or 0.01 in³; an inch is 25.4 mm, so 1 in³ is 16 387.064 mm³", () => {
    expect(volumeText(52_483, "mm")).toBe("52.5 cm³");
    expect(volumeText(16_387.064, "in")).toBe("1.00 in³");
  });

  it("shows lengths to 0.1 mm or 1/64 in", () => {
    expect(lengthText(225, "mm")).toBe("225.0 mm");
    expect(lengthText(190.5, "in")).toBe('7 1/2"');
    expect(lengthText(25.4 / 64, "in")).toBe('1/64"');
  });

  it("puts the other units in brackets", () => {
    expect(inBoth(lengthText, 190.5, "in")).toBe('7 1/2" (190.5 mm)');
    expect(range(massText, [521.2, 568.7], "mm")).toBe("521 g to 569 g");
  });

  it("has no negative zero", () => {
    expect(fixed(-0.04, 1)).toBe("0.0");
    expect(fixed(-0.06, 1)).toBe("-0.1");
  });

  it("does not show a small share as nothing", () => {
    expect(percentText(0.004)).toBe("<1 %");
    expect(percentText(0)).toBe("0 %");
    expect(percentText(0.614)).toBe("61 %");
  });
});

const OUNCE = 28.349523125;

describe("masses of parts, ledgers and differences", () => {
  it("are shown to 0.01 oz below a pound, so that they add up", () => {
    // 4.44 + 1.06 oz: to 0.1 they would be 4.4 and 1.1, and their sum 5.5.
    expect(fineMassText(4.44 * OUNCE, "in")).toBe("4.44 oz");
    expect(fineMassText(1.06 * OUNCE, "in")).toBe("1.06 oz");
    expect(fineMassText(2.3 * OUNCE, "in")).toBe("2.30 oz");
    // 0.01 oz is 0.28 g.
    expect(fineMassText(0.3, "in")).toBe("0.01 oz");
    expect(fineMassText(15.997 * OUNCE, "in")).toBe("1 lb");
    expect(fineMassText(544.6, "in")).toBe("1 lb 3.2 oz");
    expect(fineMassText(-1.5 * OUNCE, "in")).toBe("-1.50 oz");
  });

  it("are shown to 0.1 g below 10 g, and to 1 g from there on", () => {
    expect(fineMassText(125.9, "mm")).toBe("126 g");
    expect(fineMassText(10, "mm")).toBe("10 g");
    expect(fineMassText(9.96, "mm")).toBe("10 g");
    expect(fineMassText(9.94, "mm")).toBe("9.9 g");
    expect(fineMassText(0.3, "mm")).toBe("0.3 g");
    expect(fineMassText(-0.3, "mm")).toBe("-0.3 g");
  });

  it("are a plain 0 only where there is nothing", () => {
    expect(fineMassText(0, "mm")).toBe("0 g");
    expect(fineMassText(1e-13, "in")).toBe("0 oz");
    expect(fineMassText(0.02, "mm")).toBe("0.0 g");
    expect(fineMassText(-0.02, "mm")).toBe("0.0 g");
    expect(fineMassText(-0.02, "in")).toBe("0.00 oz");
  });

  it("have volumes that show as much: 0.3 g of steel are 0.04 cm³ or 0.002 in³", () => {
    expect(volumeText(300 / 7.85, "mm")).toBe("0.04 cm³");
    expect(volumeText(300 / 7.85, "in")).toBe("0.002 in³");
    expect(volumeText(996, "mm")).toBe("1.0 cm³");
    expect(volumeText(994, "mm")).toBe("0.99 cm³");
    expect(volumeText(0.0996 * 16_387.064, "in")).toBe("0.10 in³");
    expect(volumeText(0, "mm")).toBe("0 cm³");
    expect(volumeText(0, "in")).toBe("0 in³");
  });
});

describe("signs", () => {
  it("stand before what is shown as something, and before nothing else", () => {
    expect(signedText(fineMassText, 33, "mm")).toBe("+33 g");
    expect(signedText(fineMassText, -0.3, "mm")).toBe("−0.3 g");
    for (const value of [0, -0, -1e-12, -0.01, 0.01]) {
      expect(signedText(fineMassText, value, "mm"), `${value}`).toMatch(/^0/u);
      expect(signedText(fineMassText, value, "in"), `${value}`).toMatch(/^0/u);
      expect(signedText(formatCaliper, value / 10, "mm"), `${value}`).toBe("0.00 mm");
      expect(signedText(formatCaliper, value, "in"), `${value}`).toBe('0.000"');
      expect(signedText(lengthText, value, "in"), `${value}`).toBe('0"');
    }
  });

  it("are words for places: what is shown as nothing is at the heel", () => {
    expect(placeText(36.2, "mm")).toBe("36.2 mm ahead of the heel");
    expect(placeText(-36.2, "mm", "the handle front")).toBe("36.2 mm behind the handle front");
    for (const x of [0, -0, 0.04, -0.04]) expect(placeText(x, "mm")).toBe("at the heel");
    // 1/128 in is 0.198 mm.
    expect(placeText(-0.19, "in")).toBe("at the heel");
    expect(placeText(-0.2, "in")).toBe('1/64" behind the heel');
  });
});

describe("thickness", () => {
  it("is told as calipers show it, with all its digits", () => {
    expect(formatCaliper(3.048, "mm")).toBe("3.05 mm");
    expect(formatCaliper(3.048, "in")).toBe('0.120"');
  });
});
