import type { Arc } from "./segment.js";
import type { Vec2 } from "./vec2.js";

/**
 * Parameter of the point of the arc's whole circle that lies nearest to p. Inside [0, 1] it is on the arc; outside, the
 * value tells how far beyond which end, by the shorter way round.
 *
 * Reckoned from the arc's start, so that it stays exact on a flat arc of great radius.
 *
 * @example
 * arcParameter(arcAround({ x: 0, y: 0 }, 1, 0, Math.PI), { x: 0, y: 1 }); // 0.5
 */
export function arcParameter(arc: Arc, p: Vec2): number {
  const ex = Math.cos(arc.startAngle);
  const ey = Math.sin(arc.startAngle);
  const qx = p.x - arc.from.x;
  const qy = p.y - arc.from.y;
  const turn = Math.atan2(ex * qy - ey * qx, arc.radius + ex * qx + ey * qy);
  const t = turn / arc.sweep;
  const period = (2 * Math.PI) / Math.abs(arc.sweep);
  // The representative nearest to the middle of the arc: then both ends are treated alike.
  return t - period * Math.round((t - 0.5) / period);
}

/**
 * Signed distance of p from the arc's whole circle, mm: positive outside.
 *
 * @example
 * Math.abs(distanceFromCircle(arcAround({ x: 0, y: 0 }, 1, 0, Math.PI), { x: 0, y: 3 })); // 2
 */
export function distanceFromCircle(arc: Arc, p: Vec2): number {
  const ex = Math.cos(arc.startAngle);
  const ey = Math.sin(arc.startAngle);
  const qx = p.x - arc.from.x;
  const qy = p.y - arc.from.y;
  const along = ex * qx + ey * qy;
  // |p − c| − r = (|q|² + 2r·(e·q)) / (|p − c| + r): no difference of two great lengths.
  const fromCentre = Math.hypot(arc.radius + along, ex * qy - ey * qx);
  return (qx * qx + qy * qy + 2 * arc.radius * along) / (fromCentre + arc.radius);
}
