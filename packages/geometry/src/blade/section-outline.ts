import { mirrorSegment } from "../plane/mirror.js";
import type { Path } from "../plane/path.js";
import { line, reverseSegment, type Segment } from "../plane/segment.js";
import { distance, type Vec2 } from "../plane/vec2.js";
import { FaceStation } from "./face-station.js";
import type { Knife } from "./knife.js";
import { steelSpans } from "./section-cuts.js";
import { faceOutline } from "./section-outline-face.js";
import type { PieceState } from "./weigh-state.js";

/** The outline of the steel in a section square to x, as curves. */
export interface SectionOutline {
  /** mm from the finished heel. */
  readonly x: number;
  readonly state: PieceState;
  /**
   * Closed paths in (z, y), mm: right-hand face at positive z, y from the heel's level, counter-clockwise; from below, one for
   * each piece of steel: a hole or a slot parts the section in two.
   */
  readonly contours: readonly Path[];
}

/** Places nearer than this are one, mm. */
const SAME_PLACE = 1e-9;

/**
 * The section of the knife at a station in a size state, as it is drawn. Straight faces are lines, wheel-ground and crowned
 * ones over a level edge, eased spines and level fullers in a level face are arcs, both exact; where the edge leans or
 * curves, or the bevels are still easing in, the faces are cubics within 1e-7 mm. Of the forged blade the strips below and
 * above the profile are part of it, as thick as the rims that they lie along.
 *
 * @param x - mm from the finished heel, between the ends of the finished outline; at a corner of the outline it is read
 * toward the tip.
 * @returns no contour where there is no steel.
 *
 * @example
 * // full flat grind, edge bevels of 0.3 rad: plane, bevel and spine on either side
 * const [contour] = sectionOutline(knife, 20).contours;
 * contour.segments.length; // 5
 * signedArea(contour) - sectionAt(knife, 20).area; // 0
 */
export function sectionOutline(knife: Knife, x: number, state: PieceState = "finished"): SectionOutline {
  const body = knife.body(state);
  const station = new FaceStation(body).at(x);
  const strip = state === "forged" ? knife.allowances.outline : 0;
  const spans = steelSpans(body, x);
  const contours = spans.map(([low, high], i) => {
    const below = i === 0 ? strip : 0;
    const above = i === spans.length - 1 ? strip : 0;
    const side = (name: "right" | "left"): Segment[] =>
      withStrips(faceOutline(station, name, low, high), below, above);
    return closed(side("right"), side("left").map(mirrorSegment));
  });
  return { x, state, contours };
}

/** A face carried on straight down and up. */
function withStrips(face: readonly Segment[], below: number, above: number): Segment[] {
  const first = face[0]?.from;
  const last = face[face.length - 1]?.to;
  return [
    ...(first !== undefined && below > 0 ? [line({ x: first.x, y: first.y - below }, first)] : []),
    ...face,
    ...(last !== undefined && above > 0 ? [line(last, { x: last.x, y: last.y + above })] : []),
  ];
}

/** Up the right-hand face and down the left one, with a line across wherever they do not meet. */
function closed(right: readonly Segment[], left: readonly Segment[]): Path {
  const down = [...left].reverse().map(reverseSegment);
  const segments = [...right];
  const close = (to: Vec2): void => {
    const end = segments[segments.length - 1]?.to;
    if (end !== undefined && distance(end, to) > SAME_PLACE) segments.push(line(end, to));
  };
  for (const segment of down) {
    close(segment.from);
    const end = segments[segments.length - 1]?.to ?? segment.from;
    segments.push({ ...segment, from: end });
  }
  const start = segments[0]?.from;
  if (start !== undefined) {
    close(start);
    const last = segments.pop();
    if (last !== undefined) segments.push({ ...last, to: start });
  }
  return { segments, closed: true };
}
