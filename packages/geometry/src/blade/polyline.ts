import { type Line, line } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";

/** Lines from point to point; a point that repeats the one before it adds none. */
export function polyline(...points: readonly Vec2[]): Line[] {
  return points.slice(1).flatMap((to, i) => {
    const from = points[i] as Vec2;
    return from.x === to.x && from.y === to.y ? [] : [line(from, to)];
  });
}
