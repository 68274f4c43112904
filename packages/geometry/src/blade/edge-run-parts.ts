import { invariant } from "../errors/errors.js";
import { segmentBounds } from "../plane/bounds.js";
import { splitAtXExtremes } from "../plane/monotone.js";
import { endTangent, type Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import { cross, dot } from "../plane/vec2.js";
import type { EdgeElement } from "./edge-element.js";
import { elementOf } from "./element-of.js";
import { RoundElement } from "./round-element.js";
import { StraightElement } from "./straight-element.js";

/**
 * Turning at a joint below which it is smooth, rad: rounding leaves less. Far above the joint a turn opens a fan that
 * neither neighbour reaches; a turn this small keeps it narrower than the slack at the ends of the elements.
 */
const SMOOTH_JOINT = 1e-12;

/** Where two neighbouring elements meet, and the unit normal there (of the elements' common tangent where it is smooth). */
export interface Joint {
  readonly at: Vec2;
  readonly normal: Vec2;
  readonly smooth: boolean;
}

/**
 * An edge that turns one way only, less than half a turn and nowhere tighter than a radius r, has no ridge within r of it
 * (Blaschke's rolling theorem: a circle of the least radius of curvature rolls freely inside a convex curve).
 */
export function plainReach(elements: readonly EdgeElement[], joints: readonly Joint[]): number {
  if (joints.some((joint) => !joint.smooth) || elements.some((e) => e.minCurvature < -1e-12)) return 0;
  if (elements.some((e) => e instanceof RoundElement && e.radius === 0)) return 0;
  const first = joints[0]?.normal;
  const last = joints[joints.length - 1]?.normal;
  if (first === undefined || last === undefined) return 0;
  if (cross(first, last) < 0 || dot(first, last) < 0) return 0;
  const tightest = Math.max(...elements.map((e) => e.maxCurvature), 0);
  return tightest === 0 ? Number.POSITIVE_INFINITY : 0.98 / tightest;
}

/** Appends the elements and joints of one run, with the rays that go on past its ends. */
export function addRun(
  run: readonly Segment[],
  elements: EdgeElement[],
  joints: Joint[],
  sources: (Segment | undefined)[],
): void {
  const pieces = run.flatMap((segment) => splitAtXExtremes(segment));
  const first = pieces[0];
  const last = pieces[pieces.length - 1];
  invariant(first !== undefined && last !== undefined, "a run has at least one segment");
  const start = tangent(first, "from");
  const end = tangent(last, "to");
  const join = (at: Vec2, before: Vec2, after: Vec2): void => {
    const turn = Math.atan2(cross(before, after), dot(before, after));
    const middle = { x: before.x + after.x, y: before.y + after.y };
    const n = Math.hypot(middle.x, middle.y);
    if (Math.abs(turn) <= SMOOTH_JOINT) {
      joints.push({ at, normal: { x: -middle.y / n, y: middle.x / n }, smooth: true });
      return;
    }
    // A corner has a point of its own: from its outer side every nearest point is the corner itself.
    joints.push({ at, normal: { x: -before.y, y: before.x }, smooth: turn < 0 });
    elements.push(RoundElement.corner(at));
    joints.push({ at, normal: { x: -after.y, y: after.x }, smooth: turn < 0 });
  };
  // Prolonged, an edge that has turned back would lie over the blade and take its spine away: it ends where it ends.
  const ends = (at: Vec2, direction: Vec2): void => {
    elements.push(direction.x > -1e-9 ? ray(at, direction, at === first.from) : RoundElement.corner(at));
  };
  ends(first.from, start);
  join(first.from, start, start);
  pieces.forEach((piece, i) => {
    elements.push(elementOf(piece));
    sources[elements.length - 1] = piece;
    const next = pieces[i + 1];
    join(piece.to, tangent(piece, "to"), next === undefined ? end : tangent(next, "from"));
  });
  ends(last.to, end);
}

/** The edge run past one of its ends. */
const ray = (at: Vec2, direction: Vec2, behind: boolean): StraightElement =>
  new StraightElement(
    at,
    direction,
    behind ? Number.NEGATIVE_INFINITY : 0,
    behind ? 0 : Number.POSITIVE_INFINITY,
  );

function tangent(segment: Segment, end: "from" | "to"): Vec2 {
  const t = endTangent(segment, end);
  invariant(t !== undefined, "a segment of the edge has a length");
  return t;
}

/** Bounds of the elements that are pieces of curve: four numbers each, infinite for rays and corners. */
export function boxesOf(sources: readonly (Segment | undefined)[], count: number): Float64Array {
  const boxes = new Float64Array(4 * count);
  for (let i = 0; i < count; i++) {
    const source = sources[i];
    const bounds = source === undefined ? undefined : segmentBounds(source);
    boxes[4 * i] = bounds?.minX ?? Number.NEGATIVE_INFINITY;
    boxes[4 * i + 1] = bounds?.maxX ?? Number.POSITIVE_INFINITY;
    boxes[4 * i + 2] = bounds?.minY ?? Number.NEGATIVE_INFINITY;
    boxes[4 * i + 3] = bounds?.maxY ?? Number.POSITIVE_INFINITY;
  }
  return boxes;
}
