import {
  arcAround,
  type Cubic,
  cubic,
  derivativeAt,
  endTangent,
  line,
  pointAt,
  type Segment,
  translateSegment,
} from "../plane/segment.js";
import { splitSegment } from "../plane/split.js";
import { add, cross, distance, dot, norm, scale, subtract, type Vec2, vec2 } from "../plane/vec2.js";
import { emptyRuns, type Outline, outlineOfRuns, RUN_NAMES, type RunName } from "./outline.js";

/** How far a corner may move, as a multiple of its sides' own way: that of a tip of 6°. */
const FARTHEST_CORNER = 20;
/** Most that a curve is drawn on, as a share of its own length: farther on its bend says nothing any more. */
const FARTHEST_DRAWN = 0.5;
/** Least share of a piece that has to be left of it. */
const LEAST_LEFT = 1e-3;
/** Sine of the angle between a curve's ends up to which its legs are only drawn out with its chord. */
const NEARLY_STRAIGHT = 0.02;
/** Sine of the angle up to which two sides run on in one line. */
const SMOOTH = 1e-7;
/** The same where they move unequally: the step between them is bridged half way. */
const ONE_DIRECTION = 0.3;

interface Side {
  readonly run: RunName;
  readonly segment: Segment;
  /** How far it moves, mm. */
  readonly by: number;
  /** Moved, with its ends where its own normals take them. */
  readonly moved: Segment;
}

/** Where two moved sides meet, and at which of their parameters. */
interface Joint {
  readonly point: Vec2;
  readonly before: number;
  readonly after: number;
}

/**
 * The outline with its sides moved out square to themselves (in, where the distance is negative), and the heel put back on
 * the origin. Lines stay lines, arcs keep their centre; cubics keep their ends' tangents and go through
 * the moved middle, which on a blade misses the true parallel curve by less than 2 % of the distance. Corners go to where their two sides meet; a curve
 * is drawn on up to there as it is bent, or cut off.
 *
 * @param distanceOf - how far the sides of a run move, mm.
 * @returns undefined where a piece is too short or too tightly curved to move that far.
 *
 * @example
 * moveSides(outline, () => 0.5); // half a millimetre more all round
 */
export function moveSides(outline: Outline, distanceOf: (run: RunName) => number): Outline | undefined {
  const sides: Side[] = [];
  for (const run of RUN_NAMES) {
    const by = distanceOf(run);
    for (const segment of outline.runs[run]) {
      const moved = parallel(segment, by);
      if (moved === undefined) return undefined;
      sides.push({ run, segment, by, moved });
    }
  }
  const joints = sides.map((side, i) => jointOf(sides[(i + sides.length - 1) % sides.length] ?? side, side));
  const points = keptUpright(sides, joints);
  const heel = points[0] ?? vec2(0, 0);
  const runs = emptyRuns();
  for (const [i, { run, segment, moved }] of sides.entries()) {
    const next = (i + 1) % sides.length;
    const from = points[i] as Vec2;
    const to = points[next] as Vec2;
    const part = between(moved, (joints[i] as Joint).after, (joints[next] as Joint).before);
    if (part === undefined || turnsRound(segment.from, segment.to, from, to)) return undefined;
    runs[run].push(translateSegment({ ...part, from, to }, -heel.x, -heel.y));
  }
  return outlineOfRuns(runs);
}

/** Square to the way along a counter-clockwise outline, away from the steel. */
const outwardOf = ({ x, y }: Vec2): Vec2 => ({ x: y, y: -x });
const tangentOf = (segment: Segment, end: "from" | "to"): Vec2 => endTangent(segment, end) ?? vec2(1, 0);

/** A side moved along its normals; undefined where it would turn round. */
function parallel(segment: Segment, by: number): Segment | undefined {
  const first = outwardOf(tangentOf(segment, "from"));
  switch (segment.kind) {
    case "line":
      return line(add(segment.from, scale(first, by)), add(segment.to, scale(first, by)));
    case "arc": {
      const { centre, radius, startAngle, sweep } = segment;
      const moved = radius + Math.sign(sweep) * by;
      return moved > LEAST_LEFT * radius ? arcAround(centre, moved, startAngle, sweep) : undefined;
    }
    case "cubic":
      return parallelCubic(segment, by);
  }
}

