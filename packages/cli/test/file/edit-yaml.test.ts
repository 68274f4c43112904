import { describe, expect, it } from "vitest";
import { isJsonLike, type PrinterLine, printerLines, withPrinterLine } from "../../src/file/edit-yaml.js";
import { readShopFile } from "../../src/file/index.js";
import { DEMO_SHOP } from "../support/demo.js";

const LINE: PrinterLine = { paper: "a4", shortSide: 1.00223, longSide: 0.99881 };
const ITEM = "{ paper: a4, shortSide: 1.00223, longSide: 0.99881 }";
const QUOTED = '{ "paper": "a4", "shortSide": 1.00223, "longSide": 0.99881 }';
const isA4 = (paper: string): boolean => paper.toLowerCase() === "a4";

const edit = (text: string): string | undefined => withPrinterLine(text, LINE, isA4);

/** What the edited file says of the printer, read as any shop file is. */
const printerOf = (text = ""): unknown =>
  readShopFile(text, "shop.yaml").printer.map(({ paper, ...factors }) => ({ ...paper, ...factors }));

describe("a file without the key", () => {
  it("keeps every byte of the demo's shop, its comments among them, and gets two lines at its end", () => {
    expect(DEMO_SHOP).toContain("#");
    expect(edit(DEMO_SHOP)).toBe(`${DEMO_SHOP}printer:\n  - ${ITEM}\n`);
  });

  it.each([
    ["nothing in it", "", `printer:\n  - ${ITEM}\n`],
    ["comments alone", "# our shop\n", `# our shop\nprinter:\n  - ${ITEM}\n`],
    ["no line end at its end", "kerf: 2", `kerf: 2\nprinter:\n  - ${ITEM}\n`],
    [
      "a comment after the last key",
      "kerf: 2 # saw\n# end\n",
      `kerf: 2 # saw\n# end\nprinter:\n  - ${ITEM}\n`,
    ],
    ["Windows line ends", "# ours\r\nkerf: 2\r\n", `# ours\r\nkerf: 2\r\nprinter:\r\n  - ${ITEM}\r\n`],
    ["a mark at its end", "kerf: 2\n...\n", `kerf: 2\nprinter:\n  - ${ITEM}\n...\n`],
    ["keys set in", "  units: mm\n  kerf: 2\n", `  units: mm\n  kerf: 2\n  printer:\n    - ${ITEM}\n`],
    ["a list at its end", "rack:\n  - 6 x 40 mm\n", `rack:\n  - 6 x 40 mm\nprinter:\n  - ${ITEM}\n`],
    ["braces", "{ kerf: 2 }\n", `{ kerf: 2, printer: [${ITEM}] }\n`],
    ["braces with a last comma", "{ kerf: 2, }\n", `{ kerf: 2, printer: [${ITEM}] }\n`],
    ["braces with a comment", "{\n  kerf: 2 # a, b\n}\n", `{\n  kerf: 2,\n  printer: [${ITEM}] # a, b\n}\n`],
    ["braces with nothing", "{}\n", `{ printer: [${ITEM}] }\n`],
    ["JSON on one line", '{"units":"mm","kerf":2}', `{"units":"mm","kerf":2, "printer": [${QUOTED}]}`],
    [
      "JSON on many",
      '{\n  "units": "mm",\n  "losses": { "scale": "skin" }\n}\n',
      `{\n  "units": "mm",\n  "losses": { "scale": "skin" },\n  "printer": [${QUOTED}]\n}\n`,
    ],
  ])("%s", (_, before, after) => {
    expect(edit(before)).toBe(after);
    expect(printerOf(after)).toEqual([{ name: "A4", shortSide: 1.00223, longSide: 0.99881 }]);
    if (before.includes('"')) expect(JSON.parse(after)).toHaveProperty("printer");
  });
});

