import { describe, expect, it } from "vitest";
import { EXIT } from "../src/exit-code.js";
import { answer, flat, wideLines } from "./support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, DEMO_SHOP, demoWith, placeOf } from "./support/demo.js";
import { EXAMPLES, FACTS, worldOf } from "./support/examples.js";

// What a newcomer gets wrong: every message says what, where, and what to do next, on a terminal of 80 columns.
const THREE = demoWith(
  ["heelHeight: 92", "heelHight: 92"],
  ["is: 4.6", "is: 46"],
  ["at: [-116, 76]", "at: [-116, 40]"],
);

const FILES = {
  ...DEMO_FILES,
  "three.knife.yaml": THREE,
  "empty.knife.yaml": "",
  "notes.knife.yaml": "# later\n",
  "binary.knife.yaml": new Uint8Array([0, 1, 2]),
  "latin.knife.yaml": new Uint8Array([0x61, 0x3a, 0x20, 0xe9]),
  "tab.knife.yaml": "scantling: 1\nblade:\n\toutline: x\n",
  "bracket.knife.yaml": "scantling: 1\norder: {code: A\nunits: mm\n",
  "orders/b.knife.yaml": DEMO_KNIFE,
  "nothing/a.txt": "",
  "bad-shop.yaml": `units: cm
rack:
  - { size: 1/4 by 1 }
  - { size: 6 x 40 mm, lenght: 1000 }
losses: { scalePerHeat: 120 % }
press: { stopBlocks: 4 }
`,
};

type Case = readonly [name: string, words: readonly string[], exit: number, says: readonly RegExp[]];

const HARVEST = "harvest.knife.yaml";
const CASES: readonly Case[] = [
  [
    "an empty file",
    ["weigh", "empty.knife.yaml"],
    3,
    [/1:1 the file is empty; its first key is scantling: 1/, /To begin one: scantling new NAME\.knife\.yaml/],
  ],
  ["nothing but comments", ["weigh", "notes.knife.yaml"], 3, [/has only comments in it/, /To begin one/]],
  ["no text", ["weigh", "binary.knife.yaml"], 3, [/is not text; give a knife file in YAML or JSON/]],
  [
    "another encoding",
    ["weigh", "latin.knife.yaml"],
    3,
    [/1:4 the file is not UTF-8 text; save it as UTF-8/],
  ],
  ["a tab", ["weigh", "tab.knife.yaml"], 3, [/3:1 a tab is used to indent; use spaces/]],
  [
    "a bracket that is not closed",
    ["weigh", "bracket.knife.yaml"],
    3,
    [/3:1 a closing \} is missing above this line/],
  ],
  [
    "a folder with knives",
    ["weigh", "orders"],
    3,
    [/it is a folder/, /Name a file in it: orders\/b\.knife\.yaml/],
  ],
  ["a folder without", ["weigh", "nothing"], 3, [/To begin one: scantling new NAME\.knife\.yaml/]],
  [
    "a file that is not there",
    ["weigh", "harvst.knife.yaml"],
    3,
    [/no such file/, /Did you mean harvest\.knife\.yaml\?/],
  ],
  ["a folder that is not there", ["weigh", "no/a.knife.yaml"], 3, [/There is no folder no to read from/]],
  [
    "the shop for a knife",
    ["weigh", "shop.yaml"],
    3,
    [/this is a shop file: it has bars or losses, and no blade/, /Give the knife file, NAME\.knife\.yaml/],
  ],
  [
    "a knife for the shop",
    ["weigh", HARVEST, "--shop", "three.knife.yaml"],
    3,
    [/this is a knife file: it has a blade and a tang/, /scantling new shop\.yaml/],
  ],
  ["no shop", ["weigh", HARVEST, "--shop", "nothing"], 3, [/To begin one: scantling new shop\.yaml/]],
  [
    "a shop with mistakes",
    ["stock", HARVEST, "--shop", "bad-shop.yaml"],
    3,
    [
      /has 5 errors; nothing was written/,
      /1:8 units: "cm" is not known here; it needs mm or in/,
      /3:13 rack\[1st\]\.size: "1\/4 by 1" is not a bar size; write it 1\/4 x 1 1\/2 in or 6 x 40 mm/,
      /4:24 rack\[2nd\]\.lenght is not a key here; did you mean length\?/,
      /5:25 losses\.scalePerHeat: "120 %" must be less than 100 %/,
      /6:22 press\.stopBlocks needs a list of heights, such as \[6, 8, 10\]/,
      /Mend them and try again\. More may come then: later checks \(limits of press, forge and losses\) were not/,
    ],
  ],
  [
    "an output that is a file",
    ["weigh", HARVEST, "--out", "shop.yaml"],
    5,
    [/cannot be made a folder/, /another folder with --out DIR/],
  ],
  [
    "an offset that is too far",
    ["pattern", HARVEST, "--offset", "30mm"],
    2,
    [/lies within 6 mm/, /Give a smaller one with its unit/],
  ],
  [
    "a margin in inches without their mark",
    ["pattern", HARVEST, "--margin", "3/4", "--format", "pdf"],
    2,
    [/"3\/4" has no unit in a file in mm; write 3\/4 in/],
  ],
  [
    "a name in two words",
    ["weigh", "my", HARVEST],
    2,
    [/too many arguments/, /Put quotes around a name with blanks/],
  ],
];

