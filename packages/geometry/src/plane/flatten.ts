import { GeometryError } from "../errors/errors.js";
import type { Path } from "./path.js";
import { pointAt, type Segment } from "./segment.js";
import type { Vec2 } from "./vec2.js";

/** No curve of a knife needs more chords than this. */
const MOST_CHORDS = 100_000;

/**
 * Points along a path whose chords stay within `maxError` mm of it; the path's own joints are all among them. A closed
 * path does not repeat its first point.
 *
 * Arcs: the sagitta of each chord is at most the error. Cubics: equal steps of the parameter, enough for the bound
 * (1/8)·max|B″|/n².
 *
 * @param maxError - greatest distance between curve and chord, mm, above 0.
 * @throws {GeometryError} `flatten-too-fine` where that would take more than 100 000 chords for one segment.
 *
 * @example
 * const square = { segments: segmentsFromPathData("M0 0 H4 V4 H0 Z"), closed: true };
 * flattenPath(square, 0.01).length; // 4
 */
export function flattenPath(path: Path, maxError: number): Vec2[] {
  const points: Vec2[] = [];
  for (const segment of path.segments) points.push(segment.from, ...innerPoints(segment, maxError));
  const last = path.segments.at(-1);
  if (last !== undefined && !path.closed) points.push(last.to);
  return points;
}

/**
 * Points of one segment with both its ends.
 *
 * @example
 * flattenSegment(line({ x: 0, y: 0 }, { x: 8, y: 0 }), 0.01); // [{ x: 0, y: 0 }, { x: 8, y: 0 }]
 */
export const flattenSegment = (segment: Segment, maxError: number): Vec2[] => [
  segment.from,
  ...innerPoints(segment, maxError),
  segment.to,
];

function innerPoints(segment: Segment, maxError: number): Vec2[] {
  const count = chordCount(segment, maxError);
  return Array.from({ length: count - 1 }, (_, i) => pointAt(segment, (i + 1) / count));
}

function chordCount(segment: Segment, maxError: number): number {
  const count = chordsNeeded(segment, maxError);
  if (!(count <= MOST_CHORDS)) {
    throw new GeometryError("flatten-too-fine", `chords within ${maxError} mm of a curve would be too many`);
  }
  return count;
}

function chordsNeeded(segment: Segment, maxError: number): number {
  if (!(maxError > 0)) return Number.POSITIVE_INFINITY;
  switch (segment.kind) {
    case "line":
      return 1;
    case "arc": {
      // Sagitta r(1 − cos(θ/2)) = 2r·sin²(θ/4); chords of a third of a turn at most, so that a circle keeps its inside.
      const turn = 4 * Math.asin(Math.min(1, Math.sqrt(maxError / (2 * segment.radius))));
      return Math.max(1, Math.ceil(Math.abs(segment.sweep) / Math.min(turn, (2 * Math.PI) / 3)));
    }
    case "cubic": {
      const { from, control1, control2, to } = segment;
      const bend = (a: Vec2, b: Vec2, c: Vec2): number =>
        Math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y);
      const second = 6 * Math.max(bend(from, control1, control2), bend(control1, control2, to));
      return Math.max(1, Math.ceil(Math.sqrt(second / (8 * maxError))));
    }
  }
}