/** The cubic that keeps the tangents at both ends and goes through the moved middle. */
function parallelCubic(segment: Cubic, by: number): Segment | undefined {
  const start = tangentOf(segment, "from");
  const end = tangentOf(segment, "to");
  const from = add(segment.from, scale(outwardOf(start), by));
  const to = add(segment.to, scale(outwardOf(end), by));
  const speed = derivativeAt(segment, 0.5);
  const middle = add(pointAt(segment, 0.5), scale(outwardOf(speed), by / norm(speed)));
  // Middle = (from + to)/8 + 3/8·(both controls): what the two legs have to make up together.
  const legs = scale(subtract(middle, scale(add(from, to), 0.5)), 8 / 3);
  const turn = cross(start, end);
  const longer = distance(from, to) / distance(segment.from, segment.to);
  const isBent = Math.abs(turn) > NEARLY_STRAIGHT;
  const first = isBent ? cross(legs, end) / turn : longer * distance(segment.from, segment.control1);
  const last = isBent ? cross(legs, start) / turn : longer * distance(segment.control2, segment.to);
  return first > 0 && last > 0
    ? cubic(from, add(from, scale(start, first)), subtract(to, scale(end, last)), to)
    : undefined;
}

/** Where the corner of two straight sides goes that move by `byA` and `byB` along their outward normals. */
function cornerWay(a: Vec2, byA: number, b: Vec2, byB: number): Vec2 {
  const turn = cross(a, b);
  if (byA !== byB && Math.abs(turn) < ONE_DIRECTION) return scale(add(scale(a, byA), scale(b, byB)), 0.5);
  const way =
    byA === byB
      ? scale(add(a, b), byA / Math.max(1 + dot(a, b), 1e-9))
      : scale(vec2(byA * b.y - byB * a.y, byB * a.x - byA * b.x), 1 / turn);
  const most = FARTHEST_CORNER * Math.max(Math.abs(byA), Math.abs(byB));
  return norm(way) > most ? scale(way, most / norm(way)) : way;
}

function jointOf(a: Side, b: Side): Joint {
  const into = tangentOf(a.segment, "to");
  const out = tangentOf(b.segment, "from");
  const straight: Joint = {
    point: add(b.segment.from, cornerWay(outwardOf(into), a.by, outwardOf(out), b.by)),
    before: 1,
    after: 0,
  };
  const areLines = a.segment.kind === "line" && b.segment.kind === "line";
  if (areLines || Math.abs(cross(into, out)) < (a.by === b.by ? SMOOTH : ONE_DIRECTION)) return straight;
  return meeting(a.moved, b.moved, FARTHEST_CORNER * Math.max(Math.abs(a.by), Math.abs(b.by))) ?? straight;
}

/** Where two curves meet near the end of one and the start of the other, each drawn on beyond it: Newton. */
function meeting(a: Segment, b: Segment, within: number): Joint | undefined {
  let before = 1;
  let after = 0;
  for (let pass = 0; pass < 20; pass++) {
    const gap = subtract(pointAt(b, after), pointAt(a, before));
    const u = derivativeAt(a, before);
    const v = derivativeAt(b, after);
    const turn = cross(u, v);
    const stepA = cross(gap, v) / turn;
    const stepB = cross(gap, u) / turn;
    before += stepA;
    after += stepB;
    if (!(Math.abs(before - 1) < 1e3 && Math.abs(after) < 1e3)) return undefined;
    if (Math.abs(stepA) + Math.abs(stepB) < 1e-13) break;
  }
  // A line's own point keeps an upright one upright.
  const point = a.kind === "line" ? pointAt(a, before) : pointAt(b, after);
  const isNear = distance(point, a.to) <= within && distance(point, b.from) <= within;
  return isNear && distance(pointAt(a, before), pointAt(b, after)) < 1e-9
    ? { point, before, after }
    : undefined;
}

/** The joints' points, such that both ends of an upright or a level line go the very same way, to the last bit. */
function keptUpright(sides: readonly Side[], joints: readonly Joint[]): Vec2[] {
  const points = joints.map(({ point }) => point);
  for (const [i, { segment }] of sides.entries()) {
    if (segment.kind !== "line") continue;
    const next = (i + 1) % sides.length;
    const here = points[i] as Vec2;
    const there = points[next] as Vec2;
    const { from, to } = segment;
    points[next] = { x: from.x === to.x ? here.x : there.x, y: from.y === to.y ? here.y : there.y };
  }
  return points;
}

/** A moved side from one joint to the next; undefined where too little of it is left, or it is drawn on too far. */
function between(moved: Segment, from: number, to: number): Segment | undefined {
  if (moved.kind === "line") return moved;
  if (!(to - from > LEAST_LEFT && from > -FARTHEST_DRAWN && to < 1 + FARTHEST_DRAWN)) return undefined;
  return from === 0 && to === 1 ? moved : splitSegment(moved, from, to);
}

/** Whether a piece that had a length has none left, or runs the other way. */
function turnsRound(from: Vec2, to: Vec2, movedFrom: Vec2, movedTo: Vec2): boolean {
  const before = subtract(to, from);
  const square = dot(before, before);
  return square > 0 && dot(before, subtract(movedTo, movedFrom)) <= LEAST_LEFT * square;
}
