import type { Vec2 } from "../plane/vec2.js";
import { BevelMoments } from "./bevel-moments.js";
import type { Knife } from "./knife.js";
import { sectionArea } from "./section-area.js";
import { areaOfCuts, steelSpans } from "./section-cuts.js";
import { type SizeState, sideAngle } from "./size-states.js";
import type { SteelBody } from "./steel-body.js";

/** Heights above the edge at which a smith looks at a section, mm: behind the edge, and how fast it fattens. */
export const CHOIL_HEIGHTS = [1, 5, 10, 20] as const;

/** A section square to x; lengths in mm, y from the heel's level, z across the flats. */
export interface SectionView {
  readonly x: number;
  readonly state: SizeState;
  /**
   * Closed contours in (z, y), right-hand face at positive z, counter-clockwise; one for each piece of steel: a hole or a slot
   * parts the section in two.
   */
  readonly contours: readonly (readonly Vec2[])[];
  /** Steel in the section: holes, slots and fullers are taken out. */
  readonly area: number;
  /** Over all, holes and slots not counted. */
  readonly height: number;
  /** Full thickness across the flats at the spine, as if no swedge were ground. */
  readonly thickness: number;
  /** Thickness left at the spine by the swedge; undefined where there is none or it takes nothing off. */
  readonly atSwedge?: number;
}

/** Points of a contour per face, more than a pen can show. */
const POINTS = 160;

/**
 * The section of the knife at a station.
 *
 * @param x - mm from the heel; behind the handle front it is a section of the tang.
 *
 * @example
 * sectionAt(knife, 60).area; // mm² of steel 60 mm ahead of the heel
 */
export function sectionAt(knife: Knife, x: number, state: SizeState = "finished"): SectionView {
  const body = knife.body(state);
  const contours = steelSpans(body, x).map(([low, high]) => contour(body, x, low, high));
  const atSwedge = thicknessAtSwedge(body, x);
  return {
    x,
    state,
    contours,
    area: sectionArea(body, new BevelMoments(body), x) - areaOfCuts(body, x),
    height: body.footprint.heightAt(x),
    thickness: body.slab.thicknessAt(x),
    ...(atSwedge === undefined ? {} : { atSwedge }),
  };
}

/**
 * Full thickness that the swedge leaves at the spine, mm; undefined where there is none or it takes nothing off.
 *
 * @example
 * thicknessAtSwedge(knife.body("finished"), 60); // undefined: no swedge there
 */
export function thicknessAtSwedge({ input, slab }: SteelBody, x: number): number | undefined {
  const swedge = input.crest?.input.swedge;
  if (swedge === undefined || x < swedge.from || x > swedge.to) return undefined;
  const left = swedge.thickness.valueAt(x);
  return left < slab.thicknessAt(x) ? left : undefined;
}

function contour(body: SteelBody, x: number, low: number, high: number): Vec2[] {
  const right: Vec2[] = [];
  const left: Vec2[] = [];
  for (let i = 0; i <= POINTS; i++) {
    // Closer together toward the edge, where the sharpening bevel is.
    const y = low + (high - low) * (i / POINTS) ** 2;
    right.push({ x: body.faceAt({ x, y }, "right"), y });
    left.push({ x: -body.faceAt({ x, y }, "left"), y });
  }
  return [...right, ...left.reverse()];
}

/**
 * Full thickness straight above the edge at a station, as at the choil.
 *
 * @param heights - mm above the edge; where the blade is not that high, or has a hole there, the entry is left out.
 *
 * @example
 * thicknessAbove(knife, 50, [1, 5]).map(({ thickness }) => thickness); // mm, 1 and 5 mm above the edge
 */
export function thicknessAbove(
  knife: Knife,
  x: number,
  heights: readonly number[] = CHOIL_HEIGHTS,
): readonly { readonly above: number; readonly thickness: number }[] {
  const body = knife.body("finished");
  const span = body.footprint.spansAt(x)[0];
  if (span === undefined) return [];
  const [low, high] = span;
  return heights
    .filter((above) => low + above <= high && body.thicknessAt({ x, y: low + above }) > 0)
    .map((above) => ({ above, thickness: body.thicknessIgnoringOutline({ x, y: low + above }) }));
}

/** The finished sharpening bevel of one face at a station. */
export interface EdgeBevel {
  /** Height of its upper end above the edge, square to the edge and never over the spine, and its width on the face, mm. */
  readonly height: number;
  readonly width: number;
  /** Thickness of the blade where it ends, mm: what is called the thickness behind the edge; at the spine, where it runs up to that. */
  readonly behind: number;
}

/**
 * How wide the sharpening bevel comes out at a station; undefined on a face that has none: one that lies on the flat, or one
 * whose ground face comes down to no thickness at the edge and is the flatter, so that no plane cuts it.
 *
 * @example
 * edgeBevelAt(knife, 50)?.behind; // mm, the thickness behind the edge
 */
export function edgeBevelAt(
  knife: Knife,
  x: number,
  side: "right" | "left" = "right",
): EdgeBevel | undefined {
  const theta = sideAngle(knife.spec.blade.edgeAngle, side === "right" ? 1 : -1);
  if (theta === "flat") return undefined;
  const body = knife.body("finished");
  const right = body.sectionAt(x);
  const left = body.section.left ?? right;
  const face = side === "right" ? right : left;
  const isPlane = (piece: number): boolean =>
    !face.isArc(piece) && isPlaneSlope(knife, face.b[piece] as number, theta);
  if (!isPlane(0)) return undefined;
  // Planes are the leading pieces, and the section goes on above the spine, where there is no steel.
  let planes = 1;
  while (planes < face.count && isPlane(planes)) planes++;
  const height = Math.min(face.endOf(planes - 1), body.spineDistanceAt(x));
  return {
    height,
    width: planeWidth(knife, height, theta),
    behind: right.valueAt(height) + left.valueAt(height),
  };
}

const SAME_SLOPE = 1e-9;

/** Whether a slope is that of the sharpening or of the microbevel below it. */
function isPlaneSlope(knife: Knife, slope: number, theta: number): boolean {
  const { microbevel } = knife.spec.blade;
  return [theta, ...(microbevel === undefined ? [] : [microbevel.angle])].some(
    (angle) => Math.abs(slope - Math.tan(angle)) < SAME_SLOPE,
  );
}

/** Width of the planes up to a height: the microbevel's below its own height, the edge's above. */
function planeWidth(knife: Knife, height: number, theta: number): number {
  const { microbevel } = knife.spec.blade;
  if (microbevel === undefined) return height / Math.cos(theta);
  const steep = Math.min(height, microbevel.height);
  return steep / Math.cos(microbevel.angle) + (height - steep) / Math.cos(theta);
}
