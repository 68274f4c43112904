import { describe, expect, it } from "vitest";
import type { RecordEntry } from "../../src/file/record-file.js";
import { hoursByTask, lossTo, spreadOf } from "../../src/record/meaning.js";
import { standingEntries, weighingsOf } from "../../src/record/weighings.js";

const on = "2026-11-28";
const entries: readonly RecordEntry[] = [
  { revision: 1, on, stage: "forged", mass: 655, heats: 9 },
  { revision: 2, on, stage: "billet", mass: 902, tare: 200, weldingHeats: 3 },
  { revision: 3, on, task: "forge", hours: 3.5 },
  { revision: 4, on, stage: "forged", mass: 650 },
  { revision: 5, on, task: "forge", hours: 35 },
  { revision: 6, on, task: "forge", hours: 0.5, correctsRevision: 5 },
  { revision: 7, on, stage: "ready", mass: 500 },
  { revision: 8, on, note: "not that knife", correctsRevision: 7 },
];

describe("what holds of a record", () => {
  it("leaves out what a later entry corrects", () => {
    expect(standingEntries(entries).map(({ revision }) => revision)).toEqual([1, 2, 3, 4, 6, 8]);
  });

  it("is one weighing a stage, in the order of the work: the last mass, and the last count of heats", () => {
    expect(weighingsOf(entries)).toEqual([
      { stage: "billet", steel: 702, heats: undefined, weldingHeats: 3, confirmed: false, revision: 2, on },
      { stage: "forged", steel: 650, heats: 9, weldingHeats: undefined, confirmed: false, revision: 4, on },
    ]);
  });

  it("adds up the hours of a task that stand", () => {
    expect([...hoursByTask(entries)]).toEqual([["forge", 4]]);
  });
});

describe("what was lost", () => {
  it("in each heat is what, taken off so many times over, leaves what came out", () => {
    const loss = lossTo(entries, "forged");
    expect(loss).toMatchObject({ mass: 52, from: { stage: "billet" }, to: { stage: "forged" } });
    expect(loss?.share).toBeCloseTo(52 / 702, 12);
    let steel = 702;
    for (let heat = 0; heat < 9; heat++) steel *= 1 - (loss?.perHeat ?? 0);
    expect(steel).toBeCloseTo(650, 9);
  });

  it("is not shared among heats where saw or grinder took of it too, or nobody counted", () => {
    const cut: RecordEntry = { revision: 9, on, stage: "cut", mass: 1000 };
    expect(lossTo([...entries, cut], "billet")).toMatchObject({ mass: 298, perHeat: undefined });
    const uncounted = entries.filter(({ revision }) => revision !== 1);
    expect(lossTo(uncounted, "forged")).toMatchObject({ mass: 52, perHeat: undefined });
  });

  it("is nothing to tell of the first weighing", () => {
    expect(lossTo(entries, "billet")).toBeUndefined();
    expect(lossTo(entries, "finished")).toBeUndefined();
  });
});

describe("the share of a thinning that went into height", () => {
  it("is none where only the length grew, and all of it where none did", () => {
    expect(spreadOf({ from: { height: 40, thickness: 30 }, to: { height: 40, thickness: 20 } })).toBe(0);
    expect(spreadOf({ from: { height: 40, thickness: 30 }, to: { height: 60, thickness: 20 } })).toBeCloseTo(
      1,
      12,
    );
  });

  it("of 40 x 30 that became 48 x 20 is ln 1.2 / ln 1.5", () => {
    const drawn = { from: { height: 40, thickness: 30 }, to: { height: 48, thickness: 20 } };
    // By tables of natural logarithms: 0.182 322 and 0.405 465.
    expect(spreadOf(drawn)).toBeCloseTo(0.182322 / 0.405465, 5);
  });
});
