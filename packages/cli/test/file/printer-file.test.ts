import { describe, expect, it } from "vitest";
import { type PaperGiven, readPaper, readShopFile } from "../../src/file/index.js";
import { inShort, shopProblems } from "./files.js";

describe("paper and printer of a shop file", () => {
  it("are read, each paper by its name or its sides", () => {
    const file = readShopFile(
      "units: in\npaper: Tabloid\nprinter:\n  - { paper: a4, shortSide: 1.0022, longSide: 0.9988 }\n  - { paper: 12 x 18, shortSide: '1.010', longSide: 1 }\n",
      "shop.yaml",
    );
    expect(file.paper).toEqual({ name: "Tabloid" });
    expect(file.printer).toEqual([
      { paper: { name: "A4" }, shortSide: 1.0022, longSide: 0.9988 },
      { paper: { width: 304.8, height: 457.2 }, shortSide: 1.01, longSide: 1 },
    ]);
    expect(file.shop).toEqual({});
  });

  it("are nothing where the file has none", () => {
    const file = readShopFile("kerf: 2\n", "shop.yaml");
    expect(file).not.toHaveProperty("paper");
    expect(file.printer).toEqual([]);
  });
});

describe("mistakes about paper and printer", () => {
  const EXAMPLE = "{ paper: a4, shortSide: 1.0022, longSide: 0.9988 }";

  it.each([
    ["paper: a44", '1:8 unknown-paper | paper: "a44" is not a paper known here; did you mean a4?'],
    ["paper: leter", '1:8 unknown-paper | paper: "leter" is not a paper known here; did you mean letter?'],
    [
      "paper: foolscap",
      '1:8 unknown-paper | paper: "foolscap" is not a paper known here; write a4, a3, a2, a1, a0, letter, legal, tabloid, ansi-c, ansi-d, ansi-e, or its sides, such as 300 x 600 mm',
    ],
    ["paper: 4", "1:8 wrong-type | paper needs a paper, such as a4, letter or 300 x 600 mm"],
    [
      "paper: 8.5 x 11",
      '1:8 out-of-range | paper: "8.5" must be 50 mm or more, for example 300 x 600 mm or 8.5 x 11 in',
    ],
    [
      "paper: 300 x 6 kg",
      '1:8 quantity-unit-wrong-kind | paper: "300 kg" is a mass; a length belongs here, for example 190 mm, 7 1/2 in or 3/16"',
    ],
    ["printer: a4", `1:10 wrong-type | printer needs a list, such as - ${EXAMPLE}`],
    [
      "printer: [a4]",
      `1:11 wrong-type | printer[1st] needs paper, shortSide and longSide, such as ${EXAMPLE}`,
    ],
    [
      "printer: [{ paper: a4, shortSide: 1.2, longSide: 1 }]",
      '1:35 out-of-range | printer[1st].shortSide: "1.2" must be from 0.9 to 1.1; measure again with scantling calibrate',
    ],
    [
      "printer: [{ paper: a4, shortSide: 1, longSide: 0.89 }]",
      '1:48 out-of-range | printer[1st].longSide: "0.89" must be from 0.9 to 1.1; measure again with scantling calibrate',
    ],
    [
      "printer: [{ paper: a4, shortSide: big, longSide: 1 }]",
      '1:35 not-a-number | printer[1st].shortSide: "big" is not a number',
    ],
    [
      "printer: [{ paper: a4, shortSide: 1 }]",
      "1:11 missing | printer[1st].longSide is missing; it needs a number, such as 1.0022",
    ],
    [
      "printer: [{ paper: a4, shortside: 1, longSide: 1 }]",
      "1:24 unknown-key | printer[1st].shortside is not a key here; did you mean shortSide?",
    ],
    [
      "printer: [{ paper: A4, shortSide: 1, longSide: 1 }, { paper: a4, shortSide: 1, longSide: 1 }]",
      "1:62 paper-twice | printer[2nd].paper is in the list twice; keep the entry that was measured last",
    ],
    ["printr: []", "1:1 unknown-key | printr is not a key here; did you mean printer?"],
  ])("%s", (text, problem) => {
    expect(inShort(shopProblems(text))).toEqual([problem]);
  });
});

describe("readPaper", () => {
  const read = (text: string, units: "mm" | "in" = "mm"): PaperGiven | string => {
    const codes: string[] = [];
    return readPaper(text, units, (code) => codes.push(code)) ?? codes.join();
  };

  it.each([
    ["a4", "A4"],
    ["A4", "A4"],
    [" A0 ", "A0"],
    ["letter", "Letter"],
    ["LEGAL", "Legal"],
    ["Tabloid", "Tabloid"],
    ["ledger", "Tabloid"],
    ["ansi-c", "ANSI C"],
    ["ANSI C", "ANSI C"],
    ["ansic", "ANSI C"],
    ["ansi_e", "ANSI E"],
    ["ansi b", "Tabloid"],
  ])("takes the word %j for %s", (word, name) => {
    expect(read(word)).toEqual({ name });
  });

  it.each([
    ["210x297", "mm", 210, 297],
    ["300 x 600 mm", "in", 300, 600],
    ["8.5x11in", "mm", 215.9, 279.4],
    ['8 1/2" × 14"', "mm", 215.9, 355.6],
    ["30 cm x 600", "mm", 300, 600],
    ["12X18", "in", 304.8, 457.2],
  ] as const)("takes the sides %j in a shop in %s", (text, units, width, height) => {
    expect(read(text, units)).toEqual({
      width: expect.closeTo(width, 10) as number,
      height: expect.closeTo(height, 10) as number,
    });
  });

  it.each([
    ["", "unknown-paper"],
    ["x", "unknown-paper"],
    ["210x", "unknown-paper"],
    ["210x297x1", "unknown-paper"],
    ["toString", "unknown-paper"],
    ["__proto__", "unknown-paper"],
    ["axb", "unknown-paper"],
    ["49x300", "out-of-range"],
    ["300x5001", "out-of-range"],
    ["-300x300", "out-of-range"],
    ["300 ± 1 x 300", "tolerance-not-taken"],
  ])("refuses %j: %s", (text, code) => {
    expect(read(text)).toBe(code);
  });
});
