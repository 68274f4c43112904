import { TASK_WORDS } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { TASKS } from "../../src/program/record-command.js";
import { flat, wideLines } from "../support/answer.js";
import { DEMO_FILES } from "../support/demo.js";
import { entriesIn, RECORD, record, shopWorld } from "../support/record-world.js";

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
    const io = shopWorld();
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
    const io = shopWorld({
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

  it("is not made an inch size by the program: a bare fraction in mm is refused", async () => {
    const { code, err } = await record(shopWorld(), "--stage", "forged", "--size", "heel=3/16");
    expect(code).toBe(2);
    expect(flat(err)).toMatch(/^scantling: an option cannot be taken; nothing was stored --size .*3\/16/u);
  });

  it("that cannot be taken is told all at once, each with its option, and nothing is stored", async () => {
    const io = shopWorld();
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

  it("is a number with its sign or its power of ten: told is what is wrong with it", async () => {
    const { code, err } = await record(shopWorld(), "--task", "forge", "--hours", "-3");
    expect(code).toBe(2);
    expect(flat(err)).toContain('--hours "-3" must be 0 or more');
    const io = shopWorld();
    expect((await record(io, "--task", "forge", "--hours", "1e1")).code).toBe(0);
    expect(entriesIn(io).at(-1)?.hours).toBe(10);
  });

  it("names a task that exists: those of the job, all of them", async () => {
    expect([...TASKS]).toEqual(Object.keys(TASK_WORDS));
    const { code, err } = await record(shopWorld(), "--task", "forg", "--hours", "2");
    expect(code).toBe(2);
    expect(flat(err)).toContain("Did you mean forge?");
  });
});

describe("a correction", async () => {
  const io = shopWorld();
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
    expect((await record(shopWorld(), "--corrects", "1", "--note", "x")).err).toContain(
      "nothing is entered yet",
    );
  });
});
