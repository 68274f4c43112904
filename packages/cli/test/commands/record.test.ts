import { readFileSync } from "node:fs";
import { TASK_WORDS } from "@scantling/geometry";
import { describe, expect, it, test } from "vitest";
import { readRecordFile } from "../../src/file/index.js";
import { TASKS } from "../../src/program/record-command.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, DEMO_SHOP } from "../support/demo.js";
import { type FakeIo, fakeIo } from "../support/fake-io.js";

const KNIFE = "harvest.knife.yaml";
const RECORD = "/shop/harvest.record.yaml";

const shop = (files: Readonly<Record<string, string>> = DEMO_FILES): FakeIo => fakeIo({ files });
const record = (io: FakeIo, ...argv: readonly string[]) => answer(["record", KNIFE, ...argv], io);
const entriesIn = (io: FakeIo) => readRecordFile(io.disk.text(RECORD), "").entries;

describe("the first entry", async () => {
  const io = shop();
  const { code, out, err, written } = await record(
    io,
    "--stage",
    "cut",
    "--mass",
    "1213g",
    "--batch",
    "A-117",
  );
  const file = readRecordFile(io.disk.text(RECORD), "");

  it("is stored beside the knife file, with its number, day and unit, and said so", () => {
    expect(code).toBe(0);
    expect(err).toBe("");
    expect(written).toEqual([RECORD]);
    expect(out).toContain("\nSTORED: revision 1 in harvest.record.yaml\n");
    expect(file).toMatchObject({ knife: KNIFE, units: "mm" });
    expect(file.entries).toEqual([
      { revision: 1, on: "2026-11-28", stage: "cut", mass: 1213, batch: "A-117" },
    ]);
    expect(io.disk.text(RECORD)).toContain("mass: 1213 g");
  });

  it("tells what the gate tells", async () => {
    const gate = await answer(["gate", KNIFE, "--stage", "cut", "--mass", "1213g"], shop());
    const sums = gate.out.slice(gate.out.indexOf("WEIGHED: bars as cut"));
    expect(out.endsWith(sums)).toBe(true);
  });

  it("keeps what plan says, and the files as they are, byte for byte", async () => {
    const stock = JSON.parse((await answer(["stock", KNIFE, "--json"], shop())).out);
    const weigh = JSON.parse((await answer(["weigh", KNIFE, "--json"], shop())).out);
    const check = JSON.parse((await answer(["check", KNIFE, "--json"], shop())).out);
    const [best] = stock.plans;
    const { planned } = file;
    expect(planned?.files).toEqual({ knife: DEMO_KNIFE, shop: DEMO_SHOP });
    expect(planned?.bars).toEqual([
      {
        bar: best.bar,
        steel: "1084",
        thickness: best.thicknessMm,
        width: best.widthMm,
        count: best.bars,
        length: best.cutLengthMm,
        mass: expect.closeTo(best.massG, 3),
      },
    ]);
    expect(planned?.knife.mass).toBeCloseTo(weigh.knife.massG, 3);
    expect(planned?.knife.least).toBeCloseTo(weigh.knife.massIntervalG[0], 3);
    expect(planned?.balance.at).toBeCloseTo(weigh.knife.balanceFromHeelMm, 3);
    expect(planned?.asks).toEqual(
      check.asks.map(({ ask, verdict }: { ask: string; verdict: string }) => ({ ask, verdict })),
    );
    expect(planned?.losses.scalePerHeat).toEqual({
      value: expect.closeTo(0.012, 12),
      low: expect.closeTo(0.006, 12),
      high: expect.closeTo(0.02, 12),
    });
    const row = (name: string): number => best.ledger.find((one: { row: string }) => one.row === name).massG;
    expect(planned?.needed.finished?.usual).toBeCloseTo(row("finished-blade"), 2);
    expect(planned?.needed.forged?.usual).toBeCloseTo(row("forged-blade"), 2);
  });

  it("may be of anything: hours alone begin a record too", async () => {
    const other = shop();
    const hours = await record(other, "--task", "design", "--hours", "1:30");
    expect(hours.code).toBe(0);
    expect(entriesIn(other)).toEqual([{ revision: 1, on: "2026-11-28", task: "design", hours: 1.5 }]);
    expect(readRecordFile(other.disk.text(RECORD), "").planned).toBeDefined();
  });

  it("keeps the plan that was asked for", async () => {
    const other = shop();
    await record(other, "--stage", "cut", "--mass", "1239g", "--plan", "2");
    const { planned } = readRecordFile(other.disk.text(RECORD), "");
    expect(planned).toMatchObject({ plan: 2, bars: [{ bar: "3/8 x 1 1/2 in", count: 3 }] });
    const late = await record(other, "--note", "x", "--plan", "1");
    expect(late.code).toBe(2);
    expect(late.err).toContain("--plan goes with the first entry only");
  });

  it("is not stored where the knife file has errors", async () => {
    const other = shop({ [KNIFE]: "scantling: 1\n" });
    const broken = await record(other, "--note", "x");
    expect(broken.code).toBe(3);
    expect(broken.written).toEqual([]);
  });
});

