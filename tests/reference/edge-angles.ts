// Angles of a surface square to the edge, measured on nothing but its height at points.
import type { Segment, Vec2 } from "@scantling/geometry";
import { locate, velocity } from "./curve.js";

/** Height of a surface above the centre plane at a point of the flats, mm. */
export type Surface = (x: number, y: number) => number;

/** A place of the edge, and the direction into the blade square to the edge there. */
export interface EdgePlace {
  readonly at: Vec2;
  readonly inward: Vec2;
}

/** Places along every segment of the edge, none of them at a joint: heel to tip. */
export function edgePlaces(edge: readonly Segment[], perSegment: number): EdgePlace[] {
  return edge.flatMap((segment) =>
    Array.from({ length: perSegment }, (_, i): EdgePlace => {
      const t = 0.03 + (0.94 * i) / (perSegment - 1);
      const { x, y } = velocity(segment, t);
      const speed = Math.hypot(x, y);
      // The outline runs counter-clockwise, heel to tip along the edge: the blade lies to the left.
      return { at: locate(segment, t), inward: { x: -y / speed, y: x / speed } };
    }),
  );
}

export const along = ({ at, inward }: EdgePlace, depth: number): Vec2 => ({
  x: at.x + depth * inward.x,
  y: at.y + depth * inward.y,
});

/** Angle against the centre plane over a short way square to the edge, from `depth` inward on, rad. */
export function slopeSquare(surface: Surface, place: EdgePlace, depth: number, step: number): number {
  const [a, b] = [along(place, depth), along(place, depth + step)];
  return Math.atan((surface(b.x, b.y) - surface(a.x, a.y)) / step);
}

/** The surface's steepest angle at a depth, and how far that direction is from square to the edge, rad. */
export function steepest(
  surface: Surface,
  place: EdgePlace,
  depth: number,
  step: number,
): { readonly angle: number; readonly skew: number } {
  const { x, y } = along(place, depth);
  const dx = (surface(x + step, y) - surface(x - step, y)) / (2 * step);
  const dy = (surface(x, y + step) - surface(x, y - step)) / (2 * step);
  const { inward } = place;
  return {
    angle: Math.atan(Math.hypot(dx, dy)),
    skew: Math.atan2(dx * inward.y - dy * inward.x, dx * inward.x + dy * inward.y),
  };
}
