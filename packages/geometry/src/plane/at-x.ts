import { bracketedRoot } from "../numeric/polynomial.js";
import { monotoneBreaks } from "./bounds.js";
import type { Path } from "./path.js";
import { derivativeAt, pointAt, type Segment } from "./segment.js";
import type { Vec2 } from "./vec2.js";

/** Rounding of a coordinate of this size, mm: what lies nearer than this to a station is on it. */
const roundingAt = (x: number): number => 1e-13 * (10 + Math.abs(x));

/**
 * Every parameter in [0, 1] at which a segment stands over x, ascending.
 *
 * A segment is cut where it turns back in x; in each piece there is at most one crossing, found by Newton inside its
 * bracket to the last bits. Ends and turning points that lie at x to rounding count, so a touch is one parameter. A
 * segment that runs along the vertical at x gives its two ends.
 *
 * @param x - mm.
 *
 * @example
 * parametersAtX(line({ x: 0, y: 0 }, { x: 8, y: 2 }), 2); // [0.25]
 */
export function parametersAtX(segment: Segment, x: number): number[] {
  const tolerance = roundingAt(x);
  if (segment.kind === "line") return onLine(segment.from.x, segment.to.x, x, tolerance);
  const breaks = monotoneBreaks(segment);
  const found: number[] = [];
  const keep = (t: number): void => {
    if (found[found.length - 1] !== t) found.push(t);
  };
  for (let i = 0; i + 1 < breaks.length; i++) {
    const ta = breaks[i] as number;
    const tb = breaks[i + 1] as number;
    const a = xAt(segment, ta) - x;
    const b = xAt(segment, tb) - x;
    const touchesA = Math.abs(a) <= tolerance;
    const touchesB = Math.abs(b) <= tolerance;
    if (touchesA) keep(ta);
    if (!touchesA && !touchesB && a > 0 !== b > 0) {
      keep(
        bracketedRoot(
          (t) => ({ value: pointAt(segment, t).x - x, slope: derivativeAt(segment, t).x }),
          ta,
          tb,
          a,
        ),
      );
    }
    if (touchesB) keep(tb);
  }
  return found;
}

function onLine(from: number, to: number, x: number, tolerance: number): number[] {
  const atFrom = Math.abs(from - x) <= tolerance;
  const atTo = Math.abs(to - x) <= tolerance;
  if (atFrom && atTo) return [0, 1];
  if (atFrom) return [0];
  if (atTo) return [1];
  return from > x === to > x ? [] : [(x - from) / (to - from)];
}

function xAt(segment: Segment, t: number): number {
  if (t === 0) return segment.from.x;
  if (t === 1) return segment.to.x;
  return pointAt(segment, t).x;
}

/** A place where a path stands over a station. */
export interface StationCrossing {
  /** Index of the segment in the path. */
  readonly segment: number;
  readonly t: number;
  readonly point: Vec2;
}

/**
 * Everywhere that a path stands over x, from the lowest point up. A joint at x is listed once, under the segment that
 * comes first in the path.
 *
 * @example
 * const square = { segments: segmentsFromPathData("M0 0 H4 V4 H0 Z"), closed: true };
 * crossingsAtX(square, 1).map(({ point }) => point.y); // [0, 4]
 */
export function crossingsAtX(path: Path, x: number): StationCrossing[] {
  const all = path.segments.flatMap((segment, index) =>
    parametersAtX(segment, x).map((t): StationCrossing => {
      const y = t === 0 ? segment.from.y : t === 1 ? segment.to.y : pointAt(segment, t).y;
      return { segment: index, t, point: { x, y } };
    }),
  );
  all.sort((a, b) => a.point.y - b.point.y || a.segment - b.segment);
  return all.filter((crossing, i) => {
    const before = all[i - 1];
    return before === undefined || crossing.point.y - before.point.y > roundingAt(crossing.point.y);
  });
}
