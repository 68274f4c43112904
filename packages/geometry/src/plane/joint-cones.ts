import type { Segment } from "./segment.js";
import type { Vec2 } from "./vec2.js";

/** Cones nearer to each other than this do not count as apart, rad. */
const LEAST_GAP = 1e-6;
/** An arc of more turn has no useful hull of three points. */
const WIDEST_ARC = 3;

/**
 * Whether two segments that share a point can be seen from there to have nothing else in common: their control polygons,
 * which hold them, lie in cones from that point that do not overlap. A quick yes for nearly every joint of an outline; a
 * no means only that it has to be looked at closely.
 */
export function partedAtJoint(first: Segment, second: Segment, joint: Vec2): boolean {
  const a = directionsFrom(joint, first);
  const b = directionsFrom(joint, second);
  const [start, ...others] = a;
  if (start === undefined || b.length === 0) return false;
  const turns = [0, ...others.map((angle) => wrap(angle - start))];
  const left = Math.max(...turns);
  const width = left - Math.min(...turns);
  if (width >= Math.PI) return false;
  // Turning left from the first cone's left side: the second has to come and go before the first comes round again.
  const beyond = b.map((angle) => positive(angle - start - left));
  const nearest = Math.min(...beyond);
  const farthest = Math.max(...beyond);
  return nearest > LEAST_GAP && farthest < 2 * Math.PI - width - LEAST_GAP && farthest - nearest < Math.PI;
}

const wrap = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
const positive = (angle: number): number => angle - 2 * Math.PI * Math.floor(angle / (2 * Math.PI));

function directionsFrom(joint: Vec2, segment: Segment): number[] {
  return hullOf(segment).flatMap((p) => {
    const x = p.x - joint.x;
    const y = p.y - joint.y;
    return x === 0 && y === 0 ? [] : [Math.atan2(y, x)];
  });
}

/** Points whose convex hull holds the segment; none where there is no simple answer. */
function hullOf(segment: Segment): Vec2[] {
  switch (segment.kind) {
    case "line":
      return [segment.from, segment.to];
    case "cubic":
      return [segment.from, segment.control1, segment.control2, segment.to];
    case "arc": {
      if (Math.abs(segment.sweep) > WIDEST_ARC) return [];
      // Where the end tangents meet.
      const reach = segment.radius * Math.tan(segment.sweep / 2);
      const corner = {
        x: segment.from.x - reach * Math.sin(segment.startAngle),
        y: segment.from.y + reach * Math.cos(segment.startAngle),
      };
      return [segment.from, corner, segment.to];
    }
  }
}
