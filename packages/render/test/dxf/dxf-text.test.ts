import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cleanText } from "../../src/clean-text.js";
import { dxfText } from "../../src/dxf/dxf-text.js";
import { decoded } from "../read-dxf.js";

describe("dxfText", () => {
  it("writes what is not ASCII by its number", () => {
    expect(dxfText("Ø 4 mm")).toBe("\\U+00D8 4 mm");
    expect(dxfText('7 7/8" ⅞')).toBe('7 7/8" \\U+215E');
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

  it("gives back any text but for doubled per cent signs, in one line of printable ASCII", () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: "binary" }), fc.string({ unit: "grapheme" }), fc.string()),
        (text) => {
          const written = dxfText(text);
          expect(written).toMatch(/^[\x20-\x7e]*$/);
          expect(written).not.toContain("%%");
          const plain = cleanText(text).replace(/%(?=%)/g, "% ");
          if (!plain.includes("^ ")) expect(decoded(written)).toBe(plain);
        },
      ),
      { seed: 612, numRuns: 500 },
    );
  });
});