describe("what goes wrong says what to do next", () => {
  it.each(CASES)("%s", async (_, words, exit, says) => {
    const { code, out, err, written } = await answer(words, { files: FILES });
    expect(code).toBe(exit);
    expect([out, written]).toEqual(["", []]);
    for (const pattern of says) expect(flat(err)).toMatch(pattern);
    expect(wideLines(err)).toEqual([]);
    // The last paragraph is what to do: a sentence of its own, set in.
    expect(err.trimEnd().split("\n").at(-1)).toMatch(/^ {2}\S/u);
  });

  it.each(FACTS.commands.filter(({ name }) => name !== "help").map(({ name }) => name))(
    "%s with an option that is none",
    async (name) => {
      const words = EXAMPLES.find(({ command }) => command === name)?.words ?? [];
      const { code, err } = await answer([...words, "--jsno"], worldOf(words));
      expect(code).toBe(EXIT.usage);
      expect(flat(err)).toContain("unknown option '--jsno' (Did you mean --json?)");
      expect(err).toContain(`See: scantling ${name} --help`);
    },
  );
});

describe("a knife file with three mistakes", () => {
  it("has the two that make no knife of it told at once, with their places", async () => {
    const { code, err } = await answer(["check", "three.knife.yaml"], { files: FILES });
    expect(code).toBe(EXIT.file);
    const text = flat(err);
    expect(text).toContain("three.knife.yaml has 2 errors; nothing was written");
    expect(text).toContain(
      `${placeOf(THREE, "heelHight")} blade.outline.heelHight is not a key here; did you mean heelHeight?`,
    );
    expect(text).toContain(
      `${placeOf(THREE, "[-116")} tang.holes[3rd].at: This hole of 6 mm lies wholly outside the steel. Move it:`,
    );
  });

  it("has the slip of a unit, which makes a knife, questioned before everything that comes of it", async () => {
    const mended = demoWith(["is: 4.6", "is: 46"]);
    const files = { ...FILES, "three.knife.yaml": mended };
    const { code, out } = await answer(["check", "three.knife.yaml"], { files });
    expect(code).toBe(EXIT.notMet);
    const text = flat(out);
    const slip = text.indexOf(
      "The spine is 46 mm thick; more than 10 mm is rare. Is the unit or a digit wrong?",
    );
    expect(slip).toBeGreaterThan(0);
    for (const word of ["makes a wedge", "runs up past the bevel line", "warps and cracks"])
      expect(text.indexOf(word)).toBeGreaterThan(slip);
    // Other reports say that there is something to look at, and where.
    const weighed = await answer(["weigh", "three.knife.yaml"], { files });
    expect(weighed.out).toMatch(/warnings?, \d notes?: scantling check FILE/u);
  });

  it("is none any more once all are mended", async () => {
    expect((await answer(["check", HARVEST], { files: FILES })).code).toBe(EXIT.done);
  });
});

it("without a shop it is said where bars are listed, and how to begin", async () => {
  const { out } = await answer(["check", HARVEST], { files: { [HARVEST]: DEMO_KNIFE } });
  expect(flat(out)).toContain(
    "List yours under rack: in shop.yaml beside the knife file; scantling new shop.yaml begins one.",
  );
  const bare = { [HARVEST]: DEMO_KNIFE, "shop.yaml": DEMO_SHOP.replace(/\nrack:\n(?:.*\n)*?\n/u, "\n") };
  const empty = await answer(["check", HARVEST], { files: bare });
  expect(flat(empty.out)).toContain(
    "List yours under rack: in shop.yaml, a line such as - size: 1/4 x 2 in for each.",
  );
});

it("help begins with first steps that run as they stand", async () => {
  const { out } = await answer(["--help"]);
  const steps = [...out.matchAll(/^ {2}scantling (.+?)(?: {2,}.*)?$/gmu)].map(([, words = ""]) => words);
  expect(steps).toHaveLength(4);
  let world = await answer(["new", "--version"]);
  for (const step of steps) {
    world = await answer(step.replace("NAME", "drop-point").split(" "), world.io);
    expect(world.code, step).toBe(EXIT.done);
  }
});
