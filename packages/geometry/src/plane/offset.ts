import { GeometryError } from "../errors/errors.js";
import { bernsteinRoots, multiplyBernstein } from "../numeric/polynomial.js";
import { nearestOnSegment } from "./nearest.js";
import {
  type Arc,
  type Cubic,
  cubic,
  derivativeAt,
  line,
  pointAt,
  type Segment,
  secondDerivativeAt,
} from "./segment.js";
import { add, cross, dot, scale, type Vec2 } from "./vec2.js";

/** Halvings after which a parallel curve is given up: no curve of an outline needs as many. */
const MOST_HALVINGS = 14;

/** Slower than this share of the curve's size per unit of its parameter, a curve stands still. */
const STANDSTILL = 1e-9;

/** Beside a standstill the direction is read this little away from it, in the curve's parameter. */
const BESIDE = 1e-5;

/**
 * The curve that runs parallel to a segment: every point of it lies `distance` from the segment, on its left for a
 * positive distance. Lines and arcs stay what they are; a cubic becomes cubics that keep the distance within `tolerance`.
 *
 * @param distance - mm, positive to the left of the direction of travel, negative to the right.
 * @param tolerance - Greatest error of the distance, mm.
 * @throws {GeometryError} `offset-too-tight` where the curve bends more sharply than the distance allows, with the place;
 * `offset-no-direction` where it has a cusp, doubles back or has no length; `offset-unresolved` where the tolerance
 * cannot be kept.
 *
 * @example
 * offsetSegment(line({ x: 0, y: 0 }, { x: 8, y: 0 }), 2); // one line, from (0, 2) to (8, 2)
 */
export function offsetSegment(segment: Segment, distance: number, tolerance = 1e-4): readonly Segment[] {
  if (distance === 0) return [segment];
  switch (segment.kind) {
    case "line": {
      const { x: dx, y: dy } = derivativeAt(segment, 0);
      const length = Math.hypot(dx, dy);
      if (!(length > 0)) throw noDirection(segment.from);
      const aside = { x: (-dy / length) * distance, y: (dx / length) * distance };
      return [line(add(segment.from, aside), add(segment.to, aside))];
    }
    case "arc":
      return [offsetArc(segment, distance)];
    case "cubic":
      requireRoom(segment, distance);
      return fit(segment, distance, tolerance, 0, 1, 0);
  }
}

function offsetArc(arc: Arc, distance: number): Arc {
  const radius = arc.radius - Math.sign(arc.sweep) * distance;
  if (!(radius > 1e-9 * arc.radius)) throw tooTight(arc.from, arc.radius, distance);
  const grown = (end: Vec2): Vec2 => ({
    x: arc.centre.x + ((end.x - arc.centre.x) * radius) / arc.radius,
    y: arc.centre.y + ((end.y - arc.centre.y) * radius) / arc.radius,
  });
  return { ...arc, from: grown(arc.from), to: grown(arc.to), radius };
}

/** The curve must move everywhere inside, and nowhere bend to that side with a radius of the distance or less. */
function requireRoom(curve: Cubic, distance: number): void {
  const { from, control1, control2, to } = curve;
  const slopes = [
    [control1.x - from.x, control2.x - control1.x, to.x - control2.x],
    [control1.y - from.y, control2.y - control1.y, to.y - control2.y],
  ] as const;
  const size = Math.max(...slopes.flat().map(Math.abs));
  if (!(size > 0)) throw noDirection(from);
  const plus = (a: readonly number[], b: readonly number[], factor = 1): number[] =>
    a.map((value, i) => value + factor * (b[i] as number));
  // In thirds of the derivative, so that speed and cross product are those of the control polygon.
  const speed = plus(multiplyBernstein(slopes[0], slopes[0]), multiplyBernstein(slopes[1], slopes[1]));
  const changes = speed.slice(1).map((value, i) => value - (speed[i] as number));
  const slowest = bernsteinRoots(changes).filter((t) => t > 0 && t < 1);
  for (const t of slowest) {
    const d = derivativeAt(curve, t);
    if (Math.hypot(d.x, d.y) < STANDSTILL * size) throw noDirection(pointAt(curve, t));
  }
  // d·κ = 1 squared: d²·(B′ × B″)² = |B′|⁶, a polynomial of degree 12.
  const second = slopes.map((s) => [s[1] - s[0], s[2] - s[1]]);
  const turning = plus(
    multiplyBernstein(slopes[0], second[1] as number[]),
    multiplyBernstein(slopes[1], second[0] as number[]),
    -1,
  );
  const squared = multiplyBernstein(turning, turning);
  const raised = multiplyBernstein(squared, new Array<number>(7).fill(1));
  const sixth = multiplyBernstein(multiplyBernstein(speed, speed), speed);
  // B′ is 3 times the slopes, B″ 6 times their changes: (18 d·turning)² against 3⁶·speed³.
  const room = plus(
    sixth.map((value) => 729 * value),
    raised,
    -324 * distance * distance,
  );
  const roots = bernsteinRoots(room);
  const marks = [0, ...roots, 1];
  const between = marks.slice(1).map((t, i) => (t + (marks[i] as number)) / 2);
  for (const t of [...between, ...roots]) {
    const b = derivativeAt(curve, t);
    const n = Math.hypot(b.x, b.y);
    const bend = n > 0 ? cross(b, secondDerivativeAt(curve, t)) / n ** 3 : 0;
    if (distance * bend >= 1 - 1e-9) throw tooTight(pointAt(curve, t), 1 / Math.abs(bend), distance);
  }
}