describe("later entries", async () => {
  const io = shop();
  await record(io, "--stage", "cut", "--mass", "1024 g", "--on", "2026-10-05");
  const before = io.disk.text(RECORD);
  const billet = await record(
    io,
    "--stage",
    "billet",
    "--mass",
    "998g",
    "--tare",
    "200g",
    "--welding-heats",
    "3",
  );
  const forged = await record(io, "--stage", "forged", "--mass", "709g", "--heats", "9");

  it("stand behind what was there, of which no byte changes", () => {
    expect(io.disk.text(RECORD).startsWith(before)).toBe(true);
    expect(entriesIn(io).map(({ revision }) => revision)).toEqual([1, 2, 3]);
    expect(io.disk.paths().filter((path) => path.includes("record"))).toEqual([RECORD]);
  });

  it("take the handling bar off, and hold the steel against the gate", () => {
    expect(flat(billet.out)).toContain("998 g less 200 g of handling bar: 798 g, 3 welding heats");
    expect(billet.out).toContain("WEIGHED: dressed billet");
    expect(billet.out).toMatch(/^ENOUGH AT THE USUAL LOSSES: /mu);
  });

  it("tell what was lost, and in each heat, beside what was counted on", () => {
    // 709 of 798 in nine heats: 1 − (709/798)^(1/9) = 1.305 %
    expect(flat(forged.out)).toContain(
      "Lost since the billet was dressed: 89 g, 11 % of it: 1.31 % in each of 9 heats, where 1.2 % was counted on.",
    );
  });

  it("are weighed with the bars that were cut, whatever is on the rack by now", async () => {
    const rackless = shop({
      [KNIFE]: DEMO_KNIFE,
      "shop.yaml": DEMO_SHOP.replace(/^ {2}- \{ size.*\n/gmu, "").replace("rack:", "rack: []"),
    });
    rackless.disk.files.set(RECORD, new TextEncoder().encode(before));
    const { out, code } = await record(rackless, "--stage", "billet", "--mass", "998g", "--tare", "200g");
    expect(code).toBe(0);
    const targets = (text: string): string => text.slice(text.indexOf("NEEDED AT EACH STAGE"));
    expect(targets(out)).toContain("of 1/4 x 2 in");
    expect(targets(out).split("\n").slice(0, 6)).toEqual(targets(billet.out).split("\n").slice(0, 6));
  });

  it("are asked for by the record's own name too", async () => {
    const { code, out } = await answer(
      ["record", "harvest.record.yaml", "--files", "60/65", "--after", "temper"],
      io,
    );
    expect(code).toBe(0);
    expect(flat(out)).toContain("hardness the 60 file skates, the 65 file cuts after the temper");
    expect(entriesIn(io).at(-1)?.hardness).toEqual({ filesSkate: 60, filesCut: 65, after: "temper" });
  });

  it("need neither knife nor shop where they are of no stage", async () => {
    const alone = fakeIo({ files: { "harvest.record.yaml": before } });
    const { code, out } = await answer(
      ["record", "harvest.record.yaml", "--drawn", "40 x 30 mm = 48 x 20 mm", "--drawn-with", "flat dies"],
      alone,
    );
    expect(code).toBe(0);
    expect(out).toContain("Of this thinning 45 % went into height; the rest made it longer.");
  });
});

describe("what was typed", () => {
  const cases: readonly (readonly [string, readonly string[], object, string])[] = [
    [
      "a bare mass is in the record's units",
      ["--stage", "cut", "--mass", "1024"],
      { mass: 1024 },
      "mass: 1024 g",
    ],
    [
      "ounces stay ounces",
      ["--stage", "cut", "--mass", "36.1oz"],
      { mass: 36.1 * 28.349523125 },
      "mass: 36.1 oz",
    ],
    [
      "pounds and ounces",
      ["--stage", "cut", "--mass", "2 lb 4oz"],
      { mass: 36 * 28.349523125 },
      "mass: 2 lb 4 oz",
    ],
    [
      "a size with its height",
      ["--stage", "forged", "--size", "heel=4.7x95 mm", "--size", "60 %=3.7"],
      {
        sizes: [
          { at: { kind: "heel" }, thickness: 4.7, height: 95 },
          { at: { kind: "fraction", share: 0.6 }, thickness: 3.7 },
        ],
      },
      "sizes: [ { at: heel, thickness: 4.7 mm, height: 95 mm }, { at: 60 %, thickness: 3.7 mm } ]",
    ],
    ["hours as a clock shows them", ["--task", "forge", "--hours", "2:45"], { hours: 2.75 }, "hours: 2.75"],
    ["a hardness with its letters", ["--hardness", "60.5 HRC"], { hardness: { HRC: 60.5 } }, "{ HRC: 60.5 }"],
    ["one file alone", ["--files", "65/-"], { hardness: { filesSkate: 65 } }, "{ filesSkate: 65 }"],
  ];
  it.each(cases)("%s", async (_, argv, entry, text) => {
    const io = shop();
    const { code, err } = await record(io, ...argv);
    expect(err).toBe("");
    expect(code).toBe(0);
    const read = entriesIn(io)[0];
    for (const [key, value] of Object.entries(entry)) {
      const found = read?.[key as keyof typeof read];
      if (typeof value === "number") expect(found).toBeCloseTo(value, 9);
      else expect(found).toEqual(value);
    }
    expect(io.disk.text(RECORD)).toContain(text);
  });

  it("is in inches in a record of a knife in inches", async () => {
    const io = shop({
      ...DEMO_FILES,
      "harvest.record.yaml":
        "scantling: 1\nunits: in\nknife: harvest.knife.yaml\nentries:\n  - { revision: 1, on: 2026-10-05, note: a }\n",
    });
    const { code, out } = await record(
      io,
      "--stage",
      "forged",
      "--mass",
      "25",
      "--size",
      "heel=3/16 x 3 3/4",
    );
    expect(code).toBe(0);
    expect(entriesIn(io)[1]).toMatchObject({
      mass: expect.closeTo(25 * 28.349523125, 9),
      sizes: [{ thickness: 4.7625, height: 95.25 }],
    });
    expect(io.disk.text(RECORD)).toContain("mass: 25 oz");
    expect(flat(out)).toContain('0.188" thick and 3 3/4" high at heel');
  });

  it("that cannot be taken is told all at once, each with its option, and nothing is stored", async () => {
    const io = shop();
    const { code, err, written } = await record(
      io,
      ...["--mass", "30x", "--task", "forge", "--heats", "3.5", "--files", "6", "--on", "2027-01-01"],
      ...["--size", "heel", "--drawn", "40x30", "--hardness", "75"],
    );
    expect(code).toBe(2);
    expect(written).toEqual([]);
    for (const option of ["mass", "task", "heats", "files", "on", "size", "drawn"]) {
      expect(err).toMatch(new RegExp(`^--${option} `, "mu"));
    }
    expect(flat(err)).toContain("--on 2027-01-01 is still to come; today is 2026-11-28");
    expect(wideLines(err)).toEqual([]);
  });

  it("names a task that exists: those of the job, all of them", async () => {
    expect([...TASKS]).toEqual(Object.keys(TASK_WORDS));
    const { code, err } = await record(shop(), "--task", "forg", "--hours", "2");
    expect(code).toBe(2);
    expect(flat(err)).toContain("Did you mean forge?");
  });
});

describe("a correction", async () => {
  const io = shop();
  await record(io, "--task", "rough", "--hours", "5");
  const before = io.disk.text(RECORD);
  const corrected = await record(io, "--corrects", "1", "--task", "rough", "--hours", "3");

  it("is an entry of its own, in place of the other, which stays", () => {
    expect(corrected.code).toBe(0);
    expect(io.disk.text(RECORD).startsWith(before)).toBe(true);
    expect(entriesIn(io)[1]).toMatchObject({ revision: 2, hours: 3, correctsRevision: 1 });
    expect(flat(corrected.out)).toContain("3 h of rough grinding; in place of revision 1");
  });

  it("must be of an entry that there is, and that still stands", async () => {
    expect(flat((await record(io, "--corrects", "9", "--note", "x")).err)).toContain(
      "there is no such entry; the last one is 2",
    );
    const again = await record(io, "--corrects", "1", "--note", "x");
    expect(again.code).toBe(2);
    expect(flat(again.err)).toContain(
      "it is corrected by revision 2 already Correct that one: --corrects 2.",
    );
    expect((await record(shop(), "--corrects", "1", "--note", "x")).err).toContain("nothing is entered yet");
  });
});

describe("without anything to enter", async () => {
  const io = shop();
  const none = await record(io);
  await record(
    io,
    "--stage",
    "cut",
    "--mass",
    "1024g",
    "--task",
    "stack",
    "--hours",
    "1.5",
    "--on",
    "2026-10-05",
  );
  await record(io, "--stage", "billet", "--mass", "998g", "--tare", "200g", "--welding-heats", "3");
  await record(io, "--stage", "forged", "--mass", "709g", "--heats", "9", "--size", "heel=4.7 x 95 mm");
  await record(io, "--task", "forge", "--hours", "40", "--force");
  await record(
    io,
    "--corrects",
    "4",
    "--task",
    "forge",
    "--hours",
    "4",
    "--note",
    "a slip of the pen, and said at some length so that the line has to be broken",
  );
  const text = io.disk.text(RECORD);
  const listed = await record(io);

  it("says how to begin where there is nothing", () => {
    expect(none.code).toBe(0);
    expect(none.written).toEqual([]);
    expect(none.out).toContain("scantling record harvest.knife.yaml --stage cut");
  });

  it("lists what is entered, as tables of 80 columns, and changes nothing", () => {
    expect(listed.code).toBe(0);
    expect(io.disk.text(RECORD)).toBe(text);
    expect(wideLines(listed.out)).toEqual([]);
    expect(listed.out).toBe(`RECORD of harvest.knife.yaml                                 harvest.record.yaml
Planned 2026-11-28 with scantling 0.1.0.

WEIGHED          steel  needed  lost since  welds  heats  each heat
bars as cut     1024 g  1005 g           –      –      –          –
dressed billet   798 g   785 g       226 g      3      –          –
forged blade     709 g   705 g        89 g      –      9     1.31 %

HOURS
sawing, cleaning and stacking bars  1.5 h
forging                               4 h
in all                              5.5 h

ENTERED
  1  2026-10-05  bars as cut: 1024 g; 1.5 h of sawing, cleaning and stacking
                 bars
  2  2026-11-28  dressed billet: 998 g less 200 g of handling bar: 798 g,
                 3 welding heats
  3  2026-11-28  forged blade: 709 g, 9 heats, 4.70 mm thick and 95.0 mm high at
                 heel
  4  2026-11-28  (corrected by revision 5) 40 h of forging; doubted, and stored
                 all the same
  5  2026-11-28  4 h of forging; "a slip of the pen, and said at some length so
                 that the line has to be broken"; in place of revision 4
`);
  });

  it("lists them for programs, with units in the names", async () => {
    const { out, code } = await record(io, "--json");
    expect(code).toBe(0);
    const json = JSON.parse(out);
    expect(json).toMatchObject({
      schema: "scantling/record/1",
      file: "harvest.record.yaml",
      knife: KNIFE,
      planned: {
        on: "2026-11-28",
        bars: [{ count: 3, lengthMm: 160 }],
        knife: { massG: expect.closeTo(567.06, 1) },
      },
      weighings: [
        { stage: "cut", steelG: 1024 },
        { stage: "billet", steelG: 798, weldingHeats: 3, heats: null },
        { stage: "forged", steelG: 709, heats: 9 },
      ],
      losses: [
        { from: "cut", to: "billet", massG: 226, perHeat: null },
        { from: "billet", to: "forged", massG: 89, perHeat: expect.closeTo(1 - (709 / 798) ** (1 / 9), 12) },
      ],
    });
    expect(json.entries[2]).toEqual({
      revision: 3,
      on: "2026-11-28",
      stage: "forged",
      massG: 709,
      steelG: 709,
      heats: 9,
      sizes: [{ at: "heel", thicknessMm: 4.7, heightMm: 95 }],
    });
    expect(json).not.toHaveProperty("entered");
  });

  it("tells other units, and copies the report where it is asked to", async () => {
    const { out, written } = await record(io, "--units", "in", "--out", "copies");
    expect(out).toContain("2 lb 4.1 oz");
    expect(written).toEqual(["/shop/copies/record.txt"]);
    expect(wideLines(out)).toEqual([]);
  });
});

describe("where nothing can be stored", () => {
  test("standard input has no place for a record", async () => {
    const { code, err } = await answer(["record", "-", "--note", "x"], { stdin: DEMO_KNIFE });
    expect(code).toBe(2);
    expect(err).toContain("Name the knife file.");
  });

  test("a knife file that is not there is told as ever", async () => {
    const { code, err } = await answer(["record", "harvst.knife.yaml"], shop());
    expect(code).toBe(3);
    expect(err).toContain("Did you mean harvest.knife.yaml?");
    expect((await answer(["record", "harvest.record.yaml"], shop())).err).toContain(
      "there is no harvest.record.yaml",
    );
  });

  test("a record with errors is told with its lines, and left alone", async () => {
    const broken =
      "scantling: 1\nunits: mm\nknife: harvest.knife.yaml\nentries:\n  - { revision: 7, on: 2026-10-05, note: a }\n";
    const io = shop({ ...DEMO_FILES, "harvest.record.yaml": broken });
    const { code, err } = await record(io, "--note", "x");
    expect(code).toBe(3);
    expect(err).toContain("harvest.record.yaml:5:17");
    expect(io.disk.text(RECORD)).toBe(broken);
  });

  test("one that cannot be added to is told, with the line to add", async () => {
    const json = JSON.stringify({
      scantling: 1,
      units: "mm",
      knife: KNIFE,
      entries: [{ revision: 1, on: "2026-10-05", note: "a" }],
    });
    const io = fakeIo({ files: { ...DEMO_FILES, "harvest.record.json": json } });
    const { code, err, written } = await record(io, "--task", "forge", "--hours", "2");
    expect(code).toBe(5);
    expect(flat(err)).toContain("- { revision: 2, on: 2026-11-28, task: forge, hours: 2 }");
    expect(written).toEqual([]);
  });

  test("a full disk says so, and leaves the record as it was", async () => {
    const io = shop();
    await record(io, "--note", "first");
    const before = io.disk.text(RECORD);
    io.disk.faults.push({ step: "createFile", code: "ENOSPC" });
    const { code, out, err } = await record(io, "--note", "second");
    expect(code).toBe(5);
    expect(out).toBe("");
    expect(err).toContain("the disk is full");
    expect(io.disk.text(RECORD)).toBe(before);
    expect(io.disk.paths().filter((path) => path.includes("record"))).toEqual([RECORD]);
  });

  test("a mark before the text is kept", async () => {
    const io = shop();
    await record(io, "--note", "first");
    const before = `\uFEFF${io.disk.text(RECORD)}`;
    io.disk.files.set(RECORD, new TextEncoder().encode(before));
    expect((await record(io, "--note", "second")).code).toBe(0);
    const bytes = io.disk.files.get(RECORD) ?? new Uint8Array();
    expect(new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes).startsWith(before)).toBe(true);
  });
});

