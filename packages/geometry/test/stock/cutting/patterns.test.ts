import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { openableLengths } from "../../../src/stock/cutting/openable-lengths.js";
import { cuttingPatterns } from "../../../src/stock/cutting/patterns.js";
import { sawBar } from "../../../src/stock/cutting/saw-bar.js";

const SEED = 20261130;

test("a limit is raised to the next length that whole bars add up to, and is still one, against every choice", () => {
  const stocks = fc.array(
    fc.record({ length: fc.integer({ min: 50, max: 400 }), count: fc.integer({ min: 1, max: 2 }) }),
    {
      minLength: 1,
      maxLength: 4,
    },
  );
  fc.assert(
    fc.property(stocks, fc.integer({ min: 0, max: 1500 }), (some, from) => {
      const problem = { lengths: [], demand: [], stocks: some, endless: false, kerf: 0 };
      let sums = [0];
      for (const { length, count } of some)
        sums = sums.flatMap((sum) => Array.from({ length: count + 1 }, (_, n) => sum + n * length));
      const within = [...new Set(sums)].filter((sum) => sum >= from).sort((a, b) => a - b);
      const found = openableLengths(problem, from, 1e6);
      expect(found === undefined).toBe(within.length === 0);
      if (found === undefined) return;
      expect(found.least).toBeCloseTo(within[0] ?? Number.NaN, 6);
      for (const [i, sum] of within.slice(1).entries())
        expect(sum - (within[i] ?? 0)).toBeGreaterThanOrEqual(found.step - 1e-6);
    }),
    { seed: SEED, numRuns: 200 },
  );
});

describe("patterns", () => {
  test("all maximal ones and no other, by every combination", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 500 }),
        fc.uniqueArray(fc.integer({ min: 40, max: 200 }), { minLength: 1, maxLength: 4 }),
        fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 4, maxLength: 4 }),
        fc.constantFrom(0, 1.5),
        (length, given, most, kerf) => {
          const lengths = [...given].sort((a, b) => b - a);
          const demand = most.slice(0, lengths.length);
          const fits = (counts: readonly number[]): boolean =>
            sawBar(
              length,
              lengths.flatMap((piece, i) => Array<number>(counts[i] ?? 0).fill(piece)),
              kerf,
            ) !== undefined;
          let all: number[][] = [[]];
          for (const count of demand)
            all = all.flatMap((head) => Array.from({ length: count + 1 }, (_, n) => [...head, n]));
          const maximal = all.filter(
            (counts) =>
              counts.some((n) => n > 0) &&
              fits(counts) &&
              !counts.some((n, i) => n < (demand[i] ?? 0) && fits(counts.with(i, n + 1))),
          );
          const found = cuttingPatterns(length, lengths, demand, kerf, 1e6) ?? [];
          expect(found.map(String).sort()).toEqual(maximal.map(String).sort());
        },
      ),
      { seed: SEED, numRuns: 200 },
    );
  });

  test("none where no piece fits, and none at all above the limit", () => {
    expect(cuttingPatterns(100, [120], [3], 1, 9)).toEqual([]);
    expect(cuttingPatterns(1000, [400, 250], [5, 5], 0, 2)).toBeUndefined();
  });

  test("the saw: a last piece that ends with the bar needs no cut", () => {
    expect(sawBar(300, [99, 99, 99], 1.5)).toBe(0);
    expect(sawBar(299, [99, 99, 99], 1.5)).toBeUndefined();
    expect(sawBar(301, [99, 99, 99], 1.5)).toBe(0);
    expect(sawBar(500, [], 1.5)).toBe(500);
  });
});
