// Brute force on a grid: columns square to x, each column cut into cells between the outline's crossings, one sample of both
// faces in the middle of each cell. Cells crowd at the ends of columns and of stretches, where a blade runs out.
import type { Vec2 } from "@scantling/geometry";
import type { Hole, ReferenceBody } from "./body.js";

/** Volume integrals of 1, x, y, z, x², y², z², xy, yz, zx about the heel (mm³ to mm⁵). */
export interface GridMoments {
  readonly volume: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly xx: number;
  readonly yy: number;
  readonly zz: number;
  readonly xy: number;
  readonly yz: number;
  readonly zx: number;
}

/** How fine a grid is. */
export interface Grid {
  /** Columns along the whole body, shared out over the stretches between its breaks, and cells in a column. */
  readonly columns: number;
  readonly rows: number;
}

/** A part of the plane: stretches of x and what of each station belongs to it. */
interface Region {
  readonly breaks: readonly number[];
  spans(x: number): readonly (readonly [number, number])[];
}

const NAMES = ["volume", "x", "y", "z", "xx", "yy", "zz", "xy", "yz", "zx"] as const;

/** Least columns in a stretch, however short. */
const LEAST = 4;

/** The integrals from one grid and from one twice as fine, extrapolated: a midpoint rule's error falls with the square of its step. */
export function gridMoments(body: ReferenceBody, grid: Grid): GridMoments {
  const [coarse, fine] = [1, 2].map((times) => sums(body, grid, times)) as [number[], number[]];
  const values = fine.map((f, k) => f + (f - (coarse[k] ?? 0)) / 3);
  return Object.fromEntries(NAMES.map((name, k) => [name, values[k] ?? 0])) as Record<
    (typeof NAMES)[number],
    number
  >;
}

function sums(body: ReferenceBody, grid: Grid, times: number): number[] {
  const total = NAMES.map(() => 0);
  const { slicer } = body;
  const outline: Region = { breaks: slicer.breaks, spans: (x) => pairs(slicer.crossings(x)) };
  addRegion(total, body, outline, grid, times, 1);
  for (const hole of body.holes)
    addRegion(total, body, holeRegion(hole), { columns: 24, rows: 12 }, times, -1);
  return total;
}

/** Adds a region's cells to the sums, `sign` times. */
function addRegion(
  total: number[],
  body: ReferenceBody,
  region: Region,
  { columns, rows }: Grid,
  times: number,
  sign: 1 | -1,
): void {
  const from = Math.min(...region.breaks);
  const to = Math.max(...region.breaks);
  const ends = [...new Set([...region.breaks, ...body.breaks])]
    .filter((x) => x >= from && x <= to)
    .sort((a, b) => a - b)
    .filter((x, i, all) => i === 0 || x - (all[i - 1] ?? 0) > 1e-9);
  for (let i = 0; i + 1 < ends.length; i++) {
    const [a, b] = [ends[i] ?? 0, ends[i + 1] ?? 0];
    const count = times * Math.max(LEAST, Math.ceil((columns * (b - a)) / (to - from)));
    for (const [x, dx] of cells(a, b, count))
      for (const [bottom, top] of region.spans(x))
        for (const [y, dy] of cells(bottom, top, times * rows)) add(total, body, x, y, sign * dx * dy);
  }
}

/** Middles and widths of cells that crowd at both ends. */
function cells(a: number, b: number, count: number): (readonly [number, number])[] {
  const end = (i: number): number => a + ((b - a) * (1 - Math.cos((Math.PI * i) / count))) / 2;
  return Array.from({ length: count }, (_, i) => [(end(i) + end(i + 1)) / 2, end(i + 1) - end(i)] as const);
}

function add(total: number[], body: ReferenceBody, x: number, y: number, area: number): void {
  const right = body.face(x, y, "right");
  const left = body.alike ? right : body.face(x, y, "left");
  const t = (right + left) * area;
  const tz = ((right ** 2 - left ** 2) / 2) * area;
  const tzz = ((right ** 3 + left ** 3) / 3) * area;
  [t, t * x, t * y, tz, t * x * x, t * y * y, tzz, t * x * y, tz * y, tz * x].forEach((value, k) => {
    total[k] = (total[k] ?? 0) + value;
  });
}

const pairs = (ys: readonly number[]): (readonly [number, number])[] =>
  Array.from({ length: Math.floor(ys.length / 2) }, (_, i) => [ys[2 * i] ?? 0, ys[2 * i + 1] ?? 0]);

/** A round hole, or the band between two of them. */
function holeRegion({ x, y, radius, to = { x, y } }: Hole): Region {
  const [dx, dy] = [to.x - x, to.y - y];
  const length = Math.hypot(dx, dy) || 1;
  const [nx, ny] = [(-dy / length) * radius, (dx / length) * radius];
  const ends: readonly Vec2[] = [{ x, y }, to];
  return {
    breaks: ends.flatMap((end) => [
      end.x - radius,
      end.x - Math.abs(nx),
      end.x + Math.abs(nx),
      end.x + radius,
    ]),
    spans: (at) => {
      const ys: number[] = [];
      for (const end of ends) {
        const half = Math.sqrt(Math.max(0, radius ** 2 - (at - end.x) ** 2));
        if (half > 0) ys.push(end.y - half, end.y + half);
      }
      for (const side of [-1, 1]) {
        const t = (at - x - side * nx) / dx;
        if (t >= 0 && t <= 1) ys.push(y + side * ny + t * dy);
      }
      return [[Math.min(...ys), Math.max(...ys)]];
    },
  };
}

/** The wrong rule: height straight above the edge in place of the distance from it. */
export function heightAboveEdge({ slicer }: Pick<ReferenceBody, "slicer">): (x: number, y: number) => number {
  let low = { x: Number.NaN, y: 0 };
  return (x, y) => {
    if (low.x !== x) low = { x, y: slicer.crossings(x)[0] ?? 0 };
    return y - low.y;
  };
}
