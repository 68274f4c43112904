import { arcBetween, cubic, line, reverseSegment, type Segment } from "../plane/segment.js";
import { distance, interpolate, type Vec2, vec2 } from "../plane/vec2.js";
import { edgeRise, type Landmarks } from "./landmarks.js";
import type { Outline } from "./outline.js";
import { polyline } from "./polyline.js";

/**
 * The runs ahead of the handle front: edge, front and spine.
 *
 * The heel is the origin. The edge is straight, then a belly that leaves it without a corner and never turns back (square
 * front: one circular arc; pointed: a cubic), or a straight facet. The spine is level up to its break and goes from
 * there to the tip in the family's form; it stays level where the tip is as high as the heel.
 */
export function bladeRuns(landmarks: Landmarks): Pick<Outline["runs"], "edge" | "front" | "spine"> {
  const { edgeLength, heelHeight, front } = landmarks;
  const edgeEnd = vec2(edgeLength, edgeRise(landmarks));
  const frontTop = vec2(edgeLength, front === "square" ? heelHeight : edgeEnd.y);
  return {
    edge: edgeRun(landmarks, edgeEnd),
    front: polyline(edgeEnd, frontTop),
    spine: spineRun(landmarks, frontTop),
  };
}

function edgeRun(landmarks: Landmarks, end: Vec2): Segment[] {
  const heel = vec2(0, 0);
  if (end.y === 0) return polyline(heel, end);
  const start = vec2(landmarks.straightEdge, 0);
  if (landmarks.edge === "facet") return polyline(heel, start, end);
  const bow = landmarks.front === "square" ? circularBow(start, end) : pointedBow(start, end);
  return [...polyline(heel, start), bow];
}

function spineRun(landmarks: Landmarks, tip: Vec2): Segment[] {
  // 0 − ricasso, so that no ricasso gives 0 and not −0.
  const end = vec2(0 - landmarks.ricasso, landmarks.heelHeight);
  if (tip.y === end.y) return polyline(tip, end);
  const shoulder = vec2(landmarks.spineBreak, end.y);
  switch (landmarks.spine) {
    case "bow":
      return [reverseSegment(pointedBow(shoulder, tip)), ...polyline(shoulder, end)];
    case "clip":
      return [hollowClip(tip, shoulder), ...polyline(shoulder, end)];
    case "broken":
      return polyline(tip, shoulder, end);
  }
}

/** The circular arc that leaves `start` level, toward +x, and reaches `end`. */
function circularBow(start: Vec2, end: Vec2): Segment {
  const sweep = 2 * Math.atan2(end.y - start.y, end.x - start.x);
  // A lift that is lost in rounding: the arc's radius would overflow, the line differs from it by nothing.
  return Math.abs(sweep) < LOST_SWEEP ? line(start, end) : arcBetween(start, end, sweep);
}

const LOST_SWEEP = 1e-12;

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

/** How much of its mean fall a clip has lost when it reaches the tip, and has had too much of at its corner. */
const CLIP_HOLLOW = 0.7;

/**
 * The circular arc from the tip back to the corner of a clip, hollow toward the spine.
 *
 * Each end leans from the chord by a share of the chord's own fall, so that the clip falls all the way and never reaches
 * below its tip; a steep one leans less, so that it never turns back in x.
 */
function hollowClip(tip: Vec2, corner: Vec2): Segment {
  const fall = Math.atan2(Math.abs(corner.y - tip.y), tip.x - corner.x);
  const sweep = -2 * CLIP_HOLLOW * Math.min(fall, Math.PI / 2 - fall);
  return Math.abs(sweep) < LOST_SWEEP ? line(tip, corner) : arcBetween(tip, corner, sweep);
}