describe("a file that has the key", () => {
  const A3 = "{ paper: a3, shortSide: 1.001, longSide: 1 }";

  it.each([
    [
      "another paper, in lines",
      `printer:\n  - ${A3} # office\nkerf: 2\n`,
      `printer:\n  - ${A3} # office\n  - ${ITEM}\nkerf: 2\n`,
    ],
    ["the list not set in", `printer:\n- ${A3}\n`, `printer:\n- ${A3}\n- ${ITEM}\n`],
    ["no line end", `printer:\n  - ${A3}`, `printer:\n  - ${A3}\n  - ${ITEM}`],
    [
      "an entry over several lines, under a comment with a hyphen",
      "printer:\n  - # the old-one\n    paper: a3\n    shortSide: 1\n    longSide: 1 # good\n\nkerf: 2\n",
      `printer:\n  - # the old-one\n    paper: a3\n    shortSide: 1\n    longSide: 1 # good\n  - ${ITEM}\n\nkerf: 2\n`,
    ],
    ["brackets", `printer: [${A3}]\n`, `printer: [${A3}, ${ITEM}]\n`],
    ["no entry", "printer: []\nkerf: 2\n", `printer: [ ${ITEM} ]\nkerf: 2\n`],
    [
      "JSON",
      '{"printer": [{"paper": "a3", "shortSide": 1, "longSide": 1}]}',
      `{"printer": [{"paper": "a3", "shortSide": 1, "longSide": 1}, ${QUOTED}]}`,
    ],
  ])("keeps the entries of other papers: %s", (_, before, after) => {
    expect(edit(before)).toBe(after);
    expect(printerOf(after)).toHaveLength(before.includes("a3") ? 2 : 1);
  });

  it.each([
    [
      "on a line",
      `# a\nprinter: # b\n  - ${A3}\n  - { longSide: 1.05, paper: A4,   shortSide: 0.95 } # c\nkerf: 2 # d\n`,
      `# a\nprinter: # b\n  - ${A3}\n  - { longSide: 0.99881, paper: A4,   shortSide: 1.00223 } # c\nkerf: 2 # d\n`,
    ],
    [
      "over several lines with Windows line ends",
      "printer:\r\n  - paper: A4\r\n    shortSide: 1.0500 # s\r\n    longSide: '1.05'\r\n",
      "printer:\r\n  - paper: A4\r\n    shortSide: 1.00223 # s\r\n    longSide: 0.99881\r\n",
    ],
    [
      "JSON",
      '{ "printer": [ {"paper":"A4","shortSide":1.05,"longSide":0.95} ], "kerf": 2 }',
      '{ "printer": [ {"paper":"A4","shortSide":1.00223,"longSide":0.99881} ], "kerf": 2 }',
    ],
  ])("changes the two numbers of the paper's own entry and nothing else: %s", (_, before, after) => {
    expect(edit(before)).toBe(after);
  });
});

it("gives nothing where adding would change what the file says", () => {
  expect(edit("- 1\n")).toBeUndefined();
  expect(edit("printer: all of them\n")).toBeUndefined();
  // The other paper takes its numbers from this one.
  const shared = (paper: string): string => `{ paper: ${paper}, shortSide: *s, longSide: *l }`;
  const first = "{ paper: a4, shortSide: &s 1.05, longSide: &l 0.95 }";
  expect(edit(`printer:\n  - ${first}\n  - ${shared("a3")}\n`)).toBeUndefined();
});

describe("whatever stands in the file", () => {
  const KEYS = [
    "kerf: 2",
    "rack: [6 x 40 mm]",
    "losses: { scale: skin }",
    "press:\n  opening: 70",
    "rack:\n- 6 x 40",
  ];
  const NOTES = ["", " # note", "  # paper: a4, x", "\n\n# below"];
  const texts = KEYS.flatMap((key) =>
    NOTES.flatMap((note) =>
      ["\n", "\r\n"].flatMap((eol) =>
        ["", "\n"].map((end) => `units: mm\n${key}${note}${end}`.replaceAll("\n", eol)),
      ),
    ),
  );

  it.each(texts)("no byte is lost, and a second measurement takes the place of the first: %j", (text) => {
    const once = edit(text) ?? "";
    expect(once.startsWith(text)).toBe(true);
    expect(printerOf(once)).toHaveLength(1);
    const twice = withPrinterLine(once, { paper: "a4", shortSide: 1.1, longSide: 0.9 }, isA4);
    expect(twice).toBe(once.replace("1.00223", "1.1").replace("0.99881", "0.9"));
  });
});

it("shows the lines for those who add them by hand", () => {
  expect(printerLines(LINE)).toEqual(["printer:", `  - ${ITEM}`]);
  expect(printerLines(LINE, true)).toEqual([`"printer": [${QUOTED}]`]);
  expect([isJsonLike('{"kerf": 2}'), isJsonLike("kerf: 2"), isJsonLike("{ kerf: 2 }")]).toEqual([
    true,
    false,
    false,
  ]);
});
