import { extremeParameters } from "./bounds.js";
import { depthInside } from "./contains.js";
import { flattenPath } from "./flatten.js";
import { meetings } from "./intersect.js";
import { nearestOnSegment } from "./nearest.js";
import type { Path } from "./path.js";
import { clipPolygons, type Ring, ringsArea } from "./polygon.js";
import { arcAround, line, pointAt, type Segment } from "./segment.js";
import { cross, distance, interpolate, subtract, type Vec2 } from "./vec2.js";

/** A round hole drawn out along a straight line, mm; round where both ends are one place. */
export interface Slot {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly radius: number;
}

/**
 * Distance between two straight lines, each from end to end, mm; 0 where they cross.
 *
 * Two that do not cross are nearest at an end of one of them, so it is exact to rounding.
 *
 * @example
 * // level at y = 0 and at y = 3, side by side for a stretch
 * distanceOfLines({ x: 0, y: 0 }, { x: 8, y: 0 }, { x: 2, y: 3 }, { x: 9, y: 3 }); // 3
 */
export function distanceOfLines(a: Vec2, b: Vec2, c: Vec2, d: Vec2): number {
  const side = (from: Vec2, to: Vec2, p: Vec2): number => cross(subtract(to, from), subtract(p, from));
  // One that only just misses this has an end on the other.
  if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return 0;
  const ab = line(a, b);
  const cd = line(c, d);
  return Math.min(
    nearestOnSegment(ab, c).distance,
    nearestOnSegment(ab, d).distance,
    nearestOnSegment(cd, a).distance,
    nearestOnSegment(cd, b).distance,
  );
}

/**
 * Steel between two slots, mm; negative where they run into each other. Exact.
 *
 * @example
 * const slot = (y: number) => ({ from: { x: 0, y }, to: { x: 9, y }, radius: 2 });
 * wallBetweenSlots(slot(0), slot(7)); // 3
 */
export const wallBetweenSlots = (a: Slot, b: Slot): number =>
  distanceOfLines(a.from, a.to, b.from, b.to) - a.radius - b.radius;

/** Least steel between a slot and the outline, and where on the slot's middle line. */
export interface SlotWall {
  /** mm; negative by how far the slot comes out. */
  readonly wall: number;
  readonly centre: Vec2;
}

/**
 * Steel between a slot and the outline: exact on the curves as long as the middle line of the slot stays inside. Where
 * that comes out the wall is negative by the radius and by how far out it lies at the farthest, seen at places a quarter of
 * the radius apart.
 *
 * @example
 * const plate = { segments: segmentsFromPathData("M0 0 H40 V20 H0 Z"), closed: true };
 * wallAroundSlot({ from: { x: 12, y: 5 }, to: { x: 20, y: 6 }, radius: 2 }, plate); // { wall: 3, centre: { x: 12, y: 5 } }
 */
export function wallAroundSlot(slot: Slot, outline: Path): SlotWall {
  const { from, to, radius } = slot;
  const depth = depthInside(outline, from);
  if (from.x === to.x && from.y === to.y) return { wall: depth - radius, centre: from };
  let clear: Apart = { distance: Number.POSITIVE_INFINITY, centre: from };
  for (const segment of outline.segments) clear = nearer(clear, apartFrom(from, to, segment));
  if (depth > 0 && clear.distance > 0) return { wall: clear.distance - radius, centre: clear.centre };
  const steps = Math.max(1, Math.min(MOST_STEPS, Math.ceil(distance(from, to) / (STEP * radius))));
  let deepest: Apart = { distance: 0, centre: clear.centre };
  for (let i = 0; i <= steps; i++) {
    const centre = interpolate(from, to, i / steps);
    deepest = nearer(deepest, { distance: depthInside(outline, centre), centre });
  }
  return { wall: deepest.distance - radius, centre: deepest.centre };
}

/** Steps along a slot that comes out of the steel, as a share of its radius, and how many at most. */
const STEP = 0.25;
const MOST_STEPS = 400;

/** How far a line lies from something, mm, and the point of the line that is nearest to it. */
interface Apart {
  readonly distance: number;
  readonly centre: Vec2;
}

const nearer = (a: Apart, b: Apart): Apart => (b.distance < a.distance ? b : a);

/**
 * From a straight line to a segment. Two curves that do not meet are nearest at an end of one of them, or where their
 * directions are the same.
 */
function apartFrom(from: Vec2, to: Vec2, segment: Segment): Apart {
  const middle = line(from, to);
  const [meeting] = meetings(middle, segment);
  if (meeting !== undefined) {
    return { distance: 0, centre: (meeting.kind === "point" ? meeting : meeting.from).point };
  }
  let least = nearer(
    { distance: nearestOnSegment(segment, from).distance, centre: from },
    { distance: nearestOnSegment(segment, to).distance, centre: to },
  );
  for (const t of [0, 1, ...extremeParameters(turned(segment, subtract(to, from)), "y")]) {
    const nearest = nearestOnSegment(middle, pointAt(segment, t));
    least = nearer(least, { distance: nearest.distance, centre: pointAt(middle, nearest.t) });
  }
  return least;
}

/** The segment seen with this direction along x; only what its extremes depend on. */
function turned(segment: Segment, { x, y }: Vec2): Segment {
  const angle = Math.atan2(y, x);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turn = (p: Vec2): Vec2 => ({ x: cos * p.x + sin * p.y, y: cos * p.y - sin * p.x });
  switch (segment.kind) {
    case "line":
      return segment;
    case "arc":
      return { ...segment, startAngle: segment.startAngle - angle };
    case "cubic":
      return {
        ...segment,
        from: turn(segment.from),
        control1: turn(segment.control1),
        control2: turn(segment.control2),
        to: turn(segment.to),
      };
  }
}

/** Chords of the polygons that only say how much lies outside, as a share of the slot's radius. */
const CHORD_SHARE = 1e-4;

/** Chords finer than this say nothing more about a knife, mm. */
const FINEST_CHORDS = 1e-5;

/** Rounding of the distances that decide, mm. */
const ROUNDING = 1e-9;

/** Area of a slot, mm². */
export const slotArea = ({ from, to, radius }: Slot): number =>
  Math.PI * radius * radius + 2 * radius * distance(from, to);

/**
 * How much of a slot lies outside an outline, mm²; 0 for one that is wholly inside or touches the outline from inside.
 * The distance to the curves decides whether any does; only then are both flattened to say how much.
 *
 * @example
 * const square = { segments: segmentsFromPathData("M0 0 H9 V9 H0 Z"), closed: true };
 * // the lower half of it
 * slotOutsideArea({ from: { x: 2, y: 0 }, to: { x: 6, y: 0 }, radius: 1 }, square); // 5.571
 */
export function slotOutsideArea(slot: Slot, outline: Path): number {
  if (wallAroundSlot(slot, outline).wall >= -ROUNDING) return 0;
  const error = Math.max(slot.radius * CHORD_SHARE, FINEST_CHORDS);
  return ringsArea(clipPolygons("difference", [slotPolygon(slot, error)], [flattenPath(outline, error)]));
}

function slotPolygon({ from, to, radius }: Slot, error: number): Ring {
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  // Two half circles; the straight sides are the chords from one to the other.
  const first = arcAround(to, radius, angle - Math.PI / 2, Math.PI);
  const second = arcAround(from, radius, angle + Math.PI / 2, Math.PI);
  const segments = [first, line(first.to, second.from), second, line(second.to, first.from)];
  return flattenPath({ segments, closed: true }, error);
}
