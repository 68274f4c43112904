import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cleanText } from "../src/clean-text.js";

describe("cleanText", () => {
  it.each([
    ["plain", "MG-14 harvest", "MG-14 harvest"],
    ["line breaks and tabs", " a\r\n\tb\u2028c ", "a b c"],
    ["right-to-left override", "MG-14\u202e fork", "MG-14 fork"],
    ["isolates and marks", "\u2066a\u2069\u200f\u061cb", "ab"],
    ["NUL, bell, escape, delete, C1", "a\u0000\u0007\u001b\u007f\u009bb", "ab"],
    ["non-characters and half surrogates", "a\ufffe\uffff\ud800b\udc00", "ab"],
    ["byte order mark, joiners, soft hyphen", "\ufeffa\u200b\u200d\u00adb", "ab"],
    ["letters of any script stay", "Größe 刃 нож ⅞", "Größe 刃 нож ⅞"],
    ["pictographs stay", "🔪 knife", "🔪 knife"],
    ["piled-up marks are cut down", `a${"\u0301".repeat(9)}b`, "a\u0301\u0301b"],
    ["markup is left to the writer", "<b>&amp;]]>", "<b>&amp;]]>"],
    ["nothing printable", "\u200b \n", ""],
  ])("%s", (_, given, wanted) => {
    expect(cleanText(given)).toBe(wanted);
  });

  it("leaves nothing that XML 1.0 forbids, and a second pass changes nothing", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const clean = cleanText(text);
        // XML 1.0, production [2] Char.
        expect(clean).toMatch(/^[\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]*$/u);
        expect(cleanText(clean)).toBe(clean);
      }),
      { seed: 20261, numRuns: 200 },
    );
  });
});
