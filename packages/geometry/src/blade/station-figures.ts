import { bevelAt } from "./bevel-at.js";
import { insideEnds } from "./inside-ends.js";
import type { Knife } from "./knife.js";
import { bevelsBegin, type Side } from "./knife-faces.js";
import { type EdgeBevel, edgeBevelAt, sectionAt, thicknessAbove } from "./section-report.js";
import { sideAngle } from "./size-states.js";

/** One face of the finished blade at a station; mm and rad. */
export interface FaceFigures {
  /** Height of the bevel line above the edge, square to the edge. */
  readonly bevelHeight: number;
  /** Angle of the bevel's chord against the centre plane. */
  readonly bevelAngle: number;
  /** Sharpening angle, and the bevel that it makes; both left out on a face without a plane. */
  readonly sharpeningAngle?: number;
  readonly edgeBevel?: EdgeBevel;
}

/** What a smith measures at one station of the finished knife; mm, mm², rad. */
export interface StationFigures {
  /** mm ahead of the heel. */
  readonly x: number;
  /** Full thickness across the flats: at the spine as if no swedge were ground, or of the tang. */
  readonly thickness: number;
  /** What a caliper reads at the very spine where a swedge is ground; left out elsewhere. */
  readonly atSwedge?: number;
  /** Height over all, and steel in the section: holes, slots and fullers are taken out. */
  readonly height: number;
  readonly area: number;
  /** Of the bevelled blade only: thickness at the edge before sharpening, and 1, 5, 10, 20 mm above the edge. */
  readonly edgeThickness?: number;
  readonly aboveEdge: ReturnType<typeof thicknessAbove>;
  /** Left out behind the place where the bevels stand at their full depth. */
  readonly right?: FaceFigures;
  readonly left?: FaceFigures;
}

/**
 * Thickness, section, bevels and sharpening at a station of the finished knife.
 *
 * @param x - mm ahead of the heel; negative in ricasso and tang.
 *
 * @example
 * const { thickness, aboveEdge, right } = stationFigures(knife, 60);
 * thickness; // mm at the spine
 * aboveEdge[0]?.thickness; // mm, 1 mm above the edge
 * right?.edgeBevel?.width; // mm of sharpened steel on the right-hand face
 */
export function stationFigures(knife: Knife, x: number): StationFigures {
  const inside = insideEnds(knife, x);
  const { thickness, atSwedge, height, area } = sectionAt(knife, inside);
  const ground = x >= (knife.spec.blade.plunge?.at ?? 0);
  return {
    x,
    thickness,
    ...(atSwedge === undefined ? {} : { atSwedge }),
    height,
    area,
    ...(ground ? { edgeThickness: knife.laws.edgeThickness.valueAt(x) } : {}),
    aboveEdge: ground ? thicknessAbove(knife, inside) : [],
    ...(x >= bevelsBegin(knife)
      ? { right: faceFigures(knife, inside, "right"), left: faceFigures(knife, inside, "left") }
      : {}),
  };
}

function faceFigures(knife: Knife, x: number, side: Side): FaceFigures {
  const { height, angle } = bevelAt(knife, x, side);
  const theta = sideAngle(knife.spec.blade.edgeAngle, side === "right" ? 1 : -1);
  const edgeBevel = edgeBevelAt(knife, x, side);
  return {
    bevelHeight: height,
    bevelAngle: angle,
    ...(theta === "flat" ? {} : { sharpeningAngle: theta }),
    ...(edgeBevel === undefined ? {} : { edgeBevel }),
  };
}

/** Shares of the edge length at which a report looks, and the last just behind the tip. */
const REPORT_SHARES = [0.25, 0.5, 0.75, 0.95] as const;

/**
 * x of the stations that a report shows: where the bevels begin, quarter by quarter, and near the tip, mm.
 *
 * @example
 * reportStations(knife).map((x) => stationFigures(knife, x).thickness); // mm at the spine, heel to tip
 */
export function reportStations(knife: Knife): readonly number[] {
  const first = bevelsBegin(knife);
  return [first, ...REPORT_SHARES.map((share) => share * knife.outline.edgeLength).filter((x) => x > first)];
}
