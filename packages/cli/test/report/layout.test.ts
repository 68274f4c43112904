import { describe, expect, it } from "vitest";
import { item, layOutTable, spread, wrap } from "../../src/report/layout.js";

describe("tables", () => {
  it("aligns numbers right and words left, without blanks at line ends", () => {
    expect(layOutTable([["steel", "412 g"], ["whole knife", "1045 g"], ["x"]], ["left", "right"])).toEqual([
      "steel         412 g",
      "whole knife  1045 g",
      "x",
    ]);
  });
});

describe("wrapping", () => {
  it("breaks at blanks and indents what follows", () => {
    expect(wrap("one two three four", 9, "  ")).toEqual(["one two", "  three", "  four"]);
  });

  it("leaves a word that is longer than the line whole", () => {
    expect(wrap("a /very/long/path b", 6)).toEqual(["a", "/very/long/path", "b"]);
  });

  it("breaks any other word that is longer than the line", () => {
    expect(wrap("steel of abcdefghijklm, new", 8, "  ")).toEqual([
      "steel of",
      "  abcdef",
      "  ghijkl",
      "  m, new",
    ]);
  });

  it("parts no number from its unit", () => {
    expect(wrap("it weighs 1 lb 3.2 oz in all", 14)).toEqual(["it weighs 1 lb", "3.2 oz in all"]);
    expect(wrap("aaaa (130 mm) b", 8)).toEqual(["aaaa", "(130 mm)", "b"]);
  });

  it("has nothing to say of nothing", () => {
    expect(wrap("  ")).toEqual([]);
  });
});

describe("left and right on one line", () => {
  it("reaches from margin to margin", () => {
    expect(spread("ab", "cd", 10)).toEqual(["ab      cd"]);
  });

  it("takes two lines where one has no room", () => {
    expect(spread("abcdef", "ghij", 10)).toEqual(["abcdef", "ghij"]);
  });
});

describe("list items", () => {
  it("puts all lines under the beginning of the text", () => {
    expect(item(" 4  ", "one two three", 12)).toEqual([" 4  one two", "    three"]);
  });
});
