import { findRoot } from "../numeric/roots.js";

/** Share of jobs that a band is to hold. */
const HELD = 0.95;
/** Beyond these freedoms the normal distribution is as good: its own limit, 1.959964. */
const MANY = 400;
/** No limit is greater: that of one freedom is 12.7062. */
const GREATEST = 13;
const WITHIN = 1e-12;

/** Half the width of a band that holds 95 of 100 draws of a normal distribution, in standard deviations. */
export const NORMAL_LIMIT = 1.959963984540054;

/**
 * Half the width of a band that holds 95 of 100 draws where the standard deviation itself is known from few: the 97.5 %
 * point of Student's distribution.
 *
 * @param freedoms - Whole, 1 or more.
 *
 * @example
 * studentLimit(10); // 2.2281
 */
export function studentLimit(freedoms: number): number {
  if (freedoms > MANY) return NORMAL_LIMIT;
  const limit = findRoot((t) => studentShare(t, freedoms) - HELD, 0, GREATEST, WITHIN);
  return limit ?? NORMAL_LIMIT;
}

/**
 * Share of draws of Student's distribution that lie within ± t.
 *
 * Source: the finite sums for whole degrees of freedom, Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3
 * and 26.7.4.
 *
 * @example
 * studentShare(1, 1); // 0.5
 */
export function studentShare(t: number, freedoms: number): number {
  const angle = Math.atan(t / Math.sqrt(freedoms));
  const cosine2 = Math.cos(angle) ** 2;
  const odd = freedoms % 2 === 1;
  let term = odd ? Math.cos(angle) : 1;
  let sum = freedoms === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= freedoms - 2; k += 2) {
    term *= ((k - 1) / k) * cosine2;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
}
