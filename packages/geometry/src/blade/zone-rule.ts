import type { EdgeElement } from "./edge-element.js";
import { StraightElement } from "./straight-element.js";

/** Most points for a circular face that does not come round again, its root taken out where it stands upright. */
export const ARC_POINTS = 12;

/** For one that comes round. */
export const STEEP_POINTS = 24;
export const MOST_POINTS = 24;

/** A cubic's zone with its nearest singularity nearer than half its length is divided, up to so often. */
export const HARD_RATIO = 2;
export const MOST_DIVISIONS = 6;

/**
 * How near a zone comes to a focal point of its element, where the distance has a singularity: its length over the way that
 * is left to there. 0 beside a straight element.
 */
export function focalRatio(
  element: EdgeElement,
  width: number,
  va: number,
  vb: number,
  footA: number,
  footB: number,
): number {
  if (element instanceof StraightElement) return 0;
  element.foot = footA;
  const atA = element.focalDistance(va, vb);
  element.foot = footB;
  return width / Math.min(atA, element.focalDistance(va, vb));
}

/**
 * How many a circular face needs, spread evenly in the root of the distance from where it stands upright.
 *
 * @param rootA - that root at the zone's lower end, @param rootB - at its upper, @param radius - of the circle, mm: where it
 * stands upright again the root is √(2 radius).
 */
export function arcPoints(rootA: number, rootB: number, radius: number): number {
  return Math.min(ARC_POINTS, pointsFor((rootB - rootA) / (Math.sqrt(2 * radius) - rootB)));
}

/** Least ratio at which so many points no longer do. */
const POINTS = [
  [0.01, 3],
  [0.05, 4],
  [0.15, 5],
  [0.3, 6],
  [0.5, 7],
  [0.8, 9],
  [2, 13],
  [4, 16],
  [8, 20],
] as const;
/** For the powers of height and thickness in the moments. */
const MORE = 2;

/**
 * How many Gauss points a zone needs: with a singularity 1 / ratio lengths beyond its end, n points leave ρ⁻²ⁿ of the
 * integral, ρ = z + √(z² − 1), z = 1 + 2 / ratio (L. N. Trefethen, Approximation Theory and Approximation Practice, theorem
 * 19.3): here below 2e-14 up to a ratio of 4. With no singularity, a ratio of 0, two points are exact.
 */
export function pointsFor(ratio: number): number {
  if (ratio === 0) return 2;
  for (const [least, points] of POINTS) if (ratio < least) return points + MORE;
  return MOST_POINTS;
}

/** Digits that {@link pointsFor} is made for, as a share left over, and how far below the aim a zone is to stay. */
const LEFT_BY_ALL = 2e-14;
const BELOW_AIM = 1e-2;

/**
 * Share of the points of {@link pointsFor} that is enough where less is asked than a double holds: what is left falls
 * geometrically with their number.
 *
 * @param aim - relative error asked for.
 */
export function shareOfPoints(aim: number): number {
  return Math.min(1, Math.log(aim * BELOW_AIM) / Math.log(LEFT_BY_ALL));
}
