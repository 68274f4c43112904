import { bevelAt } from "../blade/bevel-at.js";
import { insideEnds } from "../blade/inside-ends.js";
import type { Knife } from "../blade/knife.js";
import { facesOf, type Side } from "../blade/knife-faces.js";
import { type EdgeBevel, edgeBevelAt, thicknessAbove, thicknessAtSwedge } from "../blade/section-report.js";
import { sideAngle } from "../blade/size-states.js";
import { reportStations } from "../blade/station-figures.js";
import { fewestWedges, type WedgeSet } from "./wedges.js";

/**
 * How high the spine is held over the stone so that the centre plane stands at the sharpening angle.
 *
 * @param width - From edge to spine, mm.
 * @param theta - Per side, rad.
 * @param spine - Thickness at the very spine, mm: what a swedge leaves where one is ground.
 * @param apex - How far the apex lies from the centre plane toward the face on the stone, mm.
 * @returns mm: the middle of the spine, and its underside, which is what a stack of coins or a gauge touches.
 *
 * @example
 * spineLift(40, Math.PI / 12, 3).centre; // 10.3528
 */
export function spineLift(
  width: number,
  theta: number,
  spine: number,
  apex = 0,
): { readonly centre: number; readonly underside: number } {
  const centre = width * Math.sin(theta) + apex * Math.cos(theta);
  return { centre, underside: centre - (spine / 2) * Math.cos(theta) };
}

/** The sharpening bevel of one face at a station. */
export interface EdgeStation extends EdgeBevel {
  /** mm ahead of the heel. */
  readonly x: number;
  /** Full thickness straight above the edge by 1 mm, mm; left out where the blade is not that high. */
  readonly oneAbove?: number;
  /** Of the spine over the stone, mm. */
  readonly lift: { readonly centre: number; readonly underside: number };
}

/** How one face is sharpened; both where they are alike. */
export interface EdgeSetUp {
  readonly side: Side | "both";
  /** Per side, rad. */
  readonly angle: number;
  readonly stations: readonly EdgeStation[];
  /** Owned wedges that make the angle; left out where none are known. */
  readonly wedges?: WedgeSet;
  readonly microbevel?: { readonly angle: number; readonly height: number; readonly wedges?: WedgeSet };
}

/**
 * How each face is sharpened: widths of the bevel as they come out on the weighed blade, lift of the spine, wedges.
 *
 * @param wedges - Angles of those in hand, rad.
 * @returns one entry for faces that are alike; none for a face without a plane.
 *
 * @example
 * edgeSetUp(knife, [])[0]?.stations[0]?.width; // 0.807, mm of sharpened face at the heel
 */
export function edgeSetUp(knife: Knife, wedges: readonly number[]): EdgeSetUp[] {
  return facesOf(knife).flatMap((side): EdgeSetUp[] => {
    const angle = sideAngle(knife.spec.blade.edgeAngle, side === "right" ? 1 : -1);
    if (angle === "flat") return [];
    const { microbevel } = knife.spec.blade;
    const stations = reportStations(knife).flatMap((x) => stationOf(knife, x, side, angle));
    // A face that is flatter than its plane all along is not sharpened.
    if (stations.length === 0) return [];
    return [
      {
        side: knife.laws.symmetric ? "both" : side,
        angle,
        stations,
        ...withWedges(wedges, angle),
        ...(microbevel === undefined
          ? {}
          : { microbevel: { ...microbevel, ...withWedges(wedges, microbevel.angle) } }),
      },
    ];
  });
}

function withWedges(wedges: readonly number[], angle: number): { readonly wedges?: WedgeSet } {
  const set = fewestWedges(wedges, angle);
  return set === undefined ? {} : { wedges: set };
}

function stationOf(knife: Knife, x: number, side: Side, theta: number): EdgeStation[] {
  const at = insideEnds(knife, x);
  const bevel = edgeBevelAt(knife, at, side);
  if (bevel === undefined) return [];
  const { spineDistance, spine, apex } = bevelAt(knife, at, side);
  const corner = Math.min(spine, thicknessAtSwedge(knife.body("finished"), at) ?? spine);
  const above = thicknessAbove(knife, at, [1])[0]?.thickness;
  return [
    {
      x,
      ...bevel,
      ...(above === undefined ? {} : { oneAbove: above }),
      lift: spineLift(spineDistance, theta, corner, apex),
    },
  ];
}
