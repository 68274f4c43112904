import type { EdgeElement } from "./edge-element.js";
import { StraightElement } from "./straight-element.js";

/** Most points for a circular face that does not come round again, its root taken out where it stands upright. */
export const ARC_POINTS = 10;

/** For one that comes round. */
export const STEEP_POINTS = 24;
export const MOST_POINTS = 24;

/** Greatest level ratio at which points are spread by their feet on the curve. */
export const GREATEST_LEVEL_RATIO = 0.8;

/**
 * How many Gauss points a zone needs to keep all its digits. Straight element: two are exact. Elsewhere the distance has its
 * singularity at the focal point, and the count grows with the zone's share of the way there.
 *
 * @param foot - parameter of a nearest point in the zone.
 */
export function zonePoints(
  element: EdgeElement,
  width: number,
  va: number,
  vb: number,
  foot: number,
): number {
  if (element instanceof StraightElement) return 2;
  element.foot = foot;
  return points(width / element.focalDistance(va, vb));
}

/** The same where the points are spread by their feet: there the singularity lies where the curve is level. */
export const levelPoints = (ratio: number): number => points(ratio);

/**
 * How many a circular face needs, spread evenly in the root of the distance from where it stands upright.
 *
 * @param rootA - that root at the zone's lower end, @param rootB - at its upper, @param radius - of the circle, mm: where it
 * stands upright again the root is √(2 radius).
 */
export function arcPoints(rootA: number, rootB: number, radius: number): number {
  return Math.min(ARC_POINTS, points((rootB - rootA) / (Math.sqrt(2 * radius) - rootB)));
}

/**
 * With a singularity 1 / ratio lengths beyond the end, n points leave ρ⁻²ⁿ of the integral, ρ = z + √(z² − 1),
 * z = 1 + 2 / ratio (L. N. Trefethen, Approximation Theory and Approximation Practice, theorem 19.3): here below 2e-14.
 */
function points(ratio: number): number {
  return ratio < 0.01
    ? 3
    : ratio < 0.05
      ? 4
      : ratio < 0.15
        ? 5
        : ratio < 0.3
          ? 6
          : ratio < 0.5
            ? 7
            : ratio < 0.8
              ? 9
              : ratio < 2
                ? 13
                : 20;
}
