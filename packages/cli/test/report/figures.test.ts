import { describe, expect, it } from "vitest";
import {
  fixed,
  inBoth,
  lengthText,
  massText,
  partMassText,
  percentText,
  range,
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

describe("masses of parts", () => {
  it("are shown to 0.01 oz below a pound, so that they add up", () => {
    // 4.44 + 1.06 oz: to 0.1 they would be 4.4 and 1.1, and their sum 5.5.
    expect(partMassText(4.44 * 28.349523125, "in")).toBe("4.44 oz");
    expect(partMassText(1.06 * 28.349523125, "in")).toBe("1.06 oz");
    expect(partMassText(544.6, "in")).toBe("1 lb 3.2 oz");
    expect(partMassText(125.9, "mm")).toBe("126 g");
  });
});
