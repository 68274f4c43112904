import fc from "fast-check";
import {
  type Arc,
  arcBetween,
  type Cubic,
  cubic,
  type Line,
  line,
  type Segment,
} from "../../src/plane/segment.js";
import type { Vec2 } from "../../src/plane/vec2.js";

/** One seed for every property of the plane; fast-check prints it with the counterexample. */
export const SEED = 20_260_714;

const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
export const point: fc.Arbitrary<Vec2> = fc.record({ x: coordinate, y: coordinate });

const apart = (a: Vec2, b: Vec2): boolean => Math.hypot(a.x - b.x, a.y - b.y) > 0.01;

export const anyLine: fc.Arbitrary<Line> = fc
  .tuple(point, point)
  .filter(([a, b]) => apart(a, b))
  .map(([a, b]) => line(a, b));

export const anyArc: fc.Arbitrary<Arc> = fc
  .tuple(point, point, fc.double({ min: 0.001, max: 6, noNaN: true }), fc.boolean())
  .filter(([a, b]) => apart(a, b))
  .map(([a, b, turn, left]) => arcBetween(a, b, left ? turn : -turn));

export const anyCubic: fc.Arbitrary<Cubic> = fc
  .tuple(point, point, point, point)
  .map(([a, b, c, d]) => cubic(a, b, c, d));

export const anySegment: fc.Arbitrary<Segment> = fc.oneof(anyLine, anyArc, anyCubic);
