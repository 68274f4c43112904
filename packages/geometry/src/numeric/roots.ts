/**
 * Root of a continuous function inside a bracket, by the ITP method: never leaves the bracket, superlinear on
 * smooth functions, no worse than bisection on others.
 *
 * Source: I. F. D. Oliveira, R. H. C. Takahashi, ACM Trans. Math. Softw. 47 (2021), 5.
 *
 * @param f - continuous, with values of opposite sign (or zero) at a and b.
 * @param tolerance - width of the bracket at which to stop; absolute.
 * @returns the root, or undefined where the ends have the same sign.
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
  let fa = atA;
  let fb = atB;
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) return undefined;
  let low = a;
  let high = b;
  const k1 = 0.2 / (b - a);
  const half = Math.max(0, Math.ceil(Math.log2((b - a) / (2 * tolerance))));
  let reach = tolerance * 2 ** (half + 1);
  for (let j = 0; j < half + 60 && high - low > 2 * tolerance; j++) {
    const middle = (low + high) / 2;
    const width = high - low;
    const r = reach - width / 2;
    reach /= 2;
    const delta = k1 * width * width;
    const falsi = (fb * low - fa * high) / (fb - fa);
    const sigma = Math.sign(middle - falsi);
    const t = delta <= Math.abs(middle - falsi) ? falsi + sigma * delta : middle;
    const x = Math.abs(t - middle) <= Math.max(r, 0) ? t : middle - sigma * Math.max(r, 0);
    const fx = f(x);
    if (fx === 0) return x;
    if (fx > 0 === fb > 0) {
      high = x;
      fb = fx;
    } else {
      low = x;
      fa = fx;
    }
  }
  return (low + high) / 2;
}
