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

/** Even over the range: fc.double is even over bit patterns, so nearly all of its values are next to nothing. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.noBias(fc.integer({ min: 0, max: 1_000_000 })).map((i) => min + ((max - min) * i) / 1_000_000);

const coordinate = between(-100, 100);
export const point: fc.Arbitrary<Vec2> = fc.record({ x: coordinate, y: coordinate });

const apart = (a: Vec2, b: Vec2): boolean => Math.hypot(a.x - b.x, a.y - b.y) > 0.01;

export const anyLine: fc.Arbitrary<Line> = fc
  .tuple(point, point)
  .filter(([a, b]) => apart(a, b))
  .map(([a, b]) => line(a, b));

export const anyArc: fc.Arbitrary<Arc> = fc
  .tuple(point, point, between(0.001, 6), fc.boolean())
  .filter(([a, b]) => apart(a, b))
  .map(([a, b, turn, left]) => arcBetween(a, b, left ? turn : -turn));

export const anyCubic: fc.Arbitrary<Cubic> = fc
  .tuple(point, point, point, point)
  .filter(([a, b, c, d]) => apart(a, b) || apart(b, c) || apart(c, d))
  .map(([a, b, c, d]) => cubic(a, b, c, d));

export const anySegment: fc.Arbitrary<Segment> = fc.oneof(anyLine, anyArc, anyCubic);
