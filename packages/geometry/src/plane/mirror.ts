import type { Path } from "./path.js";
import { reverseSegment, type Segment } from "./segment.js";
import type { Vec2 } from "./vec2.js";

/**
 * A point seen from the other face of the knife: x changes its sign, exactly.
 *
 * @example
 * mirrorPoint({ x: 8, y: 3 }); // { x: -8, y: 3 }
 */
// 0 − x and not −x: no minus zero comes of it.
export const mirrorPoint = ({ x, y }: Vec2): Vec2 => ({ x: 0 - x, y });

/**
 * The same curve seen from the other face of the knife, run the same way: x changes its sign, an arc turns the other
 * way. Every stored number is either kept or has its sign changed, but for an arc's start angle, which is π less it.
 *
 * @example
 * mirrorSegment(line({ x: 0, y: 0 }, { x: 8, y: 3 })).to; // { x: -8, y: 3 }
 */
export function mirrorSegment(segment: Segment): Segment {
  const from = mirrorPoint(segment.from);
  const to = mirrorPoint(segment.to);
  switch (segment.kind) {
    case "line":
      return { kind: "line", from, to };
    case "arc":
      return {
        ...segment,
        from,
        to,
        centre: mirrorPoint(segment.centre),
        startAngle: Math.PI - segment.startAngle,
        sweep: -segment.sweep,
      };
    case "cubic":
      return {
        kind: "cubic",
        from,
        control1: mirrorPoint(segment.control1),
        control2: mirrorPoint(segment.control2),
        to,
      };
  }
}

/**
 * A path seen from the other face of the knife. It is run the other way round, so that an outline stays
 * counter-clockwise.
 *
 * @example
 * const wedge = { segments: segmentsFromPathData("M0 0 H4 V2 Z"), closed: true };
 * signedArea(mirrorPath(wedge)); // 4
 */
export const mirrorPath = (path: Path): Path => ({
  ...path,
  segments: path.segments.map((segment) => mirrorSegment(reverseSegment(segment))).reverse(),
});
