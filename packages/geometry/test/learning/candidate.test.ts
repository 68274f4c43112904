import { describe, expect, test } from "vitest";
import { propagated } from "../../src/learning/candidate.js";
import { learnShop } from "../../src/learning/learn-shop.js";
import { scaleCandidates } from "../../src/learning/scale-candidates.js";
import { NORMAL_LIMIT } from "../../src/learning/student.js";
import { grindingCandidates } from "../../src/learning/work-candidates.js";
import { record, weighed } from "./jobs.js";
import { present } from "./present.js";

const forged = (billet: number, after: number, heats: number, file = "a.record.yaml") =>
  record({ weighings: [weighed("billet", billet), weighed("forged", after, { heats })] }, file);

const errorOf = (billet: number, after: number): number | undefined =>
  scaleCandidates(forged(billet, after, 1), present().shop)[0]?.error;

/** Half a gram or so of each weighing, by 1/300 a gram: 1 − b/a moves by 1/a and b/a². */
const EXPECTED = Math.hypot(1, 1) / NORMAL_LIMIT / 300;

describe("the error of readings", () => {
  test.each([297, 299, 299.5, 299.6, 299.9])(
    "of 300 g and %d g after one heat is that of two weighings, also beside what cannot be",
    (after) => {
      expect(Math.abs((errorOf(300, after) ?? 0) / EXPECTED - 1)).toBeLessThan(0.02);
    },
  );

  test("of 6 mm ground to 5.98 mm is that of two readings of a caliper", () => {
    const size = { x: 0, on: "2026-11-28" } as const;
    const sizes = [
      { stage: "forged", thickness: 6, ...size },
      { stage: "ready", thickness: 5.98, ...size },
    ] as const;
    // Half of the difference of two readings, each 0.05 mm off at 95 in 100.
    const expected = (Math.SQRT2 * 0.05) / NORMAL_LIMIT / 2;
    expect(grindingCandidates(record({ sizes }))[0]?.error).toBeCloseTo(expected, 9);
  });

  test("is the slope's where only a part of the step can be", () => {
    const window = ([value = 0]: readonly number[]) =>
      value > 0.99 && value < 1.01
        ? { value: 7 * value }
        : { impossible: { code: "none", text: "", values: {} } };
    expect(propagated([1], [0.3], window)).toBeCloseTo(2.1, 9);
  });

  test("is nothing where there is no figure", () => {
    expect(propagated([1], [0.3], () => ({ impossible: { code: "none", text: "", values: {} } }))).toBe(0);
  });
});

test.each([299.5, 299.6])("300 g to %d g in one heat is a coarse reading, and no slip", (after) => {
  const { leftOut, figures } = learnShop(
    [forged(300, after, 1), forged(760, 682, 9, "b.record.yaml")],
    present(),
  );
  expect(leftOut).toEqual([]);
  expect(figures[0]?.estimate.jobs).toBe(2);
});
