import { describe, expect, it, test } from "vitest";
import { readRecordFile } from "../../src/file/index.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES } from "../support/demo.js";
import { type FakeIo, fakeIo } from "../support/fake-io.js";

const KNIFE = "harvest.knife.yaml";
const RECORD = "/shop/harvest.record.yaml";
const record = (io: FakeIo, ...argv: readonly string[]) => answer(["record", KNIFE, ...argv], io);
const entriesIn = (io: FakeIo) => readRecordFile(io.disk.text(RECORD), "").entries;

/** A demo of which the billet was weighed at 798 g. */
async function afterBillet(): Promise<FakeIo> {
  const io = fakeIo({ files: DEMO_FILES });
  await record(io, "--stage", "billet", "--mass", "998g", "--tare", "200g");
  return io;
}

describe("what cannot well be", () => {
  const doubts: readonly (readonly [string, readonly string[], string, RegExp])[] = [
    [
      "a mass that rose by more than 2 %",
      ["--stage", "forged", "--mass", "820g"],
      "mass-rose",
      /The mass rose by 22 g \(2\.8 %\) from 798 g \(dressed billet\) to 820 g \(forged blade\)/u,
    ],
    [
      "a second weighing of the same stage that is heavier",
      ["--stage", "billet", "--mass", "1030g", "--tare", "200g"],
      "mass-rose",
      /The mass rose by 32 g \(4 %\) from 798 g \(dressed billet\) to 830 g \(dressed billet\)/u,
    ],
    [
      "an earlier stage that is lighter than a later one",
      ["--stage", "cut", "--mass", "700g"],
      "mass-rose",
      /The mass rose by 98 g \(14 %\) from 700 g \(bars as cut\) to 798 g \(dressed billet\)/u,
    ],
    [
      "ounces that were taken for grams",
      ["--stage", "forged", "--mass", "25.4"],
      "mass-unit-slip",
      /Were 25\.4 oz meant, not g\? That is 720\.1 g\. Write the unit: --mass 25\.4oz\./u,
    ],
    [
      "a point put wrong in a thickness",
      ["--stage", "forged", "--size", "heel=46 mm"],
      "reading-slip",
      /Was 4\.6 mm meant, the point put wrong\?/u,
    ],
    [
      "inches that were taken for millimetres",
      ["--stage", "forged", "--size", "heel=0.185"],
      "reading-slip",
      /Were 0\.185 in meant, not mm\? That is 4\.7 mm\. Write the unit: --size heel=0\.185in\./u,
    ],
    [
      "a day before that of the stage before it",
      ["--stage", "forged", "--mass", "700g", "--on", "2025-10-05"],
      "dates-out-of-order",
      /The forged blade is dated 2025-10-05, and the dressed billet \d{4}-\d\d-\d\d: that is the wrong way round\./u,
    ],
    [
      "a height that is far off",
      ["--stage", "forged", "--size", "heel=4.7 x 9.6 mm"],
      "height-questioned",
      /9\.6 mm high at the heel is far off the 92 mm that are drawn there/u,
    ],
    [
      "a place beside the knife",
      ["--stage", "forged", "--size", "500 mm=4.7"],
      "size-outside",
      /500 mm ahead of the heel lies beside the knife/u,
    ],
    [
      "far too many heats",
      ["--stage", "forged", "--mass", "709g", "--heats", "90"],
      "heats-questioned",
      /90 heats are many more than the 9 that were planned/u,
    ],
    [
      "more hours than a day has",
      ["--task", "forge", "--hours", "35"],
      "hours-questioned",
      /35 hours of forging are more than a day has\. Were 3\.5 meant, the point put wrong\?/u,
    ],
    [
      "a section that grew while it was drawn out",
      ["--drawn", "40 x 30 mm = 70 x 20 mm"],
      "area-rose",
      // 1400 against 1200
      /The section grew by 1[67](?:\.\d+)? %/u,
    ],
  ];

  it.each(doubts)("%s: asked back, nothing stored, exit code 4", async (_, argv, code, words) => {
    const io = await afterBillet();
    const before = io.disk.text(RECORD);
    const asked = await record(io, ...argv);
    expect(asked.code).toBe(4);
    expect(asked.written).toEqual([]);
    expect(io.disk.text(RECORD)).toBe(before);
    expect(asked.out).toContain("NOT STORED: this cannot well be.");
    expect(asked.out).not.toContain("STORED: revision");
    expect(flat(asked.out)).toMatch(words);
    expect(asked.out).toContain("--sure");
    expect(wideLines(asked.out)).toEqual([]);

    const json = JSON.parse((await record(io, ...argv, "--json")).out);
    expect(json.entered.stored).toBe(false);
    expect(json.entered.doubts.map((doubt: { code: string }) => doubt.code)).toContain(code);
    expect(json.entries).toHaveLength(1);
  });

  it.each(doubts)("%s: stored under --sure, and marked", async (_, argv) => {
    const io = await afterBillet();
    const before = io.disk.text(RECORD);
    const { code, out } = await record(io, ...argv, "--sure");
    expect(code).toBe(0);
    expect(out).toContain("STORED: revision 2");
    expect(io.disk.text(RECORD).startsWith(before)).toBe(true);
    expect(entriesIn(io)[1]?.confirmed).toBe(true);
  });
});

