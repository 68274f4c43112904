/**
 * Root of a continuous function inside a bracket, by Chandrupatla's method: inverse quadratic interpolation wherever the
 * last three points promise that it converges, bisection elsewhere. It never leaves the bracket, takes four or five values
 * on a nearly straight function, and no more than bisection by much on one that steps.
 *
 * Source: T. R. Chandrupatla, "A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear function
 * without using derivatives", Advances in Engineering Software 28 (1997) 145-149.
 *
 * @param f - continuous, with values of opposite sign (or zero) at a and b.
 * @param tolerance - how near the root must be, absolute.
 * @returns the root, or undefined where the ends have the same sign.
 *
 * @example
 * findRoot((x) => x - 2, 1, 4, 1e-12); // 2
 */
export function findRoot(
  f: (x: number) => number,
  a: number,
  b: number,
  tolerance: number,
): number | undefined {
  return findRootBetween(f, a, f(a), b, f(b), tolerance);
}

/** The same where the values at both ends are known. */
export function findRootBetween(
  f: (x: number) => number,
  a: number,
  atA: number,
  b: number,
  atB: number,
  tolerance: number,
): number | undefined {
  if (atA === 0) return a;
  if (atB === 0) return b;
  if (atA > 0 === atB > 0) return undefined;
  // x1 is the newest end of the bracket, x2 the other, x3 the point that was left behind.
  let x1 = b;
  let f1 = atB;
  let x2 = a;
  let f2 = atA;
  let share = 0.5;
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const x = x1 + share * (x2 - x1);
    const fx = f(x);
    if (fx === 0) return x;
    let x3 = x1;
    let f3 = f1;
    if (fx > 0 !== f1 > 0) {
      x3 = x2;
      f3 = f2;
      x2 = x1;
      f2 = f1;
    }
    x1 = x;
    f1 = fx;
    const width = Math.abs(x2 - x1);
    const least = tolerance / width;
    if (!(least < 0.5)) return Math.abs(f1) < Math.abs(f2) ? x1 : x2;
    const xi = (x1 - x2) / (x3 - x2);
    const phi = (f1 - f2) / (f3 - f2);
    share =
      phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
        ? (f1 / (f2 - f1)) * (f3 / (f2 - f3)) + (((x3 - x1) / (x2 - x1)) * (f1 / (f3 - f1)) * f2) / (f3 - f2)
        : 0.5;
    share = Math.min(1 - least, Math.max(least, share));
  }
  return (x1 + x2) / 2;
}

/** Bisection alone would take the difference of exponents of a double, at most about this many. */
const MOST_PASSES = 200;
