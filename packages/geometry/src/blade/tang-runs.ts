import { type Arc, arcBetween, type Segment } from "../plane/segment.js";
import { cross, distance, dot, interpolate, subtract, type Vec2, vec2 } from "../plane/vec2.js";
import { type Landmarks, snapTo } from "./landmarks.js";
import type { Outline } from "./outline.js";
import { polyline } from "./polyline.js";

/** The corners of a tang, from the spine's end round to the heel; points may coincide where there is no shoulder. */
export interface TangCorners {
  readonly spineEnd: Vec2;
  readonly frontTop: Vec2;
  readonly middleTop: Vec2;
  readonly buttTop: Vec2;
  readonly buttBottom: Vec2;
  readonly middleBottom: Vec2;
  readonly frontBottom: Vec2;
  /** Foot of the lower shoulder. Full tang: the corner above the heel. */
  readonly foot: Vec2;
}

/**
 * Where the corners of a tang lie, mm.
 *
 * A full tang hangs from a level top. A hidden or through tang narrows to both sides of a level middle line, so that it
 * sits in the middle of its handle all the way; between its lower shoulder and the heel the blade keeps its full height.
 */
export function tangCorners(landmarks: Landmarks): TangCorners {
  const { heelHeight, tangLength, tangHeights, drop, tangForm } = landmarks;
  const handleFront = 0 - landmarks.ricasso;
  const top = heelHeight - drop;
  const topOf = (height: number): number =>
    tangForm === "full" ? top : top - (tangHeights.front - height) / 2;
  const pair = (x: number, height: number): readonly [Vec2, Vec2] => [
    vec2(x, topOf(height)),
    vec2(x, topOf(height) - height),
  ];
  const [middleTop, middleBottom] = pair(handleFront - tangLength / 2, tangHeights.middle);
  const [buttTop, buttBottom] = pair(handleFront - tangLength, tangHeights.butt);
  // A tang as low as the edge leaves no upright piece of heel face.
  const frontBottom = vec2(handleFront, snapTo(top - tangHeights.front, 0));
  return {
    spineEnd: vec2(handleFront, heelHeight),
    frontTop: vec2(handleFront, top),
    middleTop,
    buttTop,
    buttBottom,
    middleBottom,
    frontBottom,
    foot: tangForm === "full" ? vec2(0, frontBottom.y) : vec2(handleFront, 0),
  };
}

/**
 * The runs behind the handle front and the heel: tang and heel face.
 *
 * The shoulders' fillets belong to the tang's top and bottom. The heel face of a full tang is level at the tang's lower
 * side up to the heel's x and then upright; that of a hidden tang goes down its lower shoulder to the heel's level, then
 * level to the heel. A choil is a half circle cut up into the level piece, its front end above the heel.
 */
export function tangRuns(
  landmarks: Landmarks,
): Pick<Outline["runs"], "tangTop" | "butt" | "tangBottom" | "heelFace"> {
  const c = tangCorners(landmarks);
  const { tangForm, shoulderRadius } = landmarks;
  const upper = filletAt(c.spineEnd, c.frontTop, c.middleTop, shoulderRadius);
  const lower = filletAt(c.middleBottom, c.frontBottom, c.foot, shoulderRadius);
  return {
    tangTop: [
      ...polyline(c.spineEnd, upper.from),
      ...upper.arc,
      // The top of a full tang is one straight line.
      ...(tangForm === "full" ? polyline(upper.to, c.buttTop) : polyline(upper.to, c.middleTop, c.buttTop)),
    ],
    butt: polyline(c.buttTop, c.buttBottom),
    tangBottom: [...polyline(c.buttBottom, c.middleBottom, lower.from), ...lower.arc],
    heelFace: heelFace(lower.to, c.foot, landmarks.choilRadius),
  };
}

function heelFace(start: Vec2, foot: Vec2, choilRadius: number): Segment[] {
  const heel = vec2(0, 0);
  if (choilRadius === 0) return polyline(start, foot, heel);
  const front = vec2(0, foot.y);
  const back = vec2(0 - 2 * choilRadius, foot.y);
  const before = foot.x === 0 ? polyline(start, back) : polyline(start, foot, back);
  return [...before, arcBetween(back, front, -Math.PI), ...polyline(front, heel)];
}

interface Fillet {
  readonly from: Vec2;
  readonly arc: readonly Arc[];
  readonly to: Vec2;
}

/** The arc that rounds a corner between two straight sides; none where a side has no length or the radius is 0. */
function filletAt(before: Vec2, corner: Vec2, after: Vec2, radius: number): Fillet {
  const back = distance(before, corner);
  const ahead = distance(corner, after);
  if (radius === 0 || back === 0 || ahead === 0) return { from: corner, arc: [], to: corner };
  const setback = filletSetback(before, corner, after, radius);
  const from = interpolate(corner, before, snapTo(setback, back) / back);
  const to = interpolate(corner, after, snapTo(setback, ahead) / ahead);
  return { from, arc: [arcBetween(from, to, turnAt(before, corner, after))], to };
}

/** How far from its corner a fillet begins, measured along both sides, mm. */
export function filletSetback(before: Vec2, corner: Vec2, after: Vec2, radius: number): number {
  return radius * Math.tan(Math.abs(turnAt(before, corner, after)) / 2);
}

/** Turning angle at a corner, rad, positive counter-clockwise. */
function turnAt(before: Vec2, corner: Vec2, after: Vec2): number {
  const into = subtract(corner, before);
  const out = subtract(after, corner);
  return Math.atan2(cross(into, out), dot(into, out));
}
