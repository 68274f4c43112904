import type { Chord, FaceArc } from "../../src/bench/face-arc.js";

// The shop's closed forms: a second way to what the set-ups read off the weighed blade.

/** Size of a sharpening bevel, mm. */
export interface BevelSize {
  /** Up the blade, in its centre plane. */
  readonly height: number;
  /** Across the bevel's own face. */
  readonly width: number;
}

/**
 * Angle per side of a flat bevel: atan((t − e)/(2b)).
 *
 * @param thickness - t at the bevel line, mm.
 * @param edge - e, mm.
 * @param height - b, mm, more than 0.
 * @returns rad
 */
export function flatBevelAngle(thickness: number, edge: number, height: number): number {
  return Math.atan((thickness - edge) / (2 * height));
}

/**
 * The hollow that a wheel leaves.
 *
 * @param chord - Its ends; their distance must be within the wheel.
 * @param radius - Of the wheel, mm.
 */
export function hollowArc({ height, rise }: Chord, radius: number): FaceArc {
  const c = Math.hypot(height, rise);
  const alpha = Math.atan2(rise, height);
  const turn = Math.asin(c / (2 * radius));
  return {
    radius,
    depth: (c * c) / 4 / (radius + Math.sqrt(radius * radius - (c * c) / 4)),
    atEdge: alpha - turn,
    atLine: alpha + turn,
  };
}

/**
 * The bulge of a convex face by its greatest distance from the chord: R = c²/(8s) + s/2, α ± 2·atan(2s/c).
 *
 * @param crown - s, mm, more than 0.
 */
export function convexArc({ height, rise }: Chord, crown: number): FaceArc {
  const c = Math.hypot(height, rise);
  const alpha = Math.atan2(rise, height);
  const turn = 2 * Math.atan((2 * crown) / c);
  return {
    radius: (c * c) / (8 * crown) + crown / 2,
    depth: crown,
    atEdge: alpha + turn,
    atLine: alpha - turn,
  };
}

/**
 * The sharpening bevel of a blade with flat faces alike, from what it is thick at the edge before it is sharpened:
 * height e/(2(tan θ − tan α)), face width height/cos θ.
 *
 * @param edge - e, mm.
 * @param theta - Sharpening angle per side, rad.
 * @param alpha - Angle of the ground face per side, rad; must be less.
 */
export function sharpeningBevel(edge: number, theta: number, alpha: number): BevelSize {
  const height = edge / (2 * (Math.tan(theta) - Math.tan(alpha)));
  return { height, width: height / Math.cos(theta) };
}

/**
 * The same from the thickness where the bevel ends, behind the edge, which is what a caliper finds on a sharp knife; it is
 * the quick form too, with the thickness before sharpening.
 *
 * @param behind - mm.
 * @param theta - Per side, rad, more than 0.
 */
export function bevelBehindEdge(behind: number, theta: number): BevelSize {
  return { height: behind / (2 * Math.tan(theta)), width: behind / (2 * Math.sin(theta)) };
}
