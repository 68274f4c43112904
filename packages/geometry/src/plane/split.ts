import { type Cubic, pointAt, type Segment } from "./segment.js";
import type { Vec2 } from "./vec2.js";

/**
 * The part of a segment between two parameters, run from t0 to t1 (backwards where t1 < t0). Ends at 0 and 1 are the
 * segment's own ends to the last bit, so that pieces join without a gap.
 *
 * @param t0 - 0 to 1.
 * @param t1 - 0 to 1.
 *
 * @example
 * splitSegment(line({ x: 0, y: 0 }, { x: 8, y: 0 }), 0.25, 1); // from (2, 0) to (8, 0)
 */
export function splitSegment(segment: Segment, t0: number, t1: number): Segment {
  const from = endAt(segment, t0);
  const to = endAt(segment, t1);
  switch (segment.kind) {
    case "line":
      return { kind: "line", from, to };
    case "arc":
      return {
        ...segment,
        from,
        to,
        startAngle: segment.startAngle + segment.sweep * t0,
        sweep: segment.sweep * (t1 - t0),
      };
    case "cubic":
      // The control points of a part are the blossom of the whole at its ends.
      return {
        kind: "cubic",
        from,
        control1: t0 === 0 && t1 === 1 ? segment.control1 : blossom(segment, t0, t0, t1),
        control2: t0 === 0 && t1 === 1 ? segment.control2 : blossom(segment, t0, t1, t1),
        to,
      };
  }
}

function endAt(segment: Segment, t: number): Vec2 {
  if (t === 0) return segment.from;
  if (t === 1) return segment.to;
  return pointAt(segment, t);
}

function blossom(segment: Cubic, r: number, s: number, t: number): Vec2 {
  const mix = (axis: "x" | "y"): number => {
    const [a, b, c, d] = [
      segment.from[axis],
      segment.control1[axis],
      segment.control2[axis],
      segment.to[axis],
    ];
    const ab = a + (b - a) * r;
    const bc = b + (c - b) * r;
    const cd = c + (d - c) * r;
    const abc = ab + (bc - ab) * s;
    const bcd = bc + (cd - bc) * s;
    return abc + (bcd - abc) * t;
  };
  return { x: mix("x"), y: mix("y") };
}
