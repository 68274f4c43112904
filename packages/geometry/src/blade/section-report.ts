import type { Vec2 } from "../plane/vec2.js";
import { bevelAt } from "./bevel-at.js";
import { BevelMoments } from "./bevel-moments.js";
import type { Knife } from "./knife.js";
import { sectionArea } from "./section-area.js";
import { type SizeState, sideAngle } from "./size-states.js";
import type { SteelBody } from "./steel-body.js";

/** Heights above the edge at which a smith looks at a section, mm: behind the edge, and how fast it fattens. */
export const CHOIL_HEIGHTS = [1, 5, 10, 20] as const;

/** A section square to x; lengths in mm, y from the heel's level, z across the flats. */
export interface SectionView {
  readonly x: number;
  readonly state: SizeState;
  /** Closed contour in (z, y), right-hand face at positive z, counter-clockwise; one for each height interval. */
  readonly contours: readonly (readonly Vec2[])[];
  readonly area: number;
  readonly height: number;
  /** Full thickness at the spine. */
  readonly thickness: number;
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
  const spans = body.footprint.spansAt(x);
  const contours = spans.map(([low, high]) => contour(body, x, low, high));
  return {
    x,
    state,
    contours,
    area: sectionArea(body, new BevelMoments(body), x),
    height: spans.reduce((sum, [low, high]) => sum + high - low, 0),
    thickness: body.slab.thicknessAt(x),
  };
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
 * @param heights - mm above the edge; where the blade is not that high the entry is left out.
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
    .filter((above) => low + above <= high)
    .map((above) => ({ above, thickness: body.thicknessIgnoringOutline({ x, y: low + above }) }));
}

/** The finished sharpening bevel of one face at a station. */
export interface EdgeBevel {
  /** Height of its upper end above the edge, square to the edge, and its width on the face, mm. */
  readonly height: number;
  readonly width: number;
  /** Thickness of the blade where it ends, mm: what is called the thickness behind the edge. */
  readonly behind: number;
}

/**
 * How wide the sharpening bevel comes out at a station; undefined on a face that has none.
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
  const { apex } = bevelAt(knife, x, side);
  body.sectionAt(x);
  // Planes are the leading pieces: those that run on from the apex.
  let height = 0;
  for (let i = 0; i < face.count; i++) {
    const end = face.endOf(i);
    if (face.isArc(i) || !Number.isFinite(end)) break;
    const onPlane = Math.abs((face.a[i] as number) - apex) < 1e-12 || isMicro(knife, i);
    if (!onPlane) break;
    height = end;
  }
  return {
    height,
    width: planeWidth(knife, height, theta),
    behind: right.valueAt(height) + left.valueAt(height),
  };
}

/** Width of the planes up to a height: the microbevel's below its own height, the edge's above. */
function planeWidth(knife: Knife, height: number, theta: number): number {
  const { microbevel } = knife.spec.blade;
  if (microbevel === undefined) return height / Math.cos(theta);
  const steep = Math.min(height, microbevel.height);
  return steep / Math.cos(microbevel.angle) + (height - steep) / Math.cos(theta);
}

const isMicro = (knife: Knife, piece: number): boolean =>
  knife.spec.blade.microbevel !== undefined && piece === 1;
