// Edge and spine as an order's file draws them, cut into short straight pieces. No line of it comes from the library.

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Both in the direction of growing x. */
export interface DrawnBlade {
  readonly edge: readonly Point[];
  readonly spine: readonly Point[];
}

/** Pieces that a cubic is cut into: they leave it by less than 10⁻³ mm. */
const PIECES = 48;

export function drawnBlade(runs: {
  readonly edge: string;
  readonly front?: string;
  readonly spine?: string;
}): DrawnBlade {
  const edge = pointsOf(runs.edge);
  const top = pointsOf(runs.front ?? "", edge.at(-1)).at(-1);
  return { edge, spine: [...pointsOf(runs.spine ?? "", top)].reverse() };
}

/** Points of a run of M, L and C with absolute coordinates, from where the run before it ended. */
export function pointsOf(run: string, start: Point = { x: 0, y: 0 }): readonly Point[] {
  let points = [start];
  for (const [, letter, rest = ""] of run.matchAll(/([A-Za-z])([^A-Za-z]*)/gu)) {
    const given = pairs(rest);
    const from = points.at(-1) ?? start;
    const [b, c, d] = given;
    if (letter === "M") points = [...given];
    else if (letter === "L") points.push(...given);
    else if (letter === "C" && given.length === 3 && b && c && d) {
      for (let i = 1; i <= PIECES; i++) points.push(onCubic(from, b, c, d, i / PIECES));
    } else throw new Error(`this is not read here: ${run}`);
  }
  return points;
}

function pairs(text: string): readonly Point[] {
  const numbers = text
    .trim()
    .split(/[\s,]+/u)
    .map(Number);
  if (numbers.length % 2 !== 0 || numbers.some(Number.isNaN)) throw new Error(`no pairs: ${text}`);
  return numbers.flatMap((y, i) => (i % 2 === 0 ? [] : [{ x: numbers[i - 1] ?? Number.NaN, y }]));
}

function onCubic(a: Point, b: Point, c: Point, d: Point, t: number): Point {
  const u = 1 - t;
  const mix = (p: number, q: number, r: number, s: number): number =>
    u * u * u * p + 3 * u * u * t * q + 3 * u * t * t * r + t * t * t * s;
  return { x: mix(a.x, b.x, c.x, d.x), y: mix(a.y, b.y, c.y, d.y) };
}

/** y of a line of points, whose x grows, at x. */
export function yAt(points: readonly Point[], x: number): number {
  for (const [i, b] of points.entries()) {
    const a = points[i - 1];
    if (a !== undefined && a.x <= x && x <= b.x && a.x < b.x) {
      return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
    }
  }
  throw new Error(`nothing is drawn at ${x}`);
}

/** Height of the drawn blade at x. */
export const drawnHeight = ({ edge, spine }: DrawnBlade, x: number): number => yAt(spine, x) - yAt(edge, x);

/** How far the edge is prolonged along its ends, mm: more than any blade is high. */
const FAR = 200;

/** Pieces of the edge that can be nearest to points above x, no farther from the edge than `reach`. */
export function edgeNear(
  { edge }: DrawnBlade,
  x: number,
  reach: number,
): readonly (readonly [Point, Point])[] {
  const [first, second] = edge;
  const [beforeLast, last] = edge.slice(-2);
  if (!first || !second || !beforeLast || !last) throw new Error("an edge has two ends");
  const line = [prolonged(second, first), ...edge, prolonged(beforeLast, last)];
  return line.flatMap((b, i) => {
    const a = line[i - 1];
    return a === undefined || b.x < x - reach || a.x > x + reach ? [] : [[a, b] as const];
  });
}

function prolonged(from: Point, to: Point): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: to.x + (FAR * (to.x - from.x)) / length, y: to.y + (FAR * (to.y - from.y)) / length };
}

/** Distance to the nearest of some straight pieces. */
export function distanceTo(pieces: readonly (readonly [Point, Point])[], x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [a, b] of pieces) {
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const along = ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy);
    const share = Math.min(1, Math.max(0, along));
    least = Math.min(least, Math.hypot(x - a.x - share * dx, y - a.y - share * dy));
  }
  return least;
}