describe("what may well be", () => {
  const fine: readonly (readonly [string, readonly string[]])[] = [
    ["a mass that rose by less than 2 %: scale", ["--stage", "forged", "--mass", "810g"]],
    ["steel that is short", ["--stage", "forged", "--mass", "600g", "--heats", "9"]],
    ["a piece at the limits of what is looked for", ["--stage", "forged", "--mass", "500g"]],
    ["as many heats as it takes", ["--stage", "forged", "--mass", "709g", "--heats", "20"]],
    ["a whole day's work", ["--task", "forge", "--hours", "12"]],
    ["a section of which only the length grew", ["--drawn", "40 x 30 mm = 40 x 20 mm"]],
  ];
  it.each(fine)("%s is stored without --sure, and not marked for it either", async (_, argv) => {
    for (const sure of [[], ["--sure"]]) {
      const io = await afterBillet();
      const { code, out } = await record(io, ...argv, ...sure);
      expect(code).toBe(0);
      expect(out).toContain("STORED: revision 2");
      expect(entriesIn(io)[1]).not.toHaveProperty("confirmed");
    }
  });

  it("says that steel is short, and what can still be made, and answers that the entry is stored", async () => {
    const io = await afterBillet();
    const { code, out, err } = await record(io, "--stage", "forged", "--mass", "600g", "--heats", "9");
    expect(code).toBe(0);
    expect(out).toMatch(/^SHORT: 105 g short/mu);
    expect(out).toContain("CAN STILL BE MADE of 600 g");
    expect(err).toContain("Short: looking for the largest knives");
    expect(wideLines(out)).toEqual([]);
  });
});

test("a corrected mass is no longer held against what comes after it", async () => {
  const io = await afterBillet();
  // The billet was read 100 g too low; by its own number it is put right, however much it rises.
  const { code } = await record(
    io,
    "--corrects",
    "1",
    "--stage",
    "billet",
    "--mass",
    "1098g",
    "--tare",
    "200g",
  );
  expect(code).toBe(0);
  expect((await record(io, "--stage", "forged", "--mass", "820g")).code).toBe(0);
});

test("a correction keeps the day of the entry that it replaces, unless it is given another", async () => {
  const io = fakeIo({ files: DEMO_FILES });
  await record(io, "--stage", "billet", "--mass", "798g", "--on", "2026-11-22");
  await record(io, "--stage", "forged", "--mass", "709g", "--on", "2026-11-23");
  const billet = ["--stage", "billet", "--mass", "790g"];
  expect((await record(io, "--corrects", "1", ...billet)).code).toBe(0);
  expect((await record(io, "--corrects", "3", ...billet, "--on", "2026-11-21")).code).toBe(0);
  expect(entriesIn(io).map(({ on }) => on)).toEqual(["2026-11-22", "2026-11-23", "2026-11-22", "2026-11-21"]);
});

test("what an entry had put right does not come back when that entry is put right in its turn", async () => {
  const io = await afterBillet();
  const forged = (...argv: readonly string[]) => record(io, "--stage", "forged", ...argv);
  // A day of another year, stored all the same; then twice put right.
  await forged("--mass", "709g", "--on", "2025-10-05", "--sure");
  expect((await forged("--mass", "708g", "--corrects", "2", "--on", "2026-11-28")).code).toBe(0);
  expect((await forged("--mass", "707g", "--corrects", "3")).code).toBe(0);
  const again = await record(io, "--stage", "billet", "--mass", "798g", "--tare", "0g", "--corrects", "1");
  expect(again.code).toBe(0);
});

test("a stage whose need cannot be told is stored all the same, and that is said", async () => {
  const skin = DEMO_FILES["shop.yaml"]
    .replace("scale: fraction", "scale: skin")
    .replace(/^ {2}- \{ size.*\n/gmu, "")
    .replace("rack:", "rack: []");
  const io = fakeIo({ files: { ...DEMO_FILES, "shop.yaml": skin } });
  const { code, out } = await record(io, "--stage", "billet", "--mass", "798g", "--tare", "0g");
  expect(code).toBe(0);
  expect(flat(out)).toContain(
    "Steel to spare: not told, for what this stage needs cannot be told without a plan",
  );
  expect(entriesIn(io)).toHaveLength(1);
});

test("readings without a mass tell what is left to take off", async () => {
  const io = await afterBillet();
  const { out } = await record(io, "--stage", "ready", "--size", "heel=4.7 x 94 mm", "--size", "60 %=3.5 mm");
  expect(out).toContain("CALIPER: left to take off each face");
  expect(out).not.toContain("NEEDED AT EACH STAGE");
  expect(flat(out)).toContain("3.5 mm thick 135 mm ahead of the heel is 0.1 mm under the finished 3.6 mm");
  expect(wideLines(out)).toEqual([]);
});
