import type { HalfSection } from "./half-section.js";

/** What decides one ground face at one station; distances of the face from the centre plane, mm. */
export interface FaceAtStation {
  /** At the edge before sharpening. */
  edge: number;
  /** Height of the bevel line above the edge, already stopped at the spine. */
  bevelHeight: number;
  /** Just below the bevel line (on the bevel) and just above it (on the flank). */
  bevelLineBelow: number;
  bevelLineAbove: number;
  /** At the spine. */
  spine: number;
  /** Distance of the spine from the edge. */
  spineDistance: number;
  /** Convex: sagitta asked for, mm; NaN where the arc is to be level at the bevel line. */
  crown: number;
  /** Hollow: radius of the wheel, mm. */
  wheelRadius: number;
}

export type FaceForm = "flat" | "convex" | "hollow";

/**
 * Fills `out` with a ground face: bevel up to the bevel line, straight flank up to the spine, then level. All values are
 * distances of the face from the centre plane, mm.
 *
 * @param form - `flat` straight; `convex` an arc bulging outward; `hollow` an arc caving inward.
 */
export function groundFace(face: FaceAtStation, form: FaceForm, out: HalfSection): HalfSection {
  out.clear();
  const { edge, bevelHeight: b, bevelLineBelow, bevelLineAbove, spine, spineDistance } = face;
  if (b > 0) {
    const rise = bevelLineBelow - edge;
    const convex = form === "convex" && rise > 0 ? convexArc(b, rise, face.crown) : undefined;
    const hollow = form === "hollow" ? hollowArc(b, rise, face.wheelRadius) : undefined;
    if (convex !== undefined) out.addArc(0, edge, convex.centre, convex.drop, 1);
    else if (hollow !== undefined) out.addArc(0, edge, hollow.centre, hollow.drop, -1);
    else out.addLine(0, edge, rise / b);
  }
  if (spineDistance > b) {
    const slope = (spine - bevelLineAbove) / (spineDistance - b);
    if (slope === 0) out.addLine(b, spine, 0);
    else {
      out.addLine(b, bevelLineAbove - slope * b, slope);
      out.addLine(spineDistance, spine, 0);
    }
  } else out.addLine(Math.max(b, spineDistance), spine, 0);
  return out;
}

/**
 * The arc through (0, 0) and (b, rise) that a wheel of the given radius leaves: its centre lies outside the steel, at
 * (`centre`, `drop`). Close to a pointed tip, where the bevel is lower than it is thick, it is flattened until it stands
 * upright at the bevel line.
 *
 * @returns undefined where the wheel is too small to touch both points, or so large that the face is flat.
 */
function hollowArc(
  b: number,
  rise: number,
  radius: number,
): { readonly centre: number; readonly drop: number } | undefined {
  const half = Math.sqrt(b * b + rise * rise) / 2;
  const r = Math.max(radius, (2 * half * half) / b);
  if (!(r < 1e12)) return undefined;
  const toCentre = Math.sqrt(Math.max(0, r * r - half * half));
  return { centre: b / 2 - (toCentre * rise) / (2 * half), drop: (toCentre * b) / (2 * half) + rise / 2 };
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
  const chord = Math.sqrt(b * b + rise * rise);
  // The sagitta is half the chord times the tangent of a quarter of the angle at the centre: half-angle formulas.
  const upright = (chord * b) / (2 * (chord + rise));
  const level = (chord * rise) / (2 * (chord + b));
  const sagitta = Math.min(Number.isNaN(crown) ? level : crown, upright);
  if (!(sagitta > 0)) return undefined;
  const toCentre = (chord * chord) / (8 * sagitta) - sagitta / 2;
  return { centre: b / 2 + (toCentre * rise) / chord, drop: Math.max(0, (toCentre * b) / chord - rise / 2) };
}

/**
 * A number that changes its sign along x where the form of a face changes its law: where an arc as asked for would lean
 * out and is flattened until it stands upright, where the bevel no longer gains thickness.
 */
export function limitOfForm(
  { edge, bevelHeight: b, bevelLineBelow, crown, wheelRadius }: FaceAtStation,
  form: FaceForm,
): number {
  const rise = bevelLineBelow - edge;
  const chord = Math.sqrt(b * b + rise * rise);
  if (form === "hollow") return 2 * wheelRadius * b - chord * chord;
  if (form === "flat" || rise <= 0) return rise;
  const sagitta = Number.isNaN(crown) ? (chord * rise) / (2 * (chord + b)) : crown;
  return (chord * b) / (2 * (chord + rise)) - sagitta;
}

/** Greatest sagitta of a convex face that does not stand above the flat: the arc that is level at the bevel line, mm. */
export function levelCrown(b: number, rise: number): number {
  const chord = Math.sqrt(b * b + rise * rise);
  return (chord * rise) / (2 * (chord + b));
}
