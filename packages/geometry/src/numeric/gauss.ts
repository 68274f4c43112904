/** Nodes and weights of a Gauss–Legendre rule on [0, 1]. */
export interface GaussRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/**
 * Gauss–Legendre rule of n points on [0, 1]: exact for polynomials of degree 2n − 1.
 *
 * Nodes are the roots of the Legendre polynomial, by Newton from Tricomi's asymptotic start.
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 25.4.29 (weights).
 *
 * @example
 * // ∫₀¹ x³ dx = 1/4 with two points
 * const { nodes, weights } = gaussLegendre(2);
 */
export function gaussLegendre(n: number): GaussRule {
  const nodes = new Float64Array(n);
  const weights = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let derivative = 1;
    for (let pass = 0; pass < 100; pass++) {
      let p0 = 1;
      let p1 = x;
      for (let k = 2; k <= n; k++) {
        const p2 = ((2 * k - 1) * x * p1 - (k - 1) * p0) / k;
        p0 = p1;
        p1 = p2;
      }
      const value = n === 1 ? x : p1;
      const before = n === 1 ? 1 : p0;
      derivative = (n * (x * value - before)) / (x * x - 1);
      const step = value / derivative;
      x -= step;
      if (Math.abs(step) < 1e-16) break;
    }
    nodes[n - 1 - i] = (1 + x) / 2;
    weights[n - 1 - i] = 1 / ((1 - x * x) * derivative * derivative);
  }
  return { nodes, weights };
}

const RULES: readonly GaussRule[] = Array.from({ length: 25 }, (_, n) =>
  n === 0 ? { nodes: new Float64Array(0), weights: new Float64Array(0) } : gaussLegendre(n),
);

/** Prepared rule of n points, 1 to 24. */
export function gaussRule(n: number): GaussRule {
  const rule = RULES[n];
  if (rule === undefined || n < 1) throw new RangeError(`no Gauss rule of ${n} points is prepared (1 to 24)`);
  return rule;
}
