/** Where the first step sets out from: the middle. */
const EVEN = 0.5;

/**
 * Points that fill the unit cube evenly, however many are taken: steps by the powers of 1/g, g being the root of gⁿ⁺¹ = g + 1
 * (for one variable the golden ratio), each taken modulo 1. An additive recurrence after Kronecker and Weyl.
 *
 * @param dimensions - n, 1 or more.
 * @param count - how many points.
 * @returns each between 0 and 1 in every coordinate.
 *
 * @example
 * spreadPoints(1, 2); // [[0.118…], [0.736…]]
 */
export function spreadPoints(dimensions: number, count: number): readonly (readonly number[])[] {
  let root = 1.5;
  // A contraction: each pass leaves less than half of the error.
  for (let pass = 0; pass < 60; pass++) root = (1 + root) ** (1 / (dimensions + 1));
  const steps = Array.from({ length: dimensions }, (_, i) => root ** -(i + 1));
  return Array.from({ length: count }, (_, k) => steps.map((step) => (EVEN + (k + 1) * step) % 1));
}
