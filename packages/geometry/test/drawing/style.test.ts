import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findElement, readDrawing, strokeOf } from "../../src/drawing/drawing.js";
import { readSelectors } from "../../src/drawing/selector.js";
import { SEED } from "../plane/arbitraries.js";
import { codes, svg } from "./drawings.js";

const SHOWN: readonly string[] = [];
const HIDDEN = ["drawing-element-hidden"];
const CUT = ["drawing-element-clipped"];

/** What is said of a path of the class c and the id a, in a drawing with these style sheets. */
const saidOf = (sheets: string | readonly string[], attributes = ""): string[] => {
  const styles = [sheets].flat().map((sheet) => `<style>${sheet}</style>`);
  return codes(() => {
    const drawing = readDrawing(
      svg(`${styles.join("")}<g><path id="a" class="b c" ${attributes} d="M0 0H9"/></g>`),
    );
    strokeOf(drawing, findElement(drawing, "a"), drawing.viewport.unit);
  });
};

describe("style sheets that take others in are refused, wherever they are written", () => {
  it.each<[string, string | readonly string[]]>([
    ["by address", "@import url(x.css);"],
    ["by name", '@import "x.css";'],
    ["in capitals, after others", "@charset 'utf-8'; @IMPORT 'x.css' screen; path{fill:red}"],
    ["after a comment", "/* nothing */@import/**/url(x.css)"],
    ["with escapes", "@\\69mport url(x.css);"],
    ["as CDATA", "<![CDATA[@import url(x.css);]]>"],
    ["in a second one", ["path{fill:red}", "@import url(x.css);"]],
    ["in a second one, after one that is not closed", ["/* open", "@import url(x.css);"]],
  ])("%s", (_, sheets) => {
    expect(saidOf(sheets)).toEqual(["drawing-style-outside"]);
  });

  it.each([
    "/* @import url(x.css); */",
    "text::after{content:'@import url(x.css)'}",
    "@media print{text{fill:red}}",
    "@important{}",
  ])("but not %s", (sheet) => {
    expect(saidOf(sheet)).toEqual(SHOWN);
  });
});

describe("of several rules the weightiest holds", () => {
  it.each<[string, string | readonly string[], string, readonly string[]]>([
    ["a class over a type, before it", ".c{display:inline} path{display:none}", "", SHOWN],
    ["a class over a type, after it", "path{display:inline} .c{display:none}", "", HIDDEN],
    ["an id over classes", "#a{display:inline} .b.c{display:none}", "", SHOWN],
    ["an id over classes, the other way round", "#a{display:none} .b.c{display:inline}", "", HIDDEN],
    ["two classes over one", ".b.c{display:inline} .c{display:none}", "", SHOWN],
    ["a type with a class over the class", "path.c{display:none} .c{display:inline}", "", HIDDEN],
    ["a type over all", "path{visibility:visible} *{visibility:hidden}", "", SHOWN],
    ["of equals the later", ".c{display:none} .b{display:inline}", "", SHOWN],
    ["of equals the later, in a second sheet", [".c{display:inline}", ".b{display:none}"], "", HIDDEN],
    ["the weightiest of a list", "path, #a{display:inline} .c{display:none}", "", SHOWN],
    ["a style attribute over an id", "#a{display:none}", 'style="display:inline"', SHOWN],
    ["any rule over an attribute", "*{display:inline}", 'display="none"', SHOWN],
    ["important over an id", "path{display:none!important} #a{display:inline}", "", HIDDEN],
    ["important over a style attribute", "path{display:none ! IMPORTANT}", 'style="display:inline"', HIDDEN],
    [
      "an important style attribute over all",
      "#a{display:none!important}",
      'style="display:inline!important"',
      SHOWN,
    ],
    [
      "important over the later one of the same rule",
      "path{display:none!important;display:inline}",
      "",
      HIDDEN,
    ],
    ["of important ones the weightier", ".c{mask:none!important} path{mask:url(#m)!important}", "", SHOWN],
    [
      "of important ones, the other way round",
      ".c{mask:url(#m)!important} path{mask:none!important}",
      "",
      CUT,
    ],
    ["visibility too", ".c{visibility:visible} path{visibility:hidden}", "", SHOWN],
  ])("%s", (_, sheets, attributes, said) => {
    expect(saidOf(sheets, attributes)).toEqual(said);
  });

  // Whether these hold is not judged. Better to refuse than to cut a blade to a line that nobody saw.
  it.each<[string, string, string, readonly string[]]>([
    ["a part outside does not show what is hidden", "path{display:none} .x path{display:inline}", "", HIDDEN],
    ["a part outside may hide", "path{display:inline} .x path{display:none}", "", HIDDEN],
    ["nor does a condition show", "path{display:none} @media print{path{display:inline}}", "", HIDDEN],
    ["nor a later rule in it", "path{display:none} @media print{rect{x:1} #a{display:inline}}", "", HIDDEN],
    ["nor a state", ".c{clip-path:url(#c)} .c:hover{clip-path:none}", "", CUT],
    ["nor over an attribute", ".x path{display:inline}", 'display="none"', HIDDEN],
    ["an alternative in brackets may hide", "path:is(.x,.c){display:none}", "", HIDDEN],
    ["what weighs less than a sure rule does not", "#a{display:inline} .x path{display:none}", "", SHOWN],
    ["what follows a condition is sure again", "@media print{rect{x:1}} path{display:inline}", "", SHOWN],
    [
      "one for another type does not",
      "rect:not(.x,.y){display:none} g [a='b,c'] rect{mask:url(#m)}",
      "",
      SHOWN,
    ],
  ])("%s", (_, sheet, attributes, said) => {
    expect(saidOf(sheet, attributes)).toEqual(said);
  });
});

describe("selectors", () => {
  it("weigh by ids, then classes, then types", () => {
    const weights = (list: string): number[] => readSelectors(list).map(({ weight }) => weight);
    expect(weights("*, path, .a, path.a, .a.b, #a, #a .b > path")).toEqual([
      0, 1, 1000, 1001, 2000, 1_000_000, 1_001_001,
    ]);
    const letters = fc.constantFrom("#a", ".b", "*", "path", ":hover", "[c=d]");
    fc.assert(
      fc.property(fc.array(letters, { minLength: 1, maxLength: 8 }), (parts) => {
        const many = (...kinds: readonly string[]): number =>
          parts.filter((part) => kinds.includes(part)).length;
        const wanted = 1e6 * many("#a") + 1e3 * many(".b", ":hover", "[c=d]") + many("path");
        expect(weights(parts.map((part) => (/^[*p]/u.test(part) ? part : `*${part}`)).join(" "))).toEqual([
          wanted,
        ]);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});
