import { arcAround, type Cubic, cubic, type Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";

/** Half-axes nearer than this are a circle's, mm. */
const ROUND = 1e-9;
/** Longest turn of one cubic, rad: it leaves the ellipse by less than 1e-7 of its half-axis. */
const TURN = Math.PI / 8;

/**
 * Part of an upright ellipse between two of its eccentric angles: an arc where it is round, else cubics within a
 * ten-millionth of its half-axes.
 *
 * @param axes - half-axes along x and y, mm.
 */
export function ellipsePart(centre: Vec2, axes: Vec2, from: number, sweep: number): Segment[] {
  if (sweep === 0) return [];
  if (Math.abs(axes.x - axes.y) < ROUND) return [arcAround(centre, axes.x, from, sweep)];
  const count = Math.ceil(Math.abs(sweep) / TURN);
  const step = sweep / count;
  const reach = (4 / 3) * Math.tan(step / 4);
  const at = (angle: number): Vec2 => ({
    x: centre.x + axes.x * Math.cos(angle),
    y: centre.y + axes.y * Math.sin(angle),
  });
  return Array.from({ length: count }, (_, index): Cubic => {
    const [a, b] = [from + index * step, from + (index + 1) * step];
    const [start, end] = [at(a), at(b)];
    return cubic(
      start,
      { x: start.x - reach * axes.x * Math.sin(a), y: start.y + reach * axes.y * Math.cos(a) },
      { x: end.x + reach * axes.x * Math.sin(b), y: end.y - reach * axes.y * Math.cos(b) },
      end,
    );
  });
}
