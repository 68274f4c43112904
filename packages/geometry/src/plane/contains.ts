import { GeometryError } from "../errors/errors.js";
import { bracketedRoot } from "../numeric/polynomial.js";
import { monotoneBreaks } from "./bounds.js";
import { nearestOnPath } from "./nearest.js";
import type { Path } from "./path.js";
import { derivativeAt, pointAt, type Segment } from "./segment.js";
import type { Vec2 } from "./vec2.js";

/**
 * How often a closed path winds round a point, counter-clockwise positive: 1 inside an outline, 0 outside. Exact on the
 * curves themselves. For a point on the path, either.
 *
 * A ray goes up from the point; each piece of the path that is monotone in x crosses it once or not at all, and owns only
 * the lower of its two x, so that a joint on the ray counts once.
 *
 * @throws {GeometryError} `path-open`
 *
 * @example
 * const square = { segments: segmentsFromPathData("M0 0 H4 V4 H0 Z"), closed: true };
 * windingNumber(square, { x: 1, y: 1 }); // 1
 */
export function windingNumber(path: Path, p: Vec2): number {
  if (!path.closed) throw new GeometryError("path-open", "only a closed path has an inside");
  let winding = 0;
  for (const segment of path.segments) {
    const breaks = monotoneBreaks(segment);
    for (let i = 0; i + 1 < breaks.length; i++) {
      winding += crossingAbove(segment, breaks[i] as number, breaks[i + 1] as number, p);
    }
  }
  return winding;
}

/** +1 for a piece that passes above p toward −x, −1 toward +x, 0 if it does not. */
function crossingAbove(segment: Segment, ta: number, tb: number, p: Vec2): number {
  const a = endOf(segment, ta);
  const b = endOf(segment, tb);
  if (a.x <= p.x === b.x <= p.x) return 0;
  const direction = a.x > b.x ? 1 : -1;
  if (a.y > p.y && b.y > p.y && segment.kind === "line") return direction;
  return heightAt(segment, ta, tb, a, b, p.x) > p.y ? direction : 0;
}

function heightAt(segment: Segment, ta: number, tb: number, a: Vec2, b: Vec2, x: number): number {
  if (segment.kind === "line") return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
  if (a.x === x) return a.y;
  if (b.x === x) return b.y;
  const f = (t: number): { value: number; slope: number } => ({
    value: pointAt(segment, t).x - x,
    slope: derivativeAt(segment, t).x,
  });
  return pointAt(segment, bracketedRoot(f, ta, tb, a.x - x)).y;
}

function endOf(segment: Segment, t: number): Vec2 {
  if (t === 0) return segment.from;
  if (t === 1) return segment.to;
  return pointAt(segment, t);
}

/**
 * Distance from a point to an outline, mm: positive inside, negative outside, for a counter-clockwise or clockwise path.
 *
 * @throws {GeometryError} `path-open`
 *
 * @example
 * const square = { segments: segmentsFromPathData("M0 0 H4 V4 H0 Z"), closed: true };
 * depthInside(square, { x: 1, y: 2 }); // 1
 */
export function depthInside(path: Path, p: Vec2): number {
  const distance = nearestOnPath(path, p)?.distance ?? Number.POSITIVE_INFINITY;
  return windingNumber(path, p) === 0 ? -distance : distance;
}

/**
 * Whether a point lies inside a closed path or on it.
 *
 * @example
 * const square = { segments: segmentsFromPathData("M0 0 H4 V4 H0 Z"), closed: true };
 * isInside(square, { x: 5, y: 1 }) ? 1 : 0; // 0
 */
export const isInside = (path: Path, p: Vec2): boolean => depthInside(path, p) >= 0;
