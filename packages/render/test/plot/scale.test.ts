import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { makeScale, roundStep } from "../../src/plot/scale.js";

describe("roundStep", () => {
  it.each([
    [10, 5, 2],
    [10, 10, 1],
    [363, 6, 100],
    [4.6, 5, 1],
    [0.23, 5, 0.05],
    [0.9, 1, 1],
    [1001, 10, 200],
  ])("a range of %f in at most %i parts: %f", (range, most, step) => {
    expect(roundStep(range, most)).toBeCloseTo(step, 12);
  });

  it("is 1, 2 or 5 times a power of ten, and the smallest that does", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1e9, noNaN: true }),
        fc.integer({ min: 1, max: 12 }),
        (range, most) => {
          const step = roundStep(range, most);
          const digit = Number(step.toExponential(9).split("e")[0]);
          expect([1, 2, 5]).toContain(digit);
          expect(range / step).toBeLessThanOrEqual(most * (1 + 1e-8));
          const smaller = digit === 5 ? (step * 2) / 5 : step / 2;
          expect(range / smaller).toBeGreaterThan(most * (1 - 1e-8));
        },
      ),
      { seed: 5, numRuns: 500 },
    );
  });
});

describe("makeScale", () => {
  it("draws the ends out to ticks, or keeps them as given", () => {
    const round = makeScale({ low: 0, high: 4.6 }, { length: 50, most: 5, ends: "round" });
    expect([round.low, round.high, round.ticks]).toEqual([0, 5, [0, 1, 2, 3, 4, 5]]);
    expect(round.at(2.5)).toBe(25);
    const given = makeScale({ low: -138, high: 225 }, { length: 66, most: 6, ends: "given" });
    expect([given.low, given.high, given.ticks]).toEqual([-138, 225, [-100, 0, 100, 200]]);
    expect(given.at(-138)).toBe(0);
    expect(given.at(225)).toBe(66);
    expect(given.write(-100)).toBe("−100");
  });

  it("holds its values between its ends, with ticks in order and few enough, whatever the values", () => {
    const values = fc.record({
      low: fc.double({ min: -1e4, max: 1e4, noNaN: true }),
      width: fc.oneof(fc.constant(0), fc.double({ min: 1e-3, max: 1e4, noNaN: true })),
      most: fc.integer({ min: 2, max: 8 }),
    });
    fc.assert(
      fc.property(
        values,
        fc.constantFrom("round" as const, "given" as const),
        ({ low, width, most }, ends) => {
          const { at, ticks, ...scale } = makeScale({ low, high: low + width }, { length: 70, most, ends });
          for (const value of [low, low + width, ...ticks]) {
            expect(at(value)).toBeGreaterThanOrEqual(-1e-3);
            expect(at(value)).toBeLessThanOrEqual(70 + 1e-3);
          }
          expect(ticks.length).toBeLessThanOrEqual(most + 1);
          expect([...ticks].sort((a, b) => a - b)).toEqual(ticks);
          expect(scale.high).toBeGreaterThan(scale.low);
          if (ends === "round") expect(ticks.length).toBeGreaterThanOrEqual(2);
        },
      ),
      { seed: 8, numRuns: 500 },
    );
  });
});
