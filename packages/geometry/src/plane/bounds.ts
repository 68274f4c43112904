import { quadraticRoots } from "../numeric/polynomial.js";
import type { Path } from "./path.js";
import { type Cubic, pointAt, type Segment } from "./segment.js";
import type { Vec2 } from "./vec2.js";

/** The smallest box, square to the axes, that holds a curve; mm. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/**
 * Parameters strictly inside a segment where it stands still along one axis (vertical or horizontal tangent, or an
 * inflection parallel to it), ascending. Between them the segment is monotone along that axis.
 *
 * @example
 * // half circle above the x axis, from (1, 0) to (-1, 0): level at its top
 * extremeParameters(arcAround({ x: 0, y: 0 }, 1, 0, Math.PI), "y"); // [0.5]
 */
export function extremeParameters(segment: Segment, axis: "x" | "y"): number[] {
  switch (segment.kind) {
    case "line":
      return [];
    case "arc": {
      // x = r·cos a stands still at multiples of π, y = r·sin a a quarter turn later.
      const offset = axis === "x" ? 0 : Math.PI / 2;
      const found: number[] = [];
      const a = segment.startAngle;
      const b = a + segment.sweep;
      const first = Math.ceil((Math.min(a, b) - offset) / Math.PI);
      const last = Math.floor((Math.max(a, b) - offset) / Math.PI);
      for (let k = first; k <= last; k++) found.push((k * Math.PI + offset - a) / segment.sweep);
      return inside(found);
    }
    case "cubic":
      return inside(cubicExtremes(segment, axis));
  }
}

function cubicExtremes(segment: Cubic, axis: "x" | "y"): number[] {
  const d0 = segment.control1[axis] - segment.from[axis];
  const d1 = segment.control2[axis] - segment.control1[axis];
  const d2 = segment.to[axis] - segment.control2[axis];
  return quadraticRoots(d0 - 2 * d1 + d2, 2 * (d1 - d0), d0);
}

// An extreme this close to an end is the end itself, seen through rounding.
const END_MARGIN = 1e-12;

const inside = (parameters: readonly number[]): number[] =>
  parameters.filter((t) => t > END_MARGIN && t < 1 - END_MARGIN).sort((a, b) => a - b);

/**
 * Ends and extremes along x of a segment: 0, where it turns back in x, 1. Each piece between is monotone in x.
 *
 * @example
 * monotoneBreaks(arcAround({ x: 0, y: 0 }, 1, 0, Math.PI), "y"); // [0, 0.5, 1]
 */
export function monotoneBreaks(segment: Segment, axis: "x" | "y" = "x"): number[] {
  return [0, ...extremeParameters(segment, axis), 1];
}

/**
 * Tight bounds of a segment.
 *
 * @example
 * segmentBounds(arcAround({ x: 0, y: 0 }, 1, 0, Math.PI)).maxY; // 1
 */
export function segmentBounds(segment: Segment): Bounds {
  const points: Vec2[] = [segment.from, segment.to];
  for (const axis of ["x", "y"] as const) {
    for (const t of extremeParameters(segment, axis)) points.push(pointAt(segment, t));
  }
  return boundsOf(points);
}

/**
 * Tight bounds of a path; infinite and inverted for a path without segments.
 *
 * @example
 * pathBounds({ segments: segmentsFromPathData("M0 0 H4 V3"), closed: false }).maxY; // 3
 */
export function pathBounds(path: Path): Bounds {
  return path.segments.map(segmentBounds).reduce(unite, boundsOf([]));
}

function boundsOf(points: readonly Vec2[]): Bounds {
  let bounds: Bounds = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const { x, y } of points) bounds = unite(bounds, { minX: x, minY: y, maxX: x, maxY: y });
  return bounds;
}

function unite(a: Bounds, b: Bounds): Bounds {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

/**
 * Whether two boxes come within `gap` of each other.
 *
 * @example
 * boundsMeet({ minX: 0, minY: 0, maxX: 2, maxY: 2 }, { minX: 1, minY: 1, maxX: 3, maxY: 3 });
 */
export function boundsMeet(a: Bounds, b: Bounds, gap = 0): boolean {
  return a.minX <= b.maxX + gap && b.minX <= a.maxX + gap && a.minY <= b.maxY + gap && b.minY <= a.maxY + gap;
}
