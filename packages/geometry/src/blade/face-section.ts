import type { HalfSection } from "./half-section.js";

/** What decides one ground face at one station; mm. */
export interface FaceAtStation {
  /** Full thickness at the edge before sharpening. */
  edge: number;
  /** Height of the bevel line above the edge, already stopped at the spine. */
  bevelHeight: number;
  /** Full thickness just below the bevel line (on the bevel) and just above it (on the flank). */
  bevelLineBelow: number;
  bevelLineAbove: number;
  /** Full thickness at the spine. */
  spine: number;
  /** Distance of the spine from the edge. */
  spineDistance: number;
  /** Sagitta asked for, mm; NaN where the arc is to be level at the bevel line. Only for convex faces. */
  crown: number;
}

/**
 * Fills `out` with a ground face: bevel up to the bevel line, straight flank up to the spine, then level.
 *
 * @param form - `flat` straight; `convex` an arc bulging outward.
 */
export function groundFace(face: FaceAtStation, form: "flat" | "convex", out: HalfSection): HalfSection {
  out.clear();
  const { edge, bevelHeight: b, bevelLineBelow, bevelLineAbove, spine, spineDistance } = face;
  if (b > 0) {
    const rise = (bevelLineBelow - edge) / 2;
    const arc = form === "convex" && rise > 0 ? convexArc(b, rise, face.crown) : undefined;
    if (arc === undefined) out.addLine(0, edge / 2, rise / b);
    else out.addArc(0, edge / 2, arc.centre, arc.drop, 1);
  }
  if (spineDistance > b) {
    const slope = (spine - bevelLineAbove) / 2 / (spineDistance - b);
    if (slope === 0) out.addLine(b, spine / 2, 0);
    else {
      out.addLine(b, bevelLineAbove / 2 - slope * b, slope);
      out.addLine(spineDistance, spine / 2, 0);
    }
  } else out.addLine(Math.max(b, spineDistance), spine / 2, 0);
  return out;
}

/**
 * The arc through (0, 0) and (b, rise) with sagitta s: distance of its centre along v, and below the first point.
 *
 * Close to a pointed tip the bevel is lower than it is thick, and an arc as asked would lean out over the edge; there
 * it is flattened until it stands upright at the edge, so that a face stays a face.
 */
function convexArc(
  b: number,
  rise: number,
  crown: number,
): { readonly centre: number; readonly drop: number } | undefined {
  const chord = Math.hypot(b, rise);
  const lean = Math.atan2(rise, b);
  const upright = (chord / 2) * Math.tan((Math.PI / 2 - lean) / 2);
  const level = (chord / 2) * Math.tan(lean / 2);
  const sagitta = Math.min(Number.isNaN(crown) ? level : crown, upright);
  if (!(sagitta > 0)) return undefined;
  const toCentre = (chord * chord) / (8 * sagitta) - sagitta / 2;
  return { centre: b / 2 + (toCentre * rise) / chord, drop: Math.max(0, (toCentre * b) / chord - rise / 2) };
}

/** Greatest sagitta of a convex face that does not stand above the flat: the arc that is level at the bevel line, mm. */
export function levelCrown(b: number, rise: number): number {
  return (Math.hypot(b, rise) / 2) * Math.tan(Math.atan2(rise, b) / 2);
}
