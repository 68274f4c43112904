import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { crossingsAtX, parametersAtX } from "../../src/plane/at-x.js";
import { extremeParameters, segmentBounds } from "../../src/plane/bounds.js";
import { arcAround, cubic, line, pointAt } from "../../src/plane/segment.js";
import { splitSegment } from "../../src/plane/split.js";
import { vec2 } from "../../src/plane/vec2.js";
import { anySegment, between, SEED } from "./arbitraries.js";

describe("parametersAtX", () => {
  it("finds the two heights of a circle", () => {
    const circle = arcAround(vec2(0, 0), 5, 0, 2 * Math.PI);
    expect(parametersAtX(circle, 3).map((t) => pointAt(circle, t).y)).toEqual([
      expect.closeTo(4, 12),
      expect.closeTo(-4, 12),
    ]);
  });

  it("gives one parameter at a vertical tangent, none beyond", () => {
    const half = arcAround(vec2(0, 0), 5, -Math.PI / 2, Math.PI);
    expect(parametersAtX(half, 5)).toEqual([expect.closeTo(0.5, 12)]);
    expect(parametersAtX(half, 5 + 1e-9)).toEqual([]);
    // The cubic of length 2, (0,0) (0,1) (1,1) (1,0), leaves and arrives upright.
    const bow = cubic(vec2(0, 0), vec2(0, 1), vec2(1, 1), vec2(1, 0));
    expect(parametersAtX(bow, 0)).toEqual([0]);
    expect(parametersAtX(bow, 1)).toEqual([1]);
    expect(parametersAtX(bow, 0.5)).toEqual([expect.closeTo(0.5, 14)]);
  });

  it("gives all three where a cubic turns back twice", () => {
    // x(t) = t(2t − 1)(t − 1)·6 + … has x = 0 at 0, ½, 1.
    const s = cubic(vec2(0, 0), vec2(2, 0), vec2(-2, 3), vec2(0, 3));
    expect(parametersAtX(s, 0)).toEqual([0, expect.closeTo(0.5, 14), 1]);
  });

  it("gives both ends of a vertical line, and nothing beside it", () => {
    const upright = line(vec2(3, -1), vec2(3, 7));
    expect(parametersAtX(upright, 3)).toEqual([0, 1]);
    expect(parametersAtX(upright, 3.001)).toEqual([]);
  });

  it("meets its own ends exactly", () => {
    fc.assert(
      fc.property(anySegment, (segment) => {
        expect(parametersAtX(segment, segment.from.x)).toContain(0);
        expect(parametersAtX(segment, segment.to.x)).toContain(1);
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  it("finds the parameter that any point was made from, to rounding of x", () => {
    fc.assert(
      fc.property(anySegment, between(0, 1), (segment, t) => {
        const { minX, maxX } = segmentBounds(segment);
        fc.pre(maxX - minX > 0.01);
        const { x } = pointAt(segment, t);
        const found = parametersAtX(segment, x);
        expect(found.length).toBeGreaterThan(0);
        for (const u of found) expect(Math.abs(pointAt(segment, u).x - x)).toBeLessThan(1e-11);
        const y = pointAt(segment, t).y;
        const nearest = Math.min(...found.map((u) => Math.abs(pointAt(segment, u).y - y)));
        // At a vertical tangent 1e-13 of x is worth its square root in y.
        expect(nearest).toBeLessThan(1e-4);
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  it("counts crossings as a dense polyline does", () => {
    fc.assert(
      fc.property(anySegment, between(-90, 90), (segment, x) => {
        // Away from ends and turns, where a touch to rounding counts as well.
        const marks = [0, 1, ...extremeParameters(segment, "x")];
        fc.pre(marks.every((t) => Math.abs(pointAt(segment, t).x - x) > 1e-6));
        const n = 2000;
        let changes = 0;
        for (let i = 0; i < n; i++) {
          const before = pointAt(segment, i / n).x > x;
          if (before !== pointAt(segment, (i + 1) / n).x > x) changes++;
        }
        const found = parametersAtX(segment, x).length;
        // A polyline can only miss crossings, two at a time, near a turn.
        expect(found).toBeGreaterThanOrEqual(changes);
        expect((found - changes) % 2).toBe(0);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe("crossingsAtX", () => {
  const square = [vec2(0, 0), vec2(4, 0), vec2(4, 4), vec2(0, 4)];
  const path = {
    closed: true,
    segments: square.map((p, i) => line(p, square[(i + 1) % 4] ?? vec2(0, 0))),
  };
  it("lists heights from below and a joint once", () => {
    expect(crossingsAtX(path, 1).map(({ point }) => point.y)).toEqual([0, 4]);
    expect(crossingsAtX(path, 4).map(({ segment, point }) => [segment, point.y])).toEqual([
      [0, 0],
      [1, 4],
    ]);
    expect(crossingsAtX(path, 5)).toEqual([]);
  });
});

describe("splitSegment", () => {
  it("keeps the ends to the last bit and lies on the whole", () => {
    const share = between(0, 1);
    fc.assert(
      fc.property(anySegment, share, share, share, (segment, t0, t1, u) => {
        expect(splitSegment(segment, 0, t1).from).toEqual(segment.from);
        expect(splitSegment(segment, t0, 1).to).toEqual(segment.to);
        const part = splitSegment(segment, t0, t1);
        const p = pointAt(part, u);
        const q = pointAt(segment, t0 + (t1 - t0) * u);
        expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeLessThan(1e-9);
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });
});
