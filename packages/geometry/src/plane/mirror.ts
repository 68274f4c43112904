import type { Path } from "./path.js";
import { mapSegment, reverseSegment, type Segment } from "./segment.js";
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
export const mirrorSegment = (segment: Segment): Segment =>
  mapSegment(segment, { point: mirrorPoint, direction: (angle) => Math.PI - angle, mirrors: true });

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
