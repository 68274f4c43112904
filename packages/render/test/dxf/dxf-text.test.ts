import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cleanText } from "../../src/clean-text.js";
import { dxfText } from "../../src/dxf/dxf-text.js";
import { decoded } from "../read-dxf.js";

describe("dxfText", () => {
  it.each([
    ["Ø 4 mm", "%%c 4 mm"],
    ["⌀4", "%%c4"],
    ["15° ± 0.5°", "15%%d %%p 0.5%%d"],
    ["−110 mm", "-110 mm"],
    ["6 – 8 — 9", "6 - 8 - 9"],
    ["38 × 4", "38 x 4"],
    ['7⅞" and ½', '7 7/8" and 1/2'],
    ["“wide” ‘heel’ 4″", '"wide" \'heel\' 4"'],
    ["12 cm² … 3 in³", "12 cm2 ... 3 in3"],
    // Per cent signs beside a code.
    ["10 %° %Ø", "10 % %%d % %%c"],
  ])("writes the signs of figures in release 12's own way: %s", (given, wanted) => {
    expect(dxfText(given)).toBe(wanted);
  });

  it("writes other letters by their numbers", () => {
    expect(dxfText("Øystein MØR")).toBe("\\U+00D8ystein M\\U+00D8R");
    expect(dxfText("刀")).toBe("\\U+5200");
    // Two halves, as the format's own writer does: 4 digits are all it has.
    expect(dxfText("🔪")).toBe("\\U+D83D\\U+DD2A");
  });

  it("leaves no control code to a reader", () => {
    expect(dxfText("%%d")).toBe("% %d");
    expect(dxfText("%%%%c")).toBe("% % % %c");
    expect(dxfText("12 %")).toBe("12 %");
    expect(dxfText("a\r\n  0\nENDSEC")).toBe("a 0 ENDSEC");
    expect(dxfText("tab\tend\u0007")).toBe("tab end");
    expect(dxfText("^J")).toBe("^ J");
    expect(dxfText("\\U+0041 \\P")).toBe("\\U+005CU+0041 \\U+005CP");
    expect(dxfText(" \n ")).toBe("");
  });

  it("gives back any other text but for doubled per cent signs, in one line of printable ASCII", () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: "binary" }), fc.string({ unit: "grapheme" }), fc.string()),
        (text) => {
          const written = dxfText(text);
          expect(written).toMatch(/^[\x20-\x7e]*$/);
          expect(written).not.toMatch(/%%(?![cdp])|%%%/);
          const plain = cleanText(text).replace(/%(?=[%°±Ø⌀])/gu, "% ");
          if (!/\^ |[¼-¾⅐-⅞⌀²³×·«»‐-⁏←-⇿∀-⋿]/u.test(plain)) expect(decoded(written)).toBe(plain);
        },
      ),
      { seed: 612, numRuns: 500 },
    );
  });
});