/** A parallel piece over a span of the parameter; halved until it keeps its distance. */
function fit(
  curve: Cubic,
  distance: number,
  tolerance: number,
  t0: number,
  t1: number,
  depth: number,
): Cubic[] {
  const start = parallelAt(curve, distance, t0);
  const end = parallelAt(curve, distance, t1);
  const third = (t1 - t0) / 3;
  const piece = cubic(
    start.point,
    add(start.point, scale(start.velocity, third)),
    add(end.point, scale(end.velocity, -third)),
    end.point,
  );
  if (keepsDistance(curve, piece, distance, tolerance, t0, t1)) return [piece];
  if (depth >= MOST_HALVINGS) {
    throw new GeometryError(
      "offset-unresolved",
      `no parallel curve keeps within ${tolerance} mm of a distance of ${distance} mm near (${start.point.x}, ${start.point.y})`,
    );
  }
  const middle = (t0 + t1) / 2;
  return [
    ...fit(curve, distance, tolerance, t0, middle, depth + 1),
    ...fit(curve, distance, tolerance, middle, t1, depth + 1),
  ];
}

/** Point of the exact parallel curve and its derivative by the curve's own parameter. */
function parallelAt(
  curve: Cubic,
  distance: number,
  t: number,
): { readonly point: Vec2; readonly velocity: Vec2 } {
  const still = Math.hypot(derivativeAt(curve, t).x, derivativeAt(curve, t).y) === 0;
  // At a handle of no length the direction is that of the curve right beside its end.
  const s = still ? (t < 0.5 ? BESIDE : 1 - BESIDE) : t;
  const b = derivativeAt(curve, s);
  const n = Math.hypot(b.x, b.y);
  const bend = cross(b, secondDerivativeAt(curve, s)) / n ** 3;
  const at = pointAt(curve, t);
  return {
    point: { x: at.x - (distance * b.y) / n, y: at.y + (distance * b.x) / n },
    velocity: scale(b, 1 - distance * bend),
  };
}

const SAMPLES = 8;

function keepsDistance(
  curve: Cubic,
  piece: Cubic,
  distance: number,
  tolerance: number,
  t0: number,
  t1: number,
): boolean {
  for (let i = 1; i < SAMPLES; i++) {
    const u = i / SAMPLES;
    const point = pointAt(piece, u);
    const found = nearestOnSegment(curve, point).distance;
    if (Math.abs(found - Math.abs(distance)) > tolerance) return false;
    // On the right side too: a piece across the curve would keep its distance as well.
    const t = t0 + (t1 - t0) * u;
    const foot = pointAt(curve, t);
    const b = derivativeAt(curve, t);
    const aside = dot({ x: point.x - foot.x, y: point.y - foot.y }, { x: -b.y, y: b.x });
    if (aside * distance < 0) return false;
  }
  return true;
}

function tooTight(at: Vec2, radius: number, distance: number): GeometryError {
  return new GeometryError(
    "offset-too-tight",
    `a parallel at ${Math.abs(distance)} mm does not fit inside a bend of radius ${radius} mm at (${at.x}, ${at.y})`,
  );
}

function noDirection(at: Vec2): GeometryError {
  return new GeometryError(
    "offset-no-direction",
    `the curve stands still at (${at.x}, ${at.y}), so it has no side to be parallel on: a cusp, a fold or no length`,
  );
}
