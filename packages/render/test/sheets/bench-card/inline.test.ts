import { describe, expect, it } from "vitest";
import type { TextItem } from "../../../src/index.js";
import { inline, wordLines } from "../../../src/sheets/bench-card/inline.js";
import { boxPiece, type Placed } from "../../../src/sheets/bench-card/placed.js";
import { textWidth } from "../../../src/text-metrics.js";

const textsOf = (placed: Placed): TextItem[] =>
  placed.items({ x: 0, y: 0 }).filter((item): item is TextItem => item.kind === "text");
const linesOf = (text: string, width: number): string[] =>
  textsOf(wordLines(text, width, 2.5, false)).map((item) => item.text);

describe("words in lines", () => {
  it("break between words, each line within the width", () => {
    const lines = linesOf("Every joint ground bright, ends flush, and stacked in order", 40);
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.join(" ")).toBe("Every joint ground bright, ends flush, and stacked in order");
    for (const line of lines) expect(textWidth(line, 2.5)).toBeLessThanOrEqual(40);
  });

  it.each([
    ["up to here it is 160 mm", "160 mm"],
    ["long, of 1/4 x 2 in flat", "1/4 x 2 in"],
    ['measured it is 6 5/16" long', '6 5/16"'],
    ["then 31.0 × 4.6 at the butt", "31.0 × 4.6"],
    ["heat to 815 °C and no more", "815 °C"],
    ["or less: 30 % off at the least", "30 %"],
    ["for 4 minutes, then air [a]", "air [a]"],
  ])("never part a figure from its unit or fraction: %s", (text, together) => {
    for (let width = textWidth(together, 2.5) + 0.1; width < textWidth(text, 2.5); width += 1.3)
      expect(linesOf(text, width).some((line) => line.includes(together))).toBe(true);
  });

  it("part a word that is wider than a line where the line ends, and lose none of it", () => {
    const lines = linesOf(`a ${"W".repeat(50)} b`, 30);
    expect(lines.join("").replaceAll(" ", "")).toBe(`a${"W".repeat(50)}b`);
    for (const line of lines) expect(textWidth(line, 2.5)).toBeLessThanOrEqual(30);
  });

  it("hold on to single characters on the narrowest of lines", () => {
    expect(linesOf("ab c", 0.1)).toEqual(["a", "b", "c"]);
  });

  it("are nothing where there is nothing to print", () => {
    expect(wordLines("\u202e \n", 40, 2.5, false)).toMatchObject({ height: 0 });
  });
});

describe("words, figures and boxes in a line", () => {
  it("stand on one base line", () => {
    const placed = inline(
      [
        { text: "gauge", height: 2.5 },
        { text: "1.95 mm", height: 5, bold: true, whole: true },
        boxPiece("mm", 2.5, 6),
      ],
      90,
    );
    const texts = textsOf(placed);
    expect(texts.map(({ text }) => text)).toEqual(["gauge", "1.95 mm", "mm"]);
    expect(new Set(texts.map(({ at }) => at.y)).size).toBe(1);
  });

  it("put a figure whole on the next line", () => {
    const placed = inline(
      [
        { text: "thickness at the heel", height: 2.5 },
        { text: "4.60 mm", height: 5, bold: true, whole: true },
      ],
      60,
    );
    const [label, figure] = textsOf(placed);
    expect(figure?.text).toBe("4.60 mm");
    expect(figure?.at.x).toBe(0);
    expect(figure?.at.y).toBeLessThan(label?.at.y ?? 0);
  });
});
