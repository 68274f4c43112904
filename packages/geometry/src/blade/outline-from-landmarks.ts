import { SpecError } from "../errors/errors.js";
import { arcBetween, cubic, line, reverseSegment, type Segment } from "../plane/segment.js";
import { distance, interpolate, type Vec2, vec2 } from "../plane/vec2.js";
import { checkLandmarks, checkOutline } from "./check-outline.js";
import { edgeRise, type Landmarks, resolveLandmarks, snapTo } from "./landmarks.js";
import { type Outline, outlineOfRuns } from "./outline.js";
import type { LandmarkOutlineSpec, TangSpec } from "./spec.js";

/**
 * Builds the outline of a blade and its full tang from landmarks; what the file leaves out comes from the family's
 * table of defaults.
 *
 * The heel is the origin. The edge is straight, then a belly that leaves it without a corner and never turns back.
 * Square front: one circular arc lifts the edge to the foot of an upright front, the spine is level. Pointed: a cubic
 * rises to the tip; the spine is level up to `spineBreak` and falls from there in a cubic, or stays level where the
 * tip is as high as the heel. Behind the handle front the tang has the given heights below its level top.
 *
 * @param ricasso - unground length between heel and handle front, mm, 0 or more.
 * @throws {SpecError} with every landmark that cannot be, or that makes an outline which crosses itself.
 *
 * @example
 * const outline = outlineFromLandmarks(
 *   { family: "vegetable", edgeLength: 225, heelHeight: 92, straightEdge: 150, tipHeight: 80 },
 *   10,
 *   { form: "full", length: 128, heights: { front: 28, middle: 25, butt: 30 } },
 * );
 * outline.handleFront; // -10
 * outline.butt; // -138
 */
export function outlineFromLandmarks(spec: LandmarkOutlineSpec, ricasso: number, tang: TangSpec): Outline {
  const issues = checkLandmarks(spec, ricasso, tang);
  if (issues.length > 0) throw new SpecError(issues);
  const outline = buildFromLandmarks(resolveLandmarks(spec, ricasso, tang));
  const faults = checkOutline(outline);
  if (faults.length > 0) throw new SpecError(faults);
  return outline;
}

function buildFromLandmarks(landmarks: Landmarks): Outline {
  const { edgeLength, heelHeight, ricasso, tangLength, tangHeights, drop } = landmarks;
  const heel = vec2(0, 0);
  // 0 − ricasso, so that no ricasso gives 0 and not −0.
  const handleFront = 0 - ricasso;
  const buttX = handleFront - tangLength;
  const tangTop = heelHeight - drop;
  const bottomAt = (x: number, height: number): Vec2 => vec2(x, tangTop - height);
  // A tang as low as the edge leaves no upright piece of heel face.
  const frontBottom = vec2(handleFront, snapTo(tangTop - tangHeights.front, 0));
  const buttBottom = bottomAt(buttX, tangHeights.butt);
  const spineEnd = vec2(handleFront, heelHeight);
  const edgeEnd = vec2(edgeLength, edgeRise(landmarks));
  const frontTop = vec2(edgeLength, landmarks.front === "square" ? heelHeight : edgeEnd.y);
  return outlineOfRuns({
    edge: edgeRun(landmarks, edgeEnd),
    front: polyline(edgeEnd, frontTop),
    spine: spineRun(landmarks, frontTop, spineEnd),
    tangTop: polyline(spineEnd, vec2(handleFront, tangTop), vec2(buttX, tangTop)),
    butt: polyline(vec2(buttX, tangTop), buttBottom),
    tangBottom: polyline(buttBottom, bottomAt(handleFront - tangLength / 2, tangHeights.middle), frontBottom),
    heelFace: polyline(frontBottom, vec2(0, frontBottom.y), heel),
  });
}

/** Lines from point to point; a point that repeats the one before it adds none. */
function polyline(...points: readonly Vec2[]): Segment[] {
  return points.slice(1).flatMap((to, i) => {
    const from = points[i] as Vec2;
    return from.x === to.x && from.y === to.y ? [] : [line(from, to)];
  });
}

function edgeRun(landmarks: Landmarks, end: Vec2): Segment[] {
  const heel = vec2(0, 0);
  if (end.y === 0) return polyline(heel, end);
  const start = vec2(landmarks.straightEdge, 0);
  const bow = landmarks.front === "square" ? circularBow(start, end) : pointedBow(start, end);
  return [...polyline(heel, start), bow];
}

function spineRun(landmarks: Landmarks, tip: Vec2, end: Vec2): Segment[] {
  if (tip.y === landmarks.heelHeight) return polyline(tip, end);
  const shoulder = vec2(landmarks.spineBreak, landmarks.heelHeight);
  return [reverseSegment(pointedBow(shoulder, tip)), ...polyline(shoulder, end)];
}

/** The circular arc that leaves `start` level, toward +x, and reaches `end`. */
function circularBow(start: Vec2, end: Vec2): Segment {
  const sweep = 2 * Math.atan2(end.y - start.y, end.x - start.x);
  // A lift that is lost in rounding: the arc's radius would overflow, the line differs from it by nothing.
  return Math.abs(sweep) < 1e-12 ? line(start, end) : arcBetween(start, end, sweep);
}

/** A tip stays a point: the bow arrives no steeper than this lets it, as a share of the bow's length along x. */
const FARTHEST_CORNER = 0.85;

/**
 * The cubic that leaves `start` level, toward +x, and reaches `end`, bent one way only and never turning back in x.
 *
 * Its end tangents meet in a corner on the level line. Where the rise is less than the run the corner lies so that both
 * tangents are equally long, which with the usual handles makes the curve a circular arc to 3 parts in 10 000; a
 * steeper bow has its corner held back from the end, so that it still arrives leaning forward.
 */
function pointedBow(start: Vec2, end: Vec2): Segment {
  const run = end.x - start.x;
  const slope = Math.abs(end.y - start.y) / run;
  const corner = vec2(start.x + run * Math.min(FARTHEST_CORNER, (1 + slope * slope) / 2), start.y);
  const turn = Math.min(2 * Math.atan(slope), Math.PI / 2);
  // Handle of an arc, 4/3·tan(θ/4)·R, over its tangent length, tan(θ/2)·R.
  const share = turn < 1e-6 ? 2 / 3 : ((4 / 3) * Math.tan(turn / 4)) / Math.tan(turn / 2);
  return distance(start, end) === 0
    ? line(start, end)
    : cubic(start, interpolate(start, corner, share), interpolate(end, corner, share), end);
}
