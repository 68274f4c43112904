import { readFileSync } from "node:fs";
import { describe, expect, it, test } from "vitest";
import { run } from "../../src/run.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, DEMO_SHOP } from "../support/demo.js";
import { fakeIo } from "../support/fake-io.js";
import { entriesIn, KNIFE, RECORD, record, shopWorld } from "../support/record-world.js";

describe("without anything to enter", async () => {
  const io = shopWorld();
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
  await record(io, "--task", "forge", "--hours", "40", "--sure");
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
    expect(json.planned.losses).toMatchObject({
      scale: "fraction",
      scalePerHeatShare: { value: expect.closeTo(0.012, 12) },
      cropPerEndMm: { value: 8, low: 5, high: 12 },
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
    expect(written).toEqual(["/shop/copies/harvest.recorded.txt"]);
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
    const { code, err } = await answer(["record", "harvst.knife.yaml"], shopWorld());
    expect(code).toBe(3);
    expect(err).toContain("Did you mean harvest.knife.yaml?");
    expect((await answer(["record", "harvest.record.yaml"], shopWorld())).err).toContain(
      "there is no harvest.record.yaml",
    );
  });

  test("a record with errors is told with its lines, and left alone", async () => {
    const broken =
      "scantling: 1\nunits: mm\nknife: harvest.knife.yaml\nentries:\n  - { revision: 7, on: 2026-10-05, note: a }\n";
    const io = shopWorld({ ...DEMO_FILES, "harvest.record.yaml": broken });
    const { code, err } = await record(io, "--note", "x");
    expect(code).toBe(3);
    expect(err).toContain("harvest.record.yaml:5:17");
    expect(io.disk.text(RECORD)).toBe(broken);
  });

  test("one that cannot be added to is told, with the line to add", async () => {
    const text =
      "scantling: 1\nunits: mm\nknife: harvest.knife.yaml\n? entries\n: - { revision: 1, on: 2026-11-28, note: a }\n";
    const io = fakeIo({ files: { ...DEMO_FILES, "harvest.record.yaml": text } });
    const { code, err, written } = await record(io, "--task", "forge", "--hours", "2");
    expect(code).toBe(5);
    expect(flat(err)).toContain("to add: - { revision: 2, on: 2026-11-28, task: forge, hours: 2 }");
    expect(written).toEqual([]);
    expect(io.disk.text("/shop/harvest.record.yaml")).toBe(text);
  });

  test("a full disk says so, and leaves the record as it was", async () => {
    const io = shopWorld();
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
    const io = shopWorld();
    await record(io, "--note", "first");
    const before = `\uFEFF${io.disk.text(RECORD)}`;
    io.disk.files.set(RECORD, new TextEncoder().encode(before));
    expect((await record(io, "--note", "second")).code).toBe(0);
    const bytes = io.disk.files.get(RECORD) ?? new Uint8Array();
    expect(new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes).startsWith(before)).toBe(true);
  });
});

test("two at once lose nothing of one another: the slower one begins anew and gets the next number", async () => {
  const io = shopWorld();
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
  const codes = await Promise.all(
    worlds.map((world, index) => run(["record", KNIFE, "--note", notes[index] ?? ""], world)),
  );
  expect(codes).toEqual([0, 0, 0, 0, 0]);
  const entries = entriesIn(io);
  expect(entries.map(({ revision }) => revision)).toEqual([1, 2, 3, 4, 5, 6]);
  expect(entries.map(({ note }) => note).sort()).toEqual(["a", "b", "c", "d", "e", "first"]);
});

describe("the record of the demo", async () => {
  const text = readFileSync(
    new URL("../../../../examples/market-garden/harvest.record.yaml", import.meta.url),
    "utf8",
  );
  const files = { ...DEMO_FILES, "harvest.record.yaml": text };

  it("holds entries as this command writes them, with nothing to doubt in it", async () => {
    const world = shopWorld({ [KNIFE]: DEMO_KNIFE, "shop.yaml": DEMO_SHOP });
    const typed: readonly (readonly string[])[] = [
      [
        "--on",
        "2026-10-05",
        "--stage",
        "cut",
        "--mass",
        "1024g",
        "--task",
        "stack",
        "--hours",
        "1:30",
        "--batch",
        "A-117",
      ],
      [
        "--on",
        "2026-10-06",
        "--stage",
        "billet",
        "--mass",
        "998g",
        "--tare",
        "200",
        "--welding-heats",
        "3",
        "--task",
        "weld",
        "--hours",
        "2",
      ],
      ["--on", "2026-10-06", "--drawn", "53x13=63x8.9", "--drawn-with", "flat dies"],
      [
        "--on",
        "2026-10-08",
        "--stage",
        "forged",
        "--mass",
        "709",
        "--tare",
        "0",
        "--heats",
        "9",
        "--size",
        "heel=4.7x96",
        "--size",
        "60 %=3.7",
        "--task",
        "forge",
        "--hours",
        "4",
      ],
      ["--on", "2026-10-10", "--stage", "ready", "--mass", "556", "--task", "rough", "--hours", "5"],
    ];
    for (const argv of typed) expect((await record(world, ...argv)).code).toBe(0);
    const lines = (from: string): string[] =>
      from.split("\n").filter((line) => line.startsWith("  - { revision"));
    // The first one has a note besides.
    expect(lines(world.disk.text(RECORD)).slice(1)).toEqual(lines(text).slice(1, 5));
    expect(lines(text)[0]).toContain(lines(world.disk.text(RECORD))[0]?.replace(/ \}$/u, ", note: "));
  });

  it("is made again, with all that came out of it", async () => {
    const { code, out } = await answer(["reorder", KNIFE, "--json"], { files });
    expect(code).toBe(0);
    expect(
      JSON.parse(out).cameOut.map(({ stage, steelG }: { stage: string; steelG: number }) => [stage, steelG]),
    ).toEqual([
      ["cut", 1024],
      ["billet", 798],
      ["forged", 709],
      ["ready", 556],
      ["finished", 530],
    ]);
  });
});
