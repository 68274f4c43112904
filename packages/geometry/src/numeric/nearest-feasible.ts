/** The point of a polyhedron that lies nearest to another, and how hard each of its sides pushes. */
export interface NearestFeasible {
  readonly point: readonly number[];
  /** Of each row, not negative; 0 where the row does not hold the point back. */
  readonly multipliers: readonly number[];
}

/** Rows are met to this, in the unit of their limits, times the size of what is added up. */
const MET = 1e-12;
/** A direction shorter than this share of its row lies in the rows that hold already. */
const DEPENDENT = 1e-9;
/** Changes of the set of rows that hold, for each row and variable: far more than are needed. */
const MOST_CHANGES = 20;

/**
 * The point nearest to `target` with `rows · point ≥ limits`: the dual active-set method for a strictly convex quadratic
 * program, with the unit matrix. It starts at the target and takes in the row that is missed by most, one after the other.
 *
 * Source: D. Goldfarb, A. Idnani, "A numerically stable dual method for solving strictly convex quadratic programs",
 * Mathematical Programming 27 (1983) 1-33.
 *
 * @returns undefined where no point meets all rows.
 *
 * @example
 * nearestFeasible([0, 0], [[1, 1]], [2])?.point; // [1, 1]
 */
export function nearestFeasible(
  target: readonly number[],
  rows: readonly (readonly number[])[],
  limits: readonly number[],
): NearestFeasible | undefined {
  const point = [...target];
  const active: number[] = [];
  const pushes = new Map<number, number>();
  const missOf = (row: number): number => missing(rows[row] ?? [], point, limits[row] ?? 0);
  const most = MOST_CHANGES * (rows.length + target.length);
  for (let change = 0, row = worstRow(rows, limits, point); row !== undefined; change++) {
    if (change > most) return undefined;
    const normal = rows[row] as readonly number[];
    const normals = active.map((each) => rows[each] as readonly number[]);
    const shares = leastSquares(normals, normal);
    const direction = normal.map(
      (value, i) => value - sum(normals.map((n, k) => (n[i] ?? 0) * at(shares, k))),
    );
    const gain = dot(direction, normal);
    const isFree = Math.sqrt(dot(direction, direction)) > DEPENDENT * Math.sqrt(dot(normal, normal));
    const full = isFree ? missOf(row) / gain : Number.POSITIVE_INFINITY;
    const leaving = firstToLeave(active, pushes, shares);
    const step = Math.min(full, leaving?.step ?? Number.POSITIVE_INFINITY);
    if (!Number.isFinite(step)) return undefined;
    if (isFree) for (const i of point.keys()) point[i] = at(point, i) + step * at(direction, i);
    for (const [k, each] of active.entries())
      pushes.set(each, (pushes.get(each) ?? 0) - step * at(shares, k));
    pushes.set(row, (pushes.get(row) ?? 0) + step);
    if (step === full) {
      active.push(row);
      row = worstRow(rows, limits, point, active);
    } else if (leaving !== undefined) {
      active.splice(active.indexOf(leaving.row), 1);
      pushes.delete(leaving.row);
    }
  }
  return { point, multipliers: rows.map((_, row) => Math.max(0, pushes.get(row) ?? 0)) };
}

const at = (values: readonly number[], i: number): number => values[i] ?? 0;
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const dot = (a: readonly number[], b: readonly number[]): number =>
  sum(a.map((value, i) => value * at(b, i)));

const missing = (normal: readonly number[], point: readonly number[], limit: number): number =>
  limit - dot(normal, point);

/** The row that is missed by most for its length; undefined where all are met. */
function worstRow(
  rows: readonly (readonly number[])[],
  limits: readonly number[],
  point: readonly number[],
  active: readonly number[] = [],
): number | undefined {
  let worst: number | undefined;
  let most = 0;
  for (const [row, normal] of rows.entries()) {
    if (active.includes(row)) continue;
    const limit = at(limits, row);
    const size = normal.reduce((total, value, i) => total + Math.abs(value * at(point, i)), Math.abs(limit));
    const miss = missing(normal, point, limit);
    const length = Math.sqrt(dot(normal, normal));
    if (miss <= MET * Math.max(1, size)) continue;
    // A row without a direction can be met by no point.
    const far = length === 0 ? Number.POSITIVE_INFINITY : miss / length;
    if (far > most) [worst, most] = [row, far];
  }
  return worst;
}

/** Which of the rows that hold lets go first when a new one pushes, and at what step. */
function firstToLeave(
  active: readonly number[],
  pushes: ReadonlyMap<number, number>,
  shares: readonly number[],
): { readonly row: number; readonly step: number } | undefined {
  let first: { readonly row: number; readonly step: number } | undefined;
  for (const [k, row] of active.entries()) {
    const share = at(shares, k);
    if (share <= DEPENDENT) continue;
    const step = Math.max(0, pushes.get(row) ?? 0) / share;
    if (first === undefined || step < first.step) first = { row, step };
  }
  return first;
}

/** Weights of independent vectors whose sum comes nearest to another: by Gram and Schmidt, done twice for its digits. */
function leastSquares(vectors: readonly (readonly number[])[], target: readonly number[]): number[] {
  const basis: number[][] = [];
  const upper: number[][] = [];
  for (const vector of vectors) {
    const rest = [...vector];
    const column = basis.map(() => 0);
    for (let pass = 0; pass < 2; pass++) {
      for (const [k, base] of basis.entries()) {
        const part = dot(base, rest);
        column[k] = at(column, k) + part;
        for (const i of rest.keys()) rest[i] = at(rest, i) - part * at(base, i);
      }
    }
    const length = Math.sqrt(dot(rest, rest));
    basis.push(rest.map((value) => value / length));
    upper.push([...column, length]);
  }
  const right = basis.map((base) => dot(base, target));
  const weights = right.map(() => 0);
  for (let k = weights.length - 1; k >= 0; k--) {
    let value = at(right, k);
    for (let later = k + 1; later < weights.length; later++)
      value -= at(upper[later] ?? [], k) * at(weights, later);
    weights[k] = value / at(upper[k] ?? [], k);
  }
  return weights;
}
