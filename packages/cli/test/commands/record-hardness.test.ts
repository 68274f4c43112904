import { describe, expect, it } from "vitest";
import { readRecordFile } from "../../src/file/index.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES } from "../support/demo.js";
import { fakeIo } from "../support/fake-io.js";

const KNIFE = "harvest.knife.yaml";
const RECORD = "/shop/harvest.record.yaml";
const asking = (condition: string) => ({
  ...DEMO_FILES,
  [KNIFE]: DEMO_FILES[KNIFE]
    .replace(/^ {2}asks:.*$/mu, `  asks:\n    hardness: ${condition}`)
    .replace(/^steel: .*$/mu, "steel: 5160"),
});

async function entered(condition: string, ...argv: readonly string[]) {
  const io = fakeIo({ files: asking(condition) });
  const { code, out } = await answer(["record", KNIFE, ...argv], io);
  expect(wideLines(out)).toEqual([]);
  return { code, out: flat(out), io };
}

describe("a hardness that is entered is held against the order", () => {
  const ORDER = "{ between: [57, 59] }";
  it.each([
    ["as asked", ["--hardness", "58"], "HARDNESS as asked: 57 to 59 HRC."],
    [
      "too soft",
      ["--hardness", "51", "--after", "temper"],
      "HARDNESS NOT AS ASKED: the order asks 57 to 59 HRC, and this is under by 6. A temper does not bring it back",
    ],
    ["too hard", ["--hardness", "62"], "this is over by 3. Temper it again, hotter, and test again."],
    ["off by what a tester makes", ["--hardness", "56.5"], "under by 0.5. A tester is good to ± 1: test"],
    ["before the temper", ["--hardness", "63", "--after", "quench"], "test again after the temper"],
    ["by files, open", ["--files", "55/60"], "The files leave open whether this is as asked"],
    ["by files, too hard", ["--files", "60/65"], "this is over by at least 1. Temper it again"],
  ] as const)("%s", async (_, argv, words) => {
    const { code, out, io } = await entered(ORDER, ...argv);
    expect([code, out.includes("STORED: revision 1")]).toEqual([0, true]);
    expect(out).toContain(words);
    expect(readRecordFile(io.disk.text(RECORD), "").entries).toHaveLength(1);
  });

  it("tells programs too", async () => {
    const { io } = await entered(ORDER, "--hardness", "51", "--after", "temper");
    const json = await answer(["record", KNIFE, "--hardness", "51", "--json"], io);
    expect(JSON.parse(json.out).entered.hardness).toEqual({ verdict: "under", offByHrc: 6 });
  });

  it("asks back what 5160 cannot be: 66 HRC, where 63 is what the quench leaves", async () => {
    const first = await entered(ORDER, "--hardness", "66", "--after", "temper");
    expect(first.code).toBe(4);
    expect(first.out).toContain("66 HRC is harder than 5160 comes out of the quench, 63 HRC");
    expect(first.io.disk.files.has(RECORD)).toBe(false);
    const sure = await answer(["record", KNIFE, "--hardness", "66", "--sure"], first.io);
    expect([sure.code, flat(sure.out).includes("this is over by 7")]).toEqual([0, true]);
  });

  it("says nothing of an order that asks none", async () => {
    const io = fakeIo({ files: DEMO_FILES });
    const { code, out } = await answer(["record", KNIFE, "--hardness", "51"], io);
    expect([code, out.includes("HARDNESS")]).toEqual([0, false]);
  });
});
