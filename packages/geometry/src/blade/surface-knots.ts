/** Places looked at between two ends. */
const PROBES = 12;
/** Most changes between two of them. */
const MOST = 8;
const FOUND = 1e-10;
const ROUNDING = 4 * Number.EPSILON;

/** Ends of the stretches over which a mark stays the same, from 0 to 1, both included. */
export function knotsBetween(from: number, to: number, mark: (t: number) => number): number[] {
  const knots = [from];
  // Nearer than rounding leaves no number between two others: halving would go on for ever.
  const near = Math.max(FOUND * (to - from), ROUNDING * Math.max(Math.abs(from), Math.abs(to)));
  let a = from + near;
  let here = mark(a);
  for (let k = 1; k <= PROBES; k++) {
    const b = k === PROBES ? to - near : from + ((to - from) * k) / PROBES;
    const there = mark(b);
    for (let guard = 0; guard < MOST && here !== there && b - a > near; guard++) {
      let low = a;
      let high = b;
      while (high - low > near) {
        const t = (low + high) / 2;
        if (mark(t) === here) low = t;
        else high = t;
      }
      knots.push((low + high) / 2);
      a = high;
      here = mark(a);
    }
    a = b;
    here = there;
  }
  knots.push(to);
  return knots;
}
