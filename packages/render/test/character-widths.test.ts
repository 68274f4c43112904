import fc from "fast-check";
import { create, type Font } from "fontkit";
import { describe, expect, it } from "vitest";
import { cleanText } from "../src/clean-text.js";
import { lettering } from "../src/index.js";
import { fontSizeOf, textBox, textWidth } from "../src/text-metrics.js";
import { dejavu } from "./dejavu.js";

const bytes = dejavu();
const FONTS: Readonly<Record<"regular" | "bold", Font>> = {
  regular: create(bytes.regular),
  bold: create(bytes.bold),
};
const WEIGHTS = ["regular", "bold"] as const;

/** Width of a line as it comes into a PDF, kerning included, as a share of the font size. */
const drawn = (text: string, weight: "regular" | "bold"): number =>
  FONTS[weight].layout(text).advanceWidth / FONTS[weight].unitsPerEm;
const estimated = (text: string, weight: "regular" | "bold"): number =>
  textWidth(text, 1, weight === "bold") / fontSizeOf(1);

const between = (from: number, to: number): string[] =>
  Array.from({ length: to - from + 1 }, (_, index) => String.fromCodePoint(from + index));
/** Basic Latin and Latin-1, Greek, Cyrillic. */
const USUAL = [
  ...between(0x20, 0x7e),
  ...between(0xa1, 0xff),
  ...between(0x370, 0x3ff),
  ...between(0x400, 0x52f),
];

describe.each(WEIGHTS)("the width of %s lettering", (weight) => {
  const font = FONTS[weight];

  it("is never under that of the embedded font, for any character that the font has", () => {
    const printed = font.characterSet
      .map((code) => String.fromCodePoint(code))
      .filter((c) => cleanText(c) === c);
    expect(printed.length).toBeGreaterThan(5000);
    const short = printed.filter(
      (c) =>
        estimated(c, weight) < font.glyphForCodePoint(c.codePointAt(0) ?? 0).advanceWidth / font.unitsPerEm,
    );
    expect(short).toEqual([]);
  });

  it("is never under that of a line, ligatures and kerning included", () => {
    const has = new Set(font.characterSet);
    const letters = USUAL.filter((c) => has.has(c.codePointAt(0) ?? 0) && cleanText(`a${c}a`).length === 3);
    expect(letters.length).toBeGreaterThan(500);
    const text = fc
      .array(fc.constantFrom(...letters), { minLength: 1, maxLength: 24 })
      .map((all) => all.join(""));
    const latin = fc
      .array(fc.constantFrom(...between(0x20, 0x7e)), { minLength: 1, maxLength: 24 })
      .map((all) => all.join(""));
    fc.assert(
      fc.property(fc.oneof(text, latin), (line) => {
        expect(estimated(line, weight), line).toBeGreaterThanOrEqual(drawn(line, weight));
      }),
      { seed: 20271, numRuns: 2000 },
    );
  });

  it.each(['1"', '""""', "kkkk", "***", "ffi fl", '7 7/8"', "سكين", "שלום", "é e\u0301 Ǆ ‰"])(
    "holds %s",
    (line) => {
      expect(estimated(line, weight)).toBeGreaterThanOrEqual(drawn(line, weight));
    },
  );

  it("is not far too wide for plain words and figures", () => {
    for (const line of ["Tall harvest knife", '225 mm [8 55/64"]', "QUENCH OIL 60 °C", "MG-14"])
      expect(estimated(line, weight) / drawn(line, weight), line).toBeLessThan(1.12);
  });
});

describe("bold lettering", () => {
  it("has a wider box than regular lettering, on the same base line", () => {
    const at = { x: 0, y: 0 };
    const regular = textBox(lettering("PASS 14.2", at, { height: 5 }));
    const bold = textBox(lettering("PASS 14.2", at, { height: 5, bold: true }));
    expect(bold.maxX).toBe(textWidth("PASS 14.2", 5, true));
    expect(bold.maxX).toBeGreaterThan(1.05 * regular.maxX);
    expect(bold.minY).toBe(regular.minY);
  });
});

describe("characters that few fonts have", () => {
  it("get the room of their number, which a PDF prints in their place", () => {
    for (const weight of WEIGHTS)
      expect(estimated("🔪", weight)).toBeGreaterThanOrEqual(drawn("<U+1F52A>", weight));
  });

  it("get a whole font size in the writing of China, Japan and Korea, which the fallback fills", () => {
    for (const letter of "刃鋼のナ칼") expect(estimated(letter, "regular")).toBeGreaterThan(1);
  });
});
