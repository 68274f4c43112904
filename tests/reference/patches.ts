// Polynomial patches through a grid of points: control points of the Bernstein form, one span each way. Two patches that
// share a row of points share the curve through it, so that they meet without a gap.

export type Point = readonly [number, number, number];
export type Grid = readonly (readonly Point[])[];

/** Parameters of count + 1 points: close together at the ends, which keeps an interpolating polynomial from swinging. */
export function nodes(count: number): number[] {
  return Array.from({ length: count + 1 }, (_, i) => (1 - Math.cos((Math.PI * i) / count)) / 2);
}

/** Control points of the patch that goes through the grid's points at {@link nodes} in both directions. */
export function controlPoints(grid: Grid): Grid {
  return transposed(transposed(grid.map(controlRow)).map(controlRow));
}

const transposed = (grid: Grid): Grid =>
  (grid[0] ?? []).map((_, j) => grid.map((column) => column[j] ?? [0, 0, 0]));

function controlRow(points: readonly Point[]): Point[] {
  const weights = inverse(points.length - 1);
  const sum = (row: readonly number[], axis: 0 | 1 | 2): number =>
    row.reduce((total, weight, i) => total + weight * (points[i]?.[axis] ?? 0), 0);
  return weights.map((row): Point => [sum(row, 0), sum(row, 1), sum(row, 2)]);
}

const known = new Map<number, number[][]>();

/** From points at the nodes to Bernstein coefficients, by elimination with pivots. */
function inverse(degree: number): number[][] {
  const before = known.get(degree);
  if (before) return before;
  const rows = nodes(degree).map((t, i) => {
    const left = Array.from({ length: degree + 1 }, (_, k) => bernstein(degree, k, t));
    return [...left, ...left.map((_, k) => (k === i ? 1 : 0))];
  });
  for (let k = 0; k <= degree; k++) {
    const size = (i: number): number => Math.abs(rows[i]?.[k] ?? 0);
    let pivot = k;
    for (let i = k + 1; i <= degree; i++) if (size(i) > size(pivot)) pivot = i;
    const row = rows[pivot] ?? [];
    rows[pivot] = rows[k] ?? [];
    const scaled = row.map((value) => value / (row[k] ?? 1));
    rows[k] = scaled;
    rows.forEach((other, i) => {
      const factor = other[k] ?? 0;
      if (i !== k) rows[i] = other.map((value, j) => value - factor * (scaled[j] ?? 0));
    });
  }
  const found = rows.map((row) => row.slice(degree + 1));
  known.set(degree, found);
  return found;
}

function bernstein(degree: number, k: number, t: number): number {
  let choose = 1;
  for (let i = 1; i <= k; i++) choose = (choose * (degree - k + i)) / i;
  return choose * t ** k * (1 - t) ** (degree - k);
}
