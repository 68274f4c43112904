import { describe, expect, it, test } from "vitest";
import { holdHardness, questionHardness } from "../../src/index.js";

const read = (hardness: number) => ({ low: hardness, high: hardness });
const NONE = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };

describe("a hardness held against the order", () => {
  const between = { low: 57, high: 59, inclusive: true };
  it.each([
    ["in the middle", read(58), { is: "as-asked", by: 0 }],
    ["on a limit that is allowed", read(57), { is: "as-asked", by: 0 }],
    ["too soft", read(51), { is: "under", by: 6 }],
    ["too hard", read(66), { is: "over", by: 7 }],
    ["between two files inside", { low: 57.5, high: 58.5 }, { is: "as-asked", by: 0 }],
    ["between two files across a limit", { low: 55, high: 60 }, { is: "either", by: 0 }],
    ["skated over by the 60 file", { ...NONE, low: 60 }, { is: "over", by: 1 }],
    ["cut by the 55 file", { ...NONE, high: 55 }, { is: "under", by: 2 }],
  ] as const)("%s", (_, bracket, held) => {
    expect(holdHardness(bracket, between)).toEqual(held);
  });

  it("does not allow the limit of above and below itself", () => {
    const above = { low: 60, high: Number.POSITIVE_INFINITY, inclusive: false };
    expect(holdHardness(read(60), above)).toEqual({ is: "under", by: 0 });
    expect(holdHardness(read(60.1), above).is).toBe("as-asked");
    const below = { low: Number.NEGATIVE_INFINITY, high: 60, inclusive: false };
    expect(holdHardness(read(60), below)).toEqual({ is: "over", by: 0 });
  });
});

// As quenched: 5160 63 HRC, a bladesmiths' society page; O1 65 HRC, a distributor's sheet; the C scale from 20 HRC, ISO 6508-1.
test.each([
  ["harder than 5160 comes out of the quench", read(66), "5160", 1],
  ["within what a tester is good to", read(64), "5160", 0],
  ["as hard on a steel that comes so far", read(66), "O1", 0],
  ["harder than any blade", read(69), "a steel of no table", 1],
  ["as hard on a steel of no table", read(67), "a steel of no table", 0],
  ["softer than the scale", read(19), "O1", 1],
  ["a file that skates where none can", { ...NONE, low: 65 }, "5160", 1],
  ["files that say nothing of it", { low: 60, high: 65 }, "5160", 0],
] as const)("%s is doubted or not", (_, bracket, steel, doubts) => {
  const found = questionHardness(bracket, steel);
  expect(found.map(({ code }) => code)).toEqual(Array(doubts).fill("hardness-questioned"));
});
