/** Root of f between a and b, where its values fa and fb have different signs: secants kept inside the bracket (Illinois). */
export function findRoot(f: (t: number) => number, a: number, fa: number, b: number, fb: number): number {
  let low = a;
  let flow = fa;
  let high = b;
  let fhigh = fb;
  let last = 0;
  for (let i = 0; i < 80; i++) {
    let t = i > 30 ? (low + high) / 2 : low - (flow * (high - low)) / (fhigh - flow);
    if (!(t > low && t < high)) t = (low + high) / 2;
    if (t <= low || t >= high) break;
    const ft = f(t);
    if (ft === 0) return t;
    if (ft < 0 === flow < 0) {
      low = t;
      flow = ft;
      if (last < 0) fhigh /= 2;
      last = -1;
    } else {
      high = t;
      fhigh = ft;
      if (last > 0) flow /= 2;
      last = 1;
    }
    if (high - low < 1e-15 * Math.max(1, Math.abs(low)) || Math.abs(ft) < 1e-16) return t;
  }
  return (low + high) / 2;
}

/**
 * Adds the places between a and b where f changes its sign, also those that come in twos between two probes: where f turns
 * round on its way to zero it is followed to its turn.
 */
export function signChanges(
  f: (t: number) => number,
  a: number,
  b: number,
  parts: number,
  out: number[],
): void {
  const ts = Array.from({ length: parts + 1 }, (_, k) => (k === parts ? b : a + ((b - a) * k) / parts));
  const values = ts.map(f);
  for (let k = 0; k < parts; k++) {
    const [t0 = 0, t1 = 0, t2 = 0] = ts.slice(k, k + 3);
    const [f0 = 0, f1 = 0, f2 = 0] = values.slice(k, k + 3);
    if (f0 < 0 !== f1 < 0) out.push(findRoot(f, t0, f0, t1, f1));
    else if (k + 2 <= parts && f1 < 0 === f2 < 0 && Math.abs(f1) < Math.min(Math.abs(f0), Math.abs(f2))) {
      const turn = nearestToZero(f, t0, t2, f1 < 0);
      const ft = f(turn);
      if (ft < 0 !== f1 < 0) {
        out.push(findRoot(f, t0, f0, turn, ft), findRoot(f, turn, ft, t2, f2));
      }
    }
  }
}

/** Place between a and b where f, which is below zero (or above) at both, comes nearest to it: golden section. */
function nearestToZero(f: (t: number) => number, a: number, b: number, below: boolean): number {
  const g = (t: number): number => (below ? -f(t) : f(t));
  const ratio = (Math.sqrt(5) - 1) / 2;
  let low = a;
  let high = b;
  let t1 = high - ratio * (high - low);
  let t2 = low + ratio * (high - low);
  let g1 = g(t1);
  let g2 = g(t2);
  for (let i = 0; i < 44 && g1 >= 0 && g2 >= 0; i++) {
    if (g1 < g2) {
      high = t2;
      t2 = t1;
      g2 = g1;
      t1 = high - ratio * (high - low);
      g1 = g(t1);
    } else {
      low = t1;
      t1 = t2;
      g1 = g2;
      t2 = low + ratio * (high - low);
      g2 = g(t2);
    }
  }
  return g1 < g2 ? t1 : t2;
}
