import { createSVGWindow } from "svgdom";
import { describe, expect, it } from "vitest";
import { flattenItems, lettering, patternSheet } from "../src/index.js";
import { fontSizeOf, textBox, textWidth } from "../src/text-metrics.js";
import { fixtures } from "./fixtures.js";

// Advance widths of Helvetica in thousandths of the font size. Source: Adobe font metrics of the base 14 fonts, from memory.
// biome-ignore format: a table
const HELVETICA: Record<string, number> = {
  " ": 278, "%": 889, "-": 333, "0": 556, "1": 556, "4": 556, A: 667, E: 667, F: 611, G: 778, I: 278, J: 500, K: 667,
  M: 833, N: 722, O: 778, P: 667, R: 722, S: 667, T: 611, W: 944, a: 556, f: 278, i: 222, k: 500, m: 833, r: 333,
  s: 500, x: 500,
};

/** As much of the document model's text element as measures with its bundled font, Open Sans. */
interface TextElement {
  textContent: string;
  setAttribute(name: string, value: string): void;
  getComputedTextLength(): number;
}
interface MeasuringDocument {
  createElementNS(space: string, tag: string): TextElement;
}

describe("textWidth", () => {
  it("is a sum over the letters", () => {
    expect(textWidth("MG-14", 2.5)).toBeCloseTo((0.87 + 0.79 + 0.4 + 2 * 0.64) * 3.5 * 1.03, 9);
    expect(textWidth("", 2.5)).toBe(0);
  });

  it.each(["MG-14", "PRINT AT 100 %", "Warm kiss fix", "JERK", "FOR SKATERS"])(
    "is not under the published width of %s",
    (text) => {
      const published = [...text].reduce((sum, letter) => sum + (HELVETICA[letter] ?? Number.NaN), 0) / 1000;
      const estimate = textWidth(text, 1) / fontSizeOf(1);
      expect(estimate).toBeGreaterThanOrEqual(published);
      expect(estimate).toBeLessThan(1.35 * published);
    },
  );

  it("covers every label of the sheets as Open Sans sets it, and is not far too wide", () => {
    const { document } = createSVGWindow() as { document: MeasuringDocument };
    const labels = Object.values(fixtures)
      .flatMap((make) => flattenItems(patternSheet(make()).items))
      .flatMap((item) => (item.kind === "text" ? [item] : []));
    expect(labels.length).toBeGreaterThan(150);
    for (const { text, height } of labels) {
      const element = document.createElementNS("http://www.w3.org/2000/svg", "text");
      element.textContent = text;
      element.setAttribute("font-size", String(fontSizeOf(height)));
      const measured = element.getComputedTextLength();
      expect(measured, text).toBeGreaterThan(0);
      expect(textWidth(text, height), text).toBeGreaterThanOrEqual(measured);
      expect(textWidth(text, height), text).toBeLessThan(1.6 * measured + 1);
    }
  });

  it("gives room to accents, other scripts and pictographs", () => {
    expect(textWidth("é", 2.5)).toBe(textWidth("e", 2.5));
    expect(textWidth("e\u0301", 2.5)).toBe(textWidth("e", 2.5));
    expect(textWidth("刃", 2.5)).toBeGreaterThan(fontSizeOf(2.5));
    expect(textWidth("🔪", 2.5)).toBeGreaterThan(fontSizeOf(2.5));
  });
});

describe("textBox", () => {
  it("turns with the text", () => {
    const level = textBox(lettering("92 mm", { x: 10, y: 20 }, { height: 2.5 }));
    const upright = textBox(lettering("92 mm", { x: 10, y: 20 }, { height: 2.5, rotation: Math.PI / 2 }));
    expect(upright.maxY - upright.minY).toBeCloseTo(level.maxX - level.minX, 9);
    expect(upright.minY).toBeCloseTo(20, 9);
    expect(upright.maxX - 10).toBeCloseTo(20 - level.minY, 9);
  });

  it("follows the anchor", () => {
    const box = (anchor: "start" | "middle" | "end") =>
      textBox(lettering("92 mm", { x: 0, y: 0 }, { height: 2.5, anchor }));
    expect(box("start").minX).toBeCloseTo(0, 9);
    expect(box("end").maxX).toBeCloseTo(0, 9);
    expect(box("middle").minX).toBeCloseTo(-box("middle").maxX, 9);
  });
});
