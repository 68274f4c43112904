import { findRoot } from "../numeric/roots.js";
import type { Vec2 } from "../plane/vec2.js";
import { bevelAt } from "./bevel-at.js";
import type { FaceForm } from "./face-section.js";
import type { Knife } from "./knife.js";
import { bevelsBegin, type Side } from "./knife-faces.js";
import { type EdgeBevel, edgeBevelAt } from "./section-report.js";
import { sideAngle } from "./size-states.js";

/**
 * What a section of the finished blade is dimensioned by on one face. Points are (z, y) of the section square to x, as it
 * is drawn; heights and angles are square to the edge, as they are ground. mm, rad.
 */
export interface FaceMarks {
  /** What the ground face is at this station; a crown or wheel that gives no arc here leaves it flat. */
  readonly form: FaceForm;
  /** Height of the bevel line above the edge, and its point on the face. */
  readonly bevelHeight: number;
  readonly bevelLine: Vec2;
  /** Whether the bevel runs right up to the spine: then there is no bevel line. */
  readonly reachesSpine: boolean;
  /** Angle of the bevel's chord against the centre plane. */
  readonly bevelAngle: number;
  /** Angle of the ground face against the centre plane at its lower end, and at its upper end. */
  readonly angleAtEdge: number;
  readonly angleAtBevelLine: number;
  /** Radius of a convex or hollow face; left out of a flat one. */
  readonly radius?: number;
  /** Sharpening: angle, height and width, thickness behind the edge, and the point where the ground face begins; left out of a face that no plane cuts. */
  readonly sharpeningAngle?: number;
  readonly edgeBevel?: EdgeBevel & { readonly top: Vec2 };
}

/** What a section of the finished blade is dimensioned by. */
export interface SectionMarks {
  readonly x: number;
  /** Lowest and highest y of the section. */
  readonly low: number;
  readonly high: number;
  /** How far the edge leans from level below this station, rad; 0 where it is level, positive where it rises to the tip. */
  readonly edgeLean: number;
  /** z of the apex, mm to the right of the centre plane. */
  readonly apex: number;
  /** The steeper plane right at the edge, on the faces that are sharpened. */
  readonly microbevel?: { readonly height: number; readonly angle: number };
  /** Left out behind the place where the bevels stand at their full depth. */
  readonly right?: FaceMarks;
  readonly left?: FaceMarks;
}

/** The edge's direction is read this little above it, mm. */
const ABOVE_EDGE = 1e-6;

/**
 * Points and figures that a drawing of the finished section is dimensioned by.
 *
 * @param x - mm from the heel, inside the outline's ends.
 *
 * @example
 * const { right, edgeLean } = sectionMarks(knife, 20);
 * right?.bevelAngle; // rad, the chord of the bevel against the centre plane
 * edgeLean; // 0, the edge is straight and level there
 */
export function sectionMarks(knife: Knife, x: number): SectionMarks {
  const body = knife.body("finished");
  const spans = body.footprint.spansAt(x);
  const low = spans[0]?.[0] ?? 0;
  const high = spans[spans.length - 1]?.[1] ?? low;
  const isGround = x >= bevelsBegin(knife);
  const normal = body.edgeRun.normalAt(x, low + ABOVE_EDGE);
  const base = { x, low, high, edgeLean: isGround ? Math.atan2(-normal.x, normal.y) : 0 };
  if (!isGround || high <= low) return { ...base, apex: 0 };
  const { microbevel } = knife.spec.blade;
  return {
    ...base,
    apex: bevelAt(knife, x, "right").apex,
    ...(microbevel === undefined ? {} : { microbevel }),
    right: faceMarks(knife, x, "right", low, high),
    left: faceMarks(knife, x, "left", low, high),
  };
}

function faceMarks(knife: Knife, x: number, side: Side, low: number, high: number): FaceMarks {
  const body = knife.body("finished");
  const { height, angle, spineDistance } = bevelAt(knife, x, side);
  const sign = side === "right" ? 1 : -1;
  const pointAbove = (distance: number): Vec2 => {
    const y = heightAbove(knife, x, distance, low, high);
    return { x: sign * body.faceAt({ x, y }, side), y };
  };
  const right = body.sectionAt(x);
  const section = side === "right" ? right : (body.section.left ?? right);
  const theta = sideAngle(knife.spec.blade.edgeAngle, sign);
  const bevel = edgeBevelAt(knife, x, side);
  // Asking for the bevel has built the section once more, in the same objects.
  const foot = Math.min(bevel?.height ?? 0, height);
  const piece = section.pieceAt(foot);
  const isArc = section.isArc(piece);
  return {
    form: isArc ? (section.sigma[piece] === 1 ? "convex" : "hollow") : "flat",
    bevelHeight: height,
    reachesSpine: height >= spineDistance,
    bevelAngle: angle,
    angleAtEdge: Math.atan(section.pieceSlope(piece, foot)),
    angleAtBevelLine: Math.atan(section.pieceSlope(piece, height)),
    ...(isArc ? { radius: section.radiusOf(piece) } : {}),
    ...(bevel === undefined || theta === "flat" ? {} : { sharpeningAngle: theta }),
    bevelLine: pointAbove(height),
    ...(bevel === undefined ? {} : { edgeBevel: { ...bevel, top: pointAbove(bevel.height) } }),
  };
}

/** The lowest y at which a station is that far from the edge, or its top where it is nowhere. */
function heightAbove(knife: Knife, x: number, distance: number, low: number, high: number): number {
  const { edgeRun } = knife.body("finished");
  if (distance <= 0) return low;
  // The distance grows upward at least until the station's middle line between two edges: look from below in steps.
  let from = low;
  for (let i = 1; i <= STEPS; i++) {
    const to = low + (high - low) * (i / STEPS) ** 2;
    const y = findRoot((at) => edgeRun.nearest(x, at) - distance, from, to, 1e-12);
    if (y !== undefined) return y;
    from = to;
  }
  return high;
}

/** Steps in which a station is looked through from below, finer near the edge. */
const STEPS = 24;
