import { depthInside } from "./contains.js";
import type { Path } from "./path.js";
import { slotOutsideArea } from "./slot.js";
import { distance, type Vec2 } from "./vec2.js";

/** A round hole, mm. */
export interface Disc {
  readonly centre: Vec2;
  readonly radius: number;
}

/**
 * Steel between a disc and the outline, mm: how far the rim stays inside at its nearest, negative by how far it comes
 * out. Exact on the curves.
 *
 * @example
 * const plate = { segments: segmentsFromPathData("M0 0 H40 V20 H0 Z"), closed: true };
 * // a hole of radius 2 whose centre is 5 mm from the nearest side
 * wallAround({ centre: { x: 12, y: 5 }, radius: 2 }, plate); // 3
 */
export const wallAround = (disc: Disc, outline: Path): number =>
  depthInside(outline, disc.centre) - disc.radius;

/**
 * Steel between two discs, mm; negative where they run into each other.
 *
 * @example
 * wallBetween({ centre: { x: 0, y: 0 }, radius: 2 }, { centre: { x: 9, y: 0 }, radius: 3 }); // 4
 */
export const wallBetween = (a: Disc, b: Disc): number => distance(a.centre, b.centre) - a.radius - b.radius;

/**
 * How much of a disc lies outside an outline, mm². The distance to the curves decides whether any does; only then are
 * both flattened to say how much, to about 2e-4 of the disc.
 *
 * @returns 0 for a disc that is wholly inside or touches the outline from inside.
 *
 * @example
 * const square = { segments: segmentsFromPathData("M0 0 H4 V4 H0 Z"), closed: true };
 * // half of a hole of radius 1 lies outside
 * holeOutsideArea({ centre: { x: 2, y: 0 }, radius: 1 }, square); // 1.571
 */
export const holeOutsideArea = ({ centre, radius }: Disc, outline: Path): number =>
  slotOutsideArea({ from: centre, to: centre, radius }, outline);

/**
 * Area that two discs share, mm², by the circular lens in closed form.
 *
 * @example
 * const disc = { centre: { x: 0, y: 0 }, radius: 1 };
 * sharedDiscArea(disc, disc); // 3.14159
 */
export function sharedDiscArea(a: Disc, b: Disc): number {
  const apart = distance(a.centre, b.centre);
  if (apart >= a.radius + b.radius) return 0;
  const least = Math.min(a.radius, b.radius);
  if (apart <= Math.abs(a.radius - b.radius)) return Math.PI * least * least;
  // Each side of the common chord is a circular segment.
  const segment = (r: number, other: number): number => {
    const toChord = (apart * apart + r * r - other * other) / (2 * apart);
    const half = Math.acos(Math.min(1, Math.max(-1, toChord / r)));
    return r * r * (half - Math.sin(half) * Math.cos(half));
  };
  return segment(a.radius, b.radius) + segment(b.radius, a.radius);
}
