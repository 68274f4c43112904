import { describe, expect, it } from "vitest";
import { expectedHardness, type HeatRecipe, TEMPER_SCATTER, temperFor } from "../../../src/index.js";

const own = (steel: string, low: number, high = low): HeatRecipe[] => [
  { steel, steps: [{ step: "temper", low, high, source: "own", mark: "looked up" }] },
];

describe("hardness to be expected of an own recipe", () => {
  it("is that of the table, with the scatter of good tables", () => {
    // Source: the distributor's row of W2, 204 °C: 62 HRC.
    expect(expectedHardness("W2", own("W2", 204))).toEqual({ low: 60, high: 64 });
  });

  it("spans tables that disagree", () => {
    // 1095 at 204 °C: 62 to 63, or between 60.5 at 200 and 57.5 at 230 °C, which is 60.1.
    expect(expectedHardness("1095", own("1095", 204))).toEqual({ low: 58, high: 65 });
  });

  it("goes there and back: tempered for a hardness, that hardness lies in the middle", () => {
    for (const hardness of [58, 60, 61]) {
      const [first] = temperFor("W2", hardness);
      const band = expectedHardness("W2", own("W2", first?.temperature ?? 0));
      expect(band?.low).toBe(Math.floor(hardness - TEMPER_SCATTER));
      expect(band?.high).toBe(Math.ceil(hardness + TEMPER_SCATTER));
    }
  });

  it("is told of nothing that nobody knows", () => {
    expect(expectedHardness("O1", [])).toBeUndefined();
    expect(expectedHardness("1084", own("1084", 204))).toBeUndefined();
    expect(expectedHardness("O1", own("O1", 600))).toBeUndefined();
    // Between the two rows of D2 lie 333 K: nobody says what is there.
    expect(expectedHardness("D2", own("D2", 400))).toBeUndefined();
    expect(expectedHardness("O1", [{ steel: "O1", steps: [] }])).toBeUndefined();
  });
});
