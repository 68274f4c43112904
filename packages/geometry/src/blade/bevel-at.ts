import { invariant } from "../errors/errors.js";
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
  /** How much farther from the centre plane the face is at the bevel line than at the unsharpened edge. */
  readonly rise: number;
  /** Distance of the apex from the centre plane toward this face. */
  readonly apex: number;
  /** Distance of the spine from the edge. */
  readonly spineDistance: number;
  /** Angle of the chord of the bevel against the centre plane: atan(rise / height). */
  readonly angle: number;
}

/**
 * Bevel height, thicknesses and angle of one face at a station of the bevelled length.
 *
 * @param x - mm from the heel.
 *
 * @example
 * // full height at the heel of a drop point 28 high and 3.2 thick, 0.4 at the edge
 * bevelAt(knife, 0).angle; // 0.0500, atan(1.4 / 28)
 */
export function bevelAt(knife: Knife, x: number, side: "right" | "left" = "right"): BevelAtStation {
  const body = knife.body("finished");
  const spineDistance = body.spineDistanceAt(x);
  const law = body.section;
  invariant(law instanceof SectionLaw, "a blade's sections follow the section law");
  law.at(x, spineDistance);
  const face = side === "right" ? law.rightFace : (law.leftFace ?? law.rightFace);
  const edge = knife.laws.edgeThickness.valueAt(x);
  const reach = face.apex + (edge * (1 - face.input.side * face.input.apex)) / 2;
  const rise = face.bevelLine / 2 - reach;
  return {
    x,
    height: face.bevelHeight,
    spine: face.spine,
    bevelLine: face.bevelLine,
    edge,
    rise,
    apex: face.apex,
    spineDistance,
    angle: Math.atan2(rise, face.bevelHeight),
  };
}
