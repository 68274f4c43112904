/** The arc of a hollow or convex face; mm, rad from the centre plane. */
export interface FaceArc {
  readonly radius: number;
  /** Greatest distance from the chord: of the hollow below a straightedge, of the bulge above one. */
  readonly depth: number;
  /** Angle of the face where it arrives at the edge, and at the bevel line. */
  readonly atEdge: number;
  readonly atLine: number;
}

/** A bevel as its ends have it: height along the centre plane, and how much farther out its upper end lies. mm. */
export interface Chord {
  readonly height: number;
  readonly rise: number;
}

/**
 * How high a bevel comes out that is ground at an angle until the edge is as thick as wanted.
 *
 * @param rise - Half of what the blade is thicker than its edge, mm.
 * @param angle - rad.
 * @returns mm; infinite at an angle of nothing.
 *
 * @example
 * heightAtAngle(1.3, 0.05195); // 25.00
 */
export function heightAtAngle(rise: number, angle: number): number {
  return angle > 0 ? rise / Math.tan(angle) : Number.POSITIVE_INFINITY;
}

/**
 * Shim under the lever of a bevel jig.
 *
 * @param lever - From the edge to the shim, mm.
 * @param angle - rad.
 * @returns mm
 *
 * @example
 * leverShim(150, 0.05195); // 7.789
 */
export function leverShim(lever: number, angle: number): number {
  return lever * Math.sin(angle);
}

/**
 * The smallest wheel that leaves the blade nowhere thinner than at its edge: R = c²/(t − e), the largest over all stations.
 *
 * @returns mm; undefined where no face rises.
 *
 * @example
 * smallestRadius([{ height: 25, rise: 1.3 }]); // 241.03
 */
export function smallestRadius(chords: readonly Chord[]): number | undefined {
  const radii = chords
    .filter(({ rise }) => rise > 0)
    .map(({ height, rise }) => (height * height + rise * rise) / (2 * rise));
  return radii.length === 0 ? undefined : Math.max(...radii);
}

/**
 * The highest bevel that a wheel can grind without thinning the blade above its edge: c = √(R(t − e)), along the face.
 *
 * @param rise - Half of what the blade is thicker than its edge, mm.
 * @param radius - Of the wheel, mm.
 * @returns Height along the centre plane, mm.
 *
 * @example
 * highestHollow(1.3, 127); // 18.12
 */
export function highestHollow(rise: number, radius: number): number {
  return Math.sqrt(Math.max(0, 2 * rise * radius - rise * rise));
}

/** An owned wheel against a hollow face. mm. */
export interface WheelFit {
  readonly diameter: number;
  /** Whether it is large enough at every station. */
  readonly fits: boolean;
  /** The highest bevel that it can grind at the first station. */
  readonly highest: number;
  /** How far its radius is from the one that the face was drawn with. */
  readonly error: number;
}

/**
 * Owned wheels against a hollow face, those that fit first, the nearest to the drawn radius first of those.
 *
 * @param diameters - mm.
 * @param radius - As drawn, mm.
 * @param chord - Of the face at its first station.
 * @param least - Smallest radius that fits everywhere, mm.
 *
 * @example
 * ownedWheels([200, 254], 127, { height: 15, rise: 1.3 }, 87.2).map(({ diameter }) => diameter); // [254, 200]
 */
export function ownedWheels(
  diameters: readonly number[],
  radius: number | undefined,
  chord: Chord,
  least: number | undefined,
): WheelFit[] {
  return diameters
    .map((diameter) => ({
      diameter,
      fits: diameter / 2 >= (least ?? 0) - 1e-9,
      highest: highestHollow(chord.rise, diameter / 2),
      error: diameter / 2 - (radius ?? diameter / 2),
    }))
    .sort((a, b) => Number(b.fits) - Number(a.fits) || Math.abs(a.error) - Math.abs(b.error));
}