test("two at once lose nothing of one another: the slower one begins anew and gets the next number", async () => {
  const io = shop();
  await record(io, "--note", "first");
  const notes = ["a", "b", "c", "d", "e"];
  // One world for all: what they print is not told apart.
  const worlds = notes.map((_, index) => ({
    ...io,
    runId: `run-${index}`,
    machine: {
      ...io.machine,
      processId: 100 + index,
      isRunning: () => true,
      pause: () => new Promise<void>((resolve) => setTimeout(resolve, 1)),
    },
  }));
  const { run } = await import("../../src/run.js");
  const codes = await Promise.all(
    worlds.map((world, index) => run(["record", KNIFE, "--note", notes[index] ?? ""], world)),
  );
  expect(codes).toEqual([0, 0, 0, 0, 0]);
  const entries = entriesIn(io);
  expect(entries.map(({ revision }) => revision)).toEqual([1, 2, 3, 4, 5, 6]);
  expect(entries.map(({ note }) => note).sort()).toEqual(["a", "b", "c", "d", "e", "first"]);
});

test("the record of the demo is one that this command would write", () => {
  const path = new URL("../../../../examples/market-garden/harvest.record.yaml", import.meta.url);
  const { entries, planned } = readRecordFile(readFileSync(path, "utf8"), "");
  expect(entries.length).toBeGreaterThan(5);
  expect(planned?.files.shop).toBeDefined();
});
