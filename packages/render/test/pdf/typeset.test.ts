import { describe, expect, it } from "vitest";
import { readingOrder } from "../../src/pdf/reading-order.js";
import { type Coverage, typeset } from "../../src/pdf/typeset.js";

const asWritten = (text: string): string =>
  readingOrder(text)
    .map((stretch) => stretch.text)
    .join("|");

describe("readingOrder", () => {
  it("leaves a line alone that has nothing from right to left", () => {
    expect(readingOrder("MG-14 (刃) 7 7/8")).toEqual([{ text: "MG-14 (刃) 7 7/8", rightToLeft: false }]);
  });

  // Orders as the bidirectional algorithm gives them for a line from left to right (UAX 9), worked out by hand.
  it.each([
    ["abc שלום עולם def", "abc |שלום עולם| def"],
    ["שלום 14.5 mm", "14.5|שלום | mm"],
    ["אב 12 גד", " גד|12|אב "],
    ["(שלום) [12] abc", "(|שלום|) [12] abc"],
    ["א (ב) c", "א )ב(| c"],
    ["knife סכין", "knife |סכין"],
  ])("sets %s", (text, expected) => {
    expect(asWritten(text)).toBe(expected);
  });

  it("hands Arabic digits on the wrong way round, for the font's rules turn them once more", () => {
    expect(readingOrder("رقم ١٤")).toEqual([
      { text: "٤١", rightToLeft: true },
      { text: "رقم ", rightToLeft: true },
    ]);
  });
});

describe("typeset", () => {
  // Plain Latin in both weights, Greek in the regular one alone, Chinese and Syriac in the fallback.
  const covers: Coverage = (font, code) =>
    (font === "fallback" && code >= 0x4e00 && code <= 0x9fff) ||
    (font === "fallback" && code >= 0x700 && code <= 0x74f) ||
    (font === "regular" && code >= 0x370 && code <= 0x3ff) ||
    (font !== "fallback" && code < 0x370);
  const shown = (text: string, bold = false): string[] =>
    typeset(text, bold, covers).map((run) => `${run.font}: ${run.text}`);

  it("takes for each letter the first font that has it", () => {
    expect(shown("Σ a 刃 b")).toEqual(["regular: Σ a ", "fallback: 刃 ", "regular: b"]);
    expect(shown("Σ a", true)).toEqual(["regular: Σ ", "bold: a"]);
  });

  it("writes out the number of a character that no font has, and loses nothing", () => {
    expect(shown("a 🔪 b")).toEqual(["regular: a <U+1F52A> b"]);
    expect(shown("🔪", true)).toEqual(["bold: <U+1F52A>"]);
    expect(shown("अ")).toEqual(["regular: <U+0905>"]);
  });

  it("keeps a mark with its letter", () => {
    expect(shown("e\u0301")).toEqual(["regular: e\u0301"]);
  });

  it("drops what only chooses between forms of a letter", () => {
    expect(shown("刃\ufe00a\u{e0100}")).toEqual(["fallback: 刃", "regular: a"]);
  });

  it("turns letters from right to left itself where the font has no rules for them", () => {
    expect(shown("\u0710\u0712\u0713")).toEqual(["fallback: \u0713\u0712\u0710"]);
  });
});
