/** A blade whose bevels were hammered straight in, and how far its point came up; mm. */
export interface MeasuredSweep {
  /** How far the point stood off the line of the heel. */
  readonly sweep: number;
  /** Length over which it was measured. */
  readonly length: number;
}

/**
 * How far to bend the preform down at the point before the bevels are hammered in, so that it comes out straight, by
 * what an earlier blade did: the same curvature `κ = 2y/L²` over another length.
 *
 * @param earlier - Measured; both above 0.
 * @param length - Bevelled length of this blade, mm.
 * @returns mm at the point; good while it is small against the length.
 *
 * @example
 * preCurve({ sweep: 8, length: 200 }, 250); // 12.5
 */
export function preCurve(earlier: MeasuredSweep, length: number): number {
  return earlier.sweep * (length / earlier.length) ** 2;
}

/**
 * How far the point comes up where the edge grows longer than the spine by a share: `y ≈ ε·L²/(2h)`. Shows what a
 * stretch does; what the edge really gains is not known beforehand.
 *
 * @param stretch - Share by which the edge grows beyond the spine, small.
 * @param length - mm
 * @param height - Edge to spine, mm.
 * @returns mm
 *
 * @example
 * sweepOfStretch(0.03, 250, 50); // 18.75
 */
export function sweepOfStretch(stretch: number, length: number, height: number): number {
  return (stretch * length ** 2) / (2 * height);
}
