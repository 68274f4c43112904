import { expect } from "vitest";

/** Fails unless the two differ by no more than `limit`, in the unit of the values. */
export function expectWithin(actual: number, expected: number, limit: number, what = "value"): void {
  const off = Math.abs(actual - expected);
  // Asked a hundred thousand times in some tests: no assertion is built unless it fails. NaN fails.
  if (!(off <= limit)) expect.fail(`${what}: ${actual} against ${expected}, off by ${off}, allowed ${limit}`);
}

/** Fails unless the two agree to a share of the expected value. */
export function expectRelative(actual: number, expected: number, share: number, what = "value"): void {
  expectWithin(actual, expected, share * Math.abs(expected), what);
}
