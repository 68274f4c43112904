import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { spread } from "../src/callouts.js";

const cost = (places: readonly number[], wanted: readonly number[]): number =>
  places.reduce((sum, place, index) => sum + (place - (wanted[index] ?? Number.NaN)) ** 2, 0);

const isClear = (places: readonly number[], sizes: readonly number[], between: number): boolean =>
  places.every((place, index) => {
    const before = places[index - 1];
    if (before === undefined) return true;
    const apart = ((sizes[index - 1] ?? 0) + (sizes[index] ?? 0)) / 2 + between;
    return place - before >= apart - 1e-9;
  });

describe("spread", () => {
  it("moves two labels apart by the same amount", () => {
    expect(spread([0, 1], [4, 4], 1)).toEqual([-2, 3]);
  });

  it("leaves labels alone that are clear already", () => {
    expect(spread([0, 10, 30], [4, 4, 4], 1)).toEqual([0, 10, 30]);
  });

  it("joins blocks that run into each other", () => {
    // Three labels 5 apart, wanted at 0, 1 and 5.5: their block's middle stands at the mean, 6.5 / 3.
    const places = spread([0, 1, 5.5], [4, 4, 4], 1);
    expect(places[1]).toBeCloseTo(6.5 / 3, 12);
    expect(places[0]).toBeCloseTo(6.5 / 3 - 5, 12);
  });

  it("is clear, and no clear arrangement near it costs less", () => {
    const labels = fc.array(
      fc.record({
        want: fc.integer({ min: 0, max: 200 }),
        size: fc.integer({ min: 1, max: 30 }),
        nudge: fc.integer({ min: -20, max: 20 }),
      }),
      { minLength: 1, maxLength: 9 },
    );
    fc.assert(
      fc.property(labels, (given) => {
        const sorted = [...given].sort((a, b) => a.want - b.want);
        const wanted = sorted.map((label) => label.want);
        const sizes = sorted.map((label) => label.size);
        const places = spread(wanted, sizes, 2);
        expect(isClear(places, sizes, 2)).toBe(true);
        const nudged = places.map((place, index) => place + (sorted[index]?.nudge ?? 0) / 50);
        if (isClear(nudged, sizes, 2)) {
          expect(cost(nudged, wanted)).toBeGreaterThanOrEqual(cost(places, wanted) - 1e-6);
        }
      }),
      { seed: 20261, numRuns: 500 },
    );
  });
});
