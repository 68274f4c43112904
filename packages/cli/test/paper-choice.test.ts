import { describe, expect, it } from "vitest";
import { CommandFailure } from "../src/failure.js";
import { readShopFile } from "../src/file/index.js";
import { type PaperSource, paperChoiceOf } from "../src/paper-choice.js";

const shop = (text: string, units: "mm" | "in" = "mm"): PaperSource => ({
  units,
  shopPlaces: readShopFile(text, "shop.yaml"),
});
const bare = (units: "mm" | "in"): PaperSource => ({ units, shopPlaces: undefined });

const failure = (source: PaperSource, given: string): unknown => {
  try {
    return paperChoiceOf(source, given, "smallest");
  } catch (error) {
    return error;
  }
};

describe("paperChoiceOf", () => {
  it("is the paper that was asked for, capitals aside", () => {
    for (const word of ["a3", "A3"]) {
      expect(paperChoiceOf(bare("in"), word, "smallest")).toEqual({
        kind: "paper",
        paper: { name: "A3", width: 420, height: 297 },
      });
    }
  });

  it("names a size that is a standard paper, and takes any other", () => {
    expect(paperChoiceOf(bare("mm"), "210x297", "smallest")).toMatchObject({ paper: { name: "A4" } });
    expect(paperChoiceOf(bare("mm"), "8.5 x 11 in", "smallest")).toMatchObject({ paper: { name: "Letter" } });
    expect(paperChoiceOf(bare("mm"), "300x600", "smallest")).toEqual({
      kind: "paper",
      paper: { width: 300, height: 600 },
    });
  });

  it("takes sides without a unit in the shop's units, whatever the sheets are shown in", () => {
    expect(paperChoiceOf(shop("units: in\n", "mm"), "11x17", "smallest")).toMatchObject({
      paper: { name: "Tabloid" },
    });
    expect(paperChoiceOf(shop("units: mm\n", "in"), "210x297", "smallest")).toMatchObject({
      paper: { name: "A4" },
    });
  });

  it("is a page of the sheet's own size for fit", () => {
    expect(paperChoiceOf(bare("mm"), "fit", "shop-paper")).toEqual({ kind: "own" });
    expect(paperChoiceOf(bare("mm"), " FIT ", "shop-paper")).toEqual({ kind: "own" });
  });

  it("is, where nothing was asked, the smallest of the series that goes with the units", () => {
    const names = (source: PaperSource): unknown => {
      const choice = paperChoiceOf(source, undefined, "smallest");
      return choice.kind === "smallest" ? choice.papers.map(({ name }) => name) : choice.kind;
    };
    expect(names(bare("mm"))).toEqual(["A4", "A3", "A2", "A1", "A0"]);
    expect(names(bare("in"))).toEqual(["Letter", "Tabloid", "ANSI C", "ANSI D", "ANSI E"]);
    // Who has A4 in the printer has no Tabloid beside it.
    expect(names(shop("paper: a4\n", "in"))).toEqual(["A4", "A3", "A2", "A1", "A0"]);
    expect(names(shop("paper: legal\n", "mm"))).toContain("Letter");
  });

  it("is, where one paper is wanted, the shop's, else A4 or Letter", () => {
    const paper = (source: PaperSource): unknown => {
      const choice = paperChoiceOf(source, undefined, "shop-paper");
      return choice.kind === "paper" ? (choice.paper.name ?? choice.paper) : choice.kind;
    };
    expect(paper(bare("mm"))).toBe("A4");
    expect(paper(bare("in"))).toBe("Letter");
    expect(paper(shop("paper: a3\n", "in"))).toBe("A3");
    expect(paper(shop("paper: 300 x 600 mm\n"))).toEqual({ width: 300, height: 600 });
  });

  it("sets the paper right for the printer, and only the paper that was measured", () => {
    const source = shop("printer: [{ paper: a4, shortSide: 1.02, longSide: 0.98 }]\n");
    const correction = { across: 0.98, up: 1.02 };
    expect(paperChoiceOf(source, "a4", "smallest")).toMatchObject({ paper: { name: "A4", correction } });
    expect(paperChoiceOf(source, "297x210mm", "smallest")).toMatchObject({
      paper: { name: "A4", correction },
    });
    expect(paperChoiceOf(source, undefined, "shop-paper")).toMatchObject({
      paper: { name: "A4", correction },
    });
    expect(paperChoiceOf(source, "a3", "smallest")).not.toHaveProperty("paper.correction");
    const choice = paperChoiceOf(source, undefined, "smallest");
    expect(choice.kind === "smallest" && choice.papers.map((one) => one.correction)).toEqual([
      correction,
      ...Array(4).fill(undefined),
    ]);
    expect(paperChoiceOf(source, "fit", "smallest")).toEqual({ kind: "own" });
  });

  it("follows the sides of a paper that stands", () => {
    const source = shop("printer: [{ paper: 600 x 300, shortSide: 1.02, longSide: 0.98 }]\n");
    expect(paperChoiceOf(source, "300x600", "smallest")).toMatchObject({
      paper: { correction: { across: 1.02, up: 0.98 } },
    });
  });

  it.each([
    ["a44", "did you mean a4?"],
    ["fitt", "did you mean fit?"],
    ["tabliod", "did you mean tabloid?"],
    ["poster", "or its sides, such as 300 x 600 mm"],
    ["8x11", '"8" must be 50 mm or more'],
  ])("refuses %s as wrong use", (given, words) => {
    const error = failure(bare("mm"), given);
    expect(error).toBeInstanceOf(CommandFailure);
    expect(error).toMatchObject({ exitCode: 2, code: "unknown-paper" });
    expect((error as CommandFailure).message).toContain(`--paper: "`);
    expect((error as CommandFailure).message).toContain(words);
  });
});
