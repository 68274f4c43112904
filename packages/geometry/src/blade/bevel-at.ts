import type { Knife } from "./knife.js";
import { SectionLaw } from "./section-law.js";

/** The ground bevel of the finished blade at one station; lengths in mm, angle in rad per side. */
export interface BevelAtStation {
  readonly x: number;
  /** Height of the bevel line above the edge, stopped at the spine. */
  readonly height: number;
  /** Full thickness at the spine, at the bevel line, and at the edge before sharpening. */
  readonly spine: number;
  readonly bevelLine: number;
  readonly edge: number;
  /** Distance of the spine from the edge. */
  readonly spineDistance: number;
  /** Angle of the chord of the bevel against the centre plane, per side: atan((bevel line − edge) / 2 height). */
  readonly angle: number;
}

/**
 * Bevel height, thicknesses and angle at a station of the bevelled length.
 *
 * @param x - mm from the heel.
 */
export function bevelAt(knife: Knife, x: number): BevelAtStation {
  const body = knife.body("finished");
  const spineDistance = body.spineDistanceAt(x);
  const law = body.section;
  if (!(law instanceof SectionLaw)) throw new TypeError("a blade's sections follow the section law");
  law.at(x, spineDistance);
  const edge = knife.laws.edgeThickness.valueAt(x);
  return {
    x,
    height: law.bevelHeight,
    spine: law.spine,
    bevelLine: law.bevelLine,
    edge,
    spineDistance,
    angle: Math.atan2((law.bevelLine - edge) / 2, law.bevelHeight),
  };
}
