/**
 * Real roots of a·t² + b·t + c in ascending order; a double root appears once. Neither the leading nor the last
 * coefficient may spoil the other root by cancellation: the larger root is found first, the other from the product.
 *
 * @returns no roots for a constant, zero or not.
 *
 * @example
 * quadraticRoots(1, -3, 2); // [1, 2]
 */
export function quadraticRoots(a: number, b: number, c: number): number[] {
  const size = Math.max(Math.abs(a), Math.abs(b), Math.abs(c));
  if (!(size > 0)) return [];
  // Scaled by a power of two, which rounds nothing, so that the discriminant can neither overflow nor vanish.
  const unit = 2 ** Math.floor(Math.log2(size));
  const [p, q, r] = [a / unit, b / unit, c / unit];
  if (p === 0) return q === 0 ? [] : [-r / q];
  const discriminant = q * q - 4 * p * r;
  if (discriminant < 0) return [];
  if (discriminant === 0) return [-q / (2 * p)];
  const s = -0.5 * (q + (q < 0 ? -1 : 1) * Math.sqrt(discriminant));
  const roots = [s / p, s === 0 ? 0 : r / s].filter(Number.isFinite);
  return roots.sort((x, y) => x - y);
}

/** Value and slope of a polynomial given by its Bernstein coefficients, at t; de Casteljau's scheme. */
export function evaluateBernstein(
  coefficients: readonly number[],
  t: number,
): { value: number; slope: number } {
  const degree = coefficients.length - 1;
  if (degree < 1) return { value: coefficients[0] ?? 0, slope: 0 };
  const work = coefficients.slice();
  for (let level = degree; level > 1; level--) blend(work, level, t);
  const low = work[0] as number;
  const high = work[1] as number;
  return { value: low + (high - low) * t, slope: degree * (high - low) };
}

/** One de Casteljau level in place: afterwards the first `count` entries hold the blended neighbours. */
function blend(work: number[], count: number, t: number): void {
  for (let i = 0; i < count; i++) {
    const a = work[i] as number;
    work[i] = a + ((work[i + 1] as number) - a) * t;
  }
}

/** Bernstein coefficients of the product of two polynomials. */
export function multiplyBernstein(a: readonly number[], b: readonly number[]): number[] {
  const m = a.length - 1;
  const n = b.length - 1;
  const product = new Array<number>(m + n + 1).fill(0);
  for (let i = 0; i <= m; i++) {
    for (let j = 0; j <= n; j++) {
      const share = (binomial(m, i) * binomial(n, j)) / binomial(m + n, i + j);
      product[i + j] = (product[i + j] as number) + share * (a[i] as number) * (b[j] as number);
    }
  }
  return product;
}

/** Bernstein coefficients of the derivative. */
export function differentiateBernstein(coefficients: readonly number[]): number[] {
  const degree = coefficients.length - 1;
  return Array.from(
    { length: Math.max(degree, 0) },
    (_, i) => degree * ((coefficients[i + 1] as number) - (coefficients[i] as number)),
  );
}

const ROWS: number[][] = [[1]];
function binomial(n: number, k: number): number {
  while (ROWS.length <= n) {
    const last = ROWS[ROWS.length - 1] as number[];
    ROWS.push([1, ...last.slice(1).map((value, i) => value + (last[i] as number)), 1]);
  }
  return ROWS[n]?.[k] ?? 0;
}

/**
 * All roots in [0, 1] of a polynomial given by its Bernstein coefficients, ascending.
 *
 * Descartes' rule in Bernstein form isolates them: an interval with no change of sign among its coefficients has no
 * root, with one change exactly one; others are halved. Where the polynomial only touches zero, rounding decides whether
 * the root is found once, twice within 1e-7, or not at all: who needs touches looks at the roots of the derivative.
 *
 * Source: R. T. Farouki, "The Bernstein polynomial basis: a centennial retrospective", CAGD 29 (2012), section 6.
 *
 * @returns no roots for a polynomial that is zero everywhere.
 */
export function bernsteinRoots(coefficients: readonly number[]): number[] {
  const roots: number[] = [];
  if (coefficients.every((value) => value === 0)) return roots;
  if (coefficients[0] === 0) roots.push(0);
  isolate(coefficients, coefficients.slice(), 0, 1, roots);
  if (coefficients[coefficients.length - 1] === 0) roots.push(1);
  return roots.filter((root, i) => i === 0 || root !== roots[i - 1]);
}

const NARROWEST = 2 ** -30;

function isolate(
  whole: readonly number[],
  local: readonly number[],
  from: number,
  to: number,
  roots: number[],
): void {
  const changes = signChanges(local);
  if (changes === 0) return;
  const first = local[0] as number;
  const last = local[local.length - 1] as number;
  if (changes === 1 && first !== 0 && last !== 0) {
    roots.push(bracketedRoot((t) => evaluateBernstein(whole, t), from, to, first));
    return;
  }
  if (to - from < NARROWEST) {
    roots.push((from + to) / 2);
    return;
  }
  const middle = (from + to) / 2;
  const [left, right] = halve(local);
  isolate(whole, left, from, middle, roots);
  if (right[0] === 0) roots.push(middle);
  isolate(whole, right, middle, to, roots);
}

function signChanges(values: readonly number[]): number {
  let changes = 0;
  let previous = 0;
  for (const value of values) {
    if (value === 0) continue;
    const sign = value > 0 ? 1 : -1;
    if (previous !== 0 && sign !== previous) changes++;
    previous = sign;
  }
  return changes;
}

function halve(values: readonly number[]): [number[], number[]] {
  const work = values.slice();
  const left: number[] = [];
  const right: number[] = [];
  for (let count = work.length - 1; count >= 0; count--) {
    left.push(work[0] as number);
    right.push(work[count] as number);
    blend(work, count, 0.5);
  }
  return [left, right.reverse()];
}

/**
 * Root of a smooth function between `from` and `to`, by Newton steps kept inside a shrinking bracket; halved where
 * Newton would leave it or is slow.
 *
 * @param f - value and slope; its value changes sign once between the ends.
 * @param valueAtFrom - its value (or only the sign of it) at `from`, not zero.
 */
export function bracketedRoot(
  f: (t: number) => { value: number; slope: number },
  from: number,
  to: number,
  valueAtFrom: number,
): number {
  let low = from;
  let high = to;
  let t = (low + high) / 2;
  let lastWidth = high - low;
  for (let pass = 0; pass < 200; pass++) {
    const { value, slope } = f(t);
    if (value === 0) return t;
    if (value > 0 === valueAtFrom > 0) low = t;
    else high = t;
    const width = high - low;
    const newton = t - value / slope;
    const halfway = low + width / 2;
    const slow = pass > 6 && pass % 3 === 0 && width > lastWidth / 2;
    if (pass % 3 === 0) lastWidth = width;
    const next = newton > low && newton < high && !slow ? newton : halfway;
    if (next === t || !(next > low && next < high)) return next;
    if (Math.abs(next - t) <= 1e-16 * Math.max(Math.abs(low), Math.abs(high))) return next;
    t = next;
  }
  return t;
}
