import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitText } from "../src/fit-text.js";
import { textWidth } from "../src/text-metrics.js";

describe("fitText", () => {
  it("breaks between words", () => {
    expect(fitText("Tall harvest knife", 2.5, 30, 2)).toEqual(["Tall harvest", "knife"]);
  });

  it("cuts the last line off with dots", () => {
    const lines = fitText("Tall harvest knife for a market garden by the river", 2.5, 30, 2);
    expect(lines).toEqual(["Tall harvest", "knife for a ma..."]);
  });

  it("cuts a word that is longer than a line", () => {
    const lines = fitText("W".repeat(200), 3.5, 60, 2);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^W+\.\.\.$/);
  });

  it("keeps a whole number and its fraction together", () => {
    for (let width = 12; width < 60; width++) {
      const text = fitText('at 2 7/32": 0.165"; at 6 41/64": 0.121"; at 4 of 5', 1.8, width, 12).join("|");
      if (text.includes("...")) continue;
      expect(text).toContain("2 7/32");
      expect(text).toContain("6 41/64");
    }
  });

  it("never parts a figure from its unit", () => {
    const text =
      "495 g [1 lb 1.4 oz]; 475 to 514 g, 71 cm³ of 5 oz, 3 in² at 800 °C: 12 % of 2 plans, 7 for 3 graders";
    let broken = "";
    for (let width = 16; width < 90; width++) {
      const lines = fitText(text, 1.8, width, 20).join("|");
      if (lines.includes("...")) continue;
      broken += lines;
      for (const whole of ["495 g", "1 lb 1.4 oz", "514 g", "71 cm³", "5 oz", "3 in²", "800 °C", "12 %"])
        expect(lines).toContain(whole);
    }
    // A count and what is counted are words like others.
    expect(broken).toContain("2|plans");
    expect(broken).toContain("3|graders");
  });

  it("gives a dash for nothing", () => {
    expect(fitText(" \u200b\n", 2.5, 30, 1)).toEqual(["–"]);
  });

  it("never gives a line wider than asked for", () => {
    const words = fc.string({ unit: "grapheme", maxLength: 80 });
    fc.assert(
      fc.property(
        words,
        fc.integer({ min: 15, max: 120 }),
        fc.integer({ min: 1, max: 4 }),
        (text, width, max) => {
          const lines = fitText(text, 3.5, width, max);
          expect(lines.length).toBeLessThanOrEqual(max);
          for (const line of lines) expect(textWidth(line, 3.5)).toBeLessThanOrEqual(width);
        },
      ),
      { seed: 20261, numRuns: 300 },
    );
  });
});
