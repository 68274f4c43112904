import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GeometryError } from "../../src/errors/errors.js";
import { areaMoments, centroid, signedArea } from "../../src/plane/measure.js";
import type { Path } from "../../src/plane/path.js";
import {
  arcAround,
  arcBetween,
  cubic,
  line,
  reverseSegment,
  type Segment,
  translateSegment,
} from "../../src/plane/segment.js";
import { splitSegment } from "../../src/plane/split.js";
import { type Vec2, vec2 } from "../../src/plane/vec2.js";
import { anySegment, between, SEED } from "./arbitraries.js";

const closed = (...segments: Segment[]): Path => ({ segments, closed: true });
const polygon = (...corners: Vec2[]): Path =>
  closed(...corners.map((p, i) => line(p, corners[(i + 1) % corners.length] as Vec2)));
const withChord = (segment: Segment): Path => closed(segment, line(segment.to, segment.from));

describe("areas by closed form", () => {
  it("the widely published shoelace pentagon: 30, clockwise, centroid (7.1666667, 7.6111111)", () => {
    // Pentagon: from memory, a common textbook example; the arithmetic is exact.
    const path = polygon(vec2(3, 4), vec2(5, 11), vec2(12, 8), vec2(9, 5), vec2(5, 6));
    expect(signedArea(path)).toBeCloseTo(-30, 12);
    expect(centroid(path).x).toBeCloseTo(7.1666667, 7);
    expect(centroid(path).y).toBeCloseTo(7.6111111, 7);
  });

  it("the cubic (0,0) (0,1) (1,1) (1,0) over its chord: −3/5", () => {
    expect(signedArea(withChord(cubic(vec2(0, 0), vec2(0, 1), vec2(1, 1), vec2(1, 0))))).toBeCloseTo(
      -0.6,
      15,
    );
  });

  it("under y = x² from 0 to 1: 1/3", () => {
    const parabola = cubic(vec2(0, 0), vec2(1 / 3, 0), vec2(2 / 3, 1 / 3), vec2(1, 1));
    const path = closed(parabola, line(vec2(1, 1), vec2(1, 0)), line(vec2(1, 0), vec2(0, 0)));
    expect(signedArea(path)).toBeCloseTo(-1 / 3, 15);
  });

  it("between (0,0) (1,2) (3,3) (4,0) and its chord: 5.25", () => {
    expect(signedArea(withChord(cubic(vec2(0, 0), vec2(1, 2), vec2(3, 3), vec2(4, 0))))).toBeCloseTo(
      -5.25,
      14,
    );
  });

  it("the sector under the one-cubic quarter circle: 0.7856180832", () => {
    const k = (4 / 3) * (Math.SQRT2 - 1);
    const arc = cubic(vec2(1, 0), vec2(1, k), vec2(k, 1), vec2(0, 1));
    const path = closed(arc, line(vec2(0, 1), vec2(0, 0)), line(vec2(0, 0), vec2(1, 0)));
    expect(signedArea(path)).toBeCloseTo(0.7856180832, 10);
  });
});

describe("moments by closed form", () => {
  it("rectangle b × h with a corner at the origin: b·h³/3 and the like", () => {
    const { area, first, second } = areaMoments(polygon(vec2(0, 0), vec2(4, 0), vec2(4, 2), vec2(0, 2)));
    expect(area).toBeCloseTo(8, 13);
    expect(first).toEqual({ x: expect.closeTo(16, 12), y: expect.closeTo(8, 12) });
    expect(second.xx).toBeCloseTo((2 * 4 ** 3) / 3, 12);
    expect(second.yy).toBeCloseTo((4 * 2 ** 3) / 3, 12);
    expect(second.xy).toBeCloseTo((4 * 2) ** 2 / 4, 12);
  });

  it("circle: π·r⁴/4 about its centre, wherever it lies", () => {
    const path = closed(arcAround(vec2(30, -7), 5, 1, 2 * Math.PI));
    const { area, first, second } = areaMoments(path);
    const own = (Math.PI * 5 ** 4) / 4;
    expect(area / (Math.PI * 25)).toBeCloseTo(1, 14);
    expect(first.x / area).toBeCloseTo(30, 12);
    expect(second.xx / (own + area * 900)).toBeCloseTo(1, 13);
    expect(second.yy / (own + area * 49)).toBeCloseTo(1, 13);
    expect(second.xy / (area * 30 * -7)).toBeCloseTo(1, 13);
  });

  it("half circle: centroid 4r/3π above its diameter", () => {
    const half = arcAround(vec2(0, 0), 3, 0, Math.PI);
    expect(centroid(withChord(half)).y).toBeCloseTo(4 / Math.PI, 13);
  });

  it("circular segment of a flat arc: ⅔·chord·sagitta to leading order, however great the radius", () => {
    for (const sagitta of [1e-2, 1e-4, 1e-6]) {
      const flat = arcBetween(vec2(0, 0), vec2(100, 0), 4 * Math.atan2(sagitta, 50));
      expect(signedArea(withChord(flat)) / ((2 / 3) * 100 * sagitta)).toBeCloseTo(1, 6);
    }
  });
});

describe("what must always hold", () => {
  it("reversed is negative; moved keeps its area; split adds up", () => {
    fc.assert(
      fc.property(anySegment, between(0.01, 0.99), (segment, t) => {
        const path = withChord(segment);
        const whole = areaMoments(path);
        const back = areaMoments(closed(...[...path.segments].reverse().map(reverseSegment)));
        const moved = areaMoments(closed(...path.segments.map((s) => translateSegment(s, 40, -9))));
        const parts = areaMoments(
          closed(splitSegment(segment, 0, t), splitSegment(segment, t, 1), line(segment.to, segment.from)),
        );
        const size = 1e5;
        expect(Math.abs(back.area + whole.area)).toBeLessThan(1e-13 * size);
        expect(Math.abs(moved.area - whole.area)).toBeLessThan(1e-13 * size);
        expect(Math.abs(moved.first.x - whole.first.x - 40 * whole.area)).toBeLessThan(1e-13 * size * 200);
        expect(Math.abs(parts.second.xx - whole.second.xx)).toBeLessThan(1e-12 * size * 4e4);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it("refuses an open path and a path without area", () => {
    const code = (run: () => unknown): string => {
      try {
        run();
      } catch (error) {
        if (error instanceof GeometryError) return error.code;
      }
      return "";
    };
    const stroke = line(vec2(0, 0), vec2(1, 0));
    expect(code(() => signedArea({ segments: [stroke], closed: false }))).toBe("path-open");
    expect(code(() => centroid(closed(stroke, reverseSegment(stroke))))).toBe("no-area");
  });
});
