import { expect, test } from "vitest";
import { greatestAlong, placesBetween } from "../../src/bench/largest-along.js";

const PLACES = placesBetween(0, 10, 1);

test("finds a peak between two places, a kink, an end, and the rim of where there is a value", () => {
  expect(greatestAlong(PLACES, (x) => -((x - 3.3) ** 2))?.at).toBeCloseTo(3.3, 6);
  expect(greatestAlong(PLACES, (x) => -Math.abs(x - 7.77))?.value).toBeCloseTo(0, 6);
  expect(greatestAlong(PLACES, (x) => x)).toEqual({ at: 10, value: 10 });
  expect(greatestAlong(PLACES, (x) => (x > 6.28 ? Number.NaN : x))?.value).toBeCloseTo(6.28, 6);
  expect(greatestAlong(PLACES, (x) => (x < 1.13 ? Number.NaN : -x))?.value).toBeCloseTo(-1.13, 6);
  expect(greatestAlong(PLACES, () => Number.NaN)).toBeUndefined();
});

test("looks at both ends, no farther apart than the step, and where else it is told to", () => {
  const places = [...placesBetween(2, 4.5, 1, [1, 3.1, 9])];
  expect(places).toEqual(expect.arrayContaining([2, 4.5, 3.1]));
  expect(places).not.toContain(9);
  expect(places).toHaveLength(5);
});
