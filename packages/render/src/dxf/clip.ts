import { arcAround, type Bounds, flattenPath, type Path, pathBounds, type Vec2 } from "@scantling/geometry";
import { polyline } from "../drawing.js";

/**
 * What of a path lies in a box. The format cannot hide what lies outside, so it is cut off: a path that crosses the rim
 * is flattened within `maxError` mm first, one that lies inside stays as it is.
 */
export function clipPath(path: Path, box: Bounds, maxError: number): Path[] {
  if (path.segments.length === 0) return [];
  const own = pathBounds(path);
  if (isIn({ x: own.minX, y: own.minY }, box) && isIn({ x: own.maxX, y: own.maxY }, box)) return [path];
  if (own.maxX < box.minX || own.minX > box.maxX || own.maxY < box.minY || own.minY > box.maxY) return [];
  const points = flattenPath(path, maxError);
  if (path.closed) points.push(...points.slice(0, 1));
  const runs: Vec2[][] = [];
  for (const [index, to] of points.slice(1).entries()) {
    const piece = clipChord(points[index] ?? to, to, box);
    if (piece === undefined) continue;
    const last = runs.at(-1);
    const end = last?.at(-1);
    if (end !== undefined && end.x === piece[0].x && end.y === piece[0].y) last?.push(piece[1]);
    else runs.push([...piece]);
  }
  return runs.map((run) => polyline(run));
}

/** A circle as a path, for what is cut off. */
export const circlePath = (centre: Vec2, radius: number): Path => ({
  segments: [arcAround(centre, radius, 0, 2 * Math.PI)],
  closed: true,
});

/** Whether a point lies in a box or on its rim. */
export const isIn = ({ x, y }: Vec2, box: Bounds): boolean =>
  x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;

/** The part of a chord in the box, one axis after the other (Liang and Barsky's way). */
function clipChord(a: Vec2, b: Vec2, box: Bounds): readonly [Vec2, Vec2] | undefined {
  let enter = 0;
  let leave = 1;
  for (const [start, step, low, high] of [
    [a.x, b.x - a.x, box.minX, box.maxX],
    [a.y, b.y - a.y, box.minY, box.maxY],
  ] as const) {
    if (step === 0) {
      if (start < low || start > high) return undefined;
      continue;
    }
    const ends = [(low - start) / step, (high - start) / step] as const;
    enter = Math.max(enter, Math.min(...ends));
    leave = Math.min(leave, Math.max(...ends));
  }
  if (enter >= leave) return undefined;
  const at = (t: number): Vec2 => ({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });
  return [enter === 0 ? a : at(enter), leave === 1 ? b : at(leave)];
}
