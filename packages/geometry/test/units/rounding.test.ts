import { describe, expect, it } from "vitest";
import {
  formatCaliper,
  formatDecimals,
  formatLength,
  formatMass,
  formatNumber,
  formatRule,
  formatRuleUp,
  GRAMS_PER_OUNCE,
  MM_PER_INCH,
  roundHalves,
} from "../../src/units/index.js";

describe("halves", () => {
  it("go away from zero, and what is a hair beside one by the double's last digits is one", () => {
    expect([1.5, 2.5, -1.5, -2.5, 0, 1.49, -0.49].map(roundHalves)).toEqual([2, 3, -2, -3, 0, 1, 0]);
    // 0.15 / 0.1 is 1.4999999999999998; 3.075 and 1.005 lie below their halves as doubles.
    expect(formatNumber(0.15, 0.1)).toBe("0.2");
    expect(formatDecimals(3.075, 2)).toBe("3.08");
    expect(formatDecimals(1.005, 2)).toBe("1.01");
    expect(formatDecimals(-1.005, 2)).toBe("-1.01");
    expect(formatDecimals(-0.004, 2)).toBe("0.00");
  });

  it("stay halves through a change of units, and no more than these do", () => {
    expect(formatCaliper(3.0749999999, "mm")).toBe("3.08 mm");
    expect(formatCaliper(3.07499, "mm")).toBe("3.07 mm");
    // 3/16 in is 0.1875 in.
    expect(formatCaliper(4.7625, "in")).toBe('0.188"');
    expect(formatCaliper(4.7625 - 1e-9, "in")).toBe('0.188"');
    expect(formatCaliper(-4.7625, "in")).toBe('-0.188"');
    expect(formatLength((MM_PER_INCH / 128) * (1 - 1e-12), "in", { remainder: false })).toBe('1/64"');
    expect(formatMass(0.05 * GRAMS_PER_OUNCE - 1e-9, "in", 0.1)).toBe("0.1 oz");
  });

  it("are told alike however a figure is written", () => {
    for (let i = 1; i < 400; i += 2) {
      const half = i * 0.005;
      const text = formatDecimals(half, 2);
      expect(formatCaliper(half, "mm")).toBe(`${text} mm`);
      expect(Number(formatNumber(half, 0.01))).toBe(Number(text));
      expect(formatCaliper((half / MM_PER_INCH) * MM_PER_INCH, "mm")).toBe(`${text} mm`);
      expect(Number(text)).toBeCloseTo(half + 0.005, 9);
    }
  });
});

describe("a rule on hot steel", () => {
  it("tells halves of a mm and 1/32 in", () => {
    expect(formatRule(36.2, "mm")).toBe("36 mm");
    expect(formatRule(36.25, "mm")).toBe("36.5 mm");
    expect(formatRule(25.4 * (1 + 3 / 32), "in")).toBe('1 3/32"');
    expect(formatRule(61.2, "in", 0.01)).toBe('2.41"');
  });

  it("goes up for marks, but not by a double's last digit", () => {
    expect(formatRuleUp(36.01, "mm")).toBe("36.5 mm");
    expect(formatRuleUp(36 + 1e-9, "mm")).toBe("36 mm");
    // 61.2 mm is 2.4094 in: over 2 13/32.
    expect(formatRuleUp(61.2, "in")).toBe('2 7/16"');
    expect(formatRuleUp(61.2, "in", 0.01)).toBe('2.41"');
  });
});
