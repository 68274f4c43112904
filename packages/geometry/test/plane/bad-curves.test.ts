import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GeometryError } from "../../src/errors/errors.js";
import { crossingsAtX, parametersAtX } from "../../src/plane/at-x.js";
import { extremeParameters, segmentBounds } from "../../src/plane/bounds.js";
import { isInside } from "../../src/plane/contains.js";
import { flattenSegment } from "../../src/plane/flatten.js";
import { segmentLength } from "../../src/plane/length.js";
import { areaMoments } from "../../src/plane/measure.js";
import { splitAtXExtremes } from "../../src/plane/monotone.js";
import { type Cubic, cubic, endTangent, line, pointAt } from "../../src/plane/segment.js";
import { selfCrossing } from "../../src/plane/self-crossing.js";
import { splitSegment } from "../../src/plane/split.js";
import { vec2 } from "../../src/plane/vec2.js";
import { SEED } from "./arbitraries.js";

// Curves on which general curve code goes wrong. Meetings, nearest points, lengths and parallels of them are held to
// their numbers beside their own tests; here is everything else that an outline asks of a curve.
const CUSP = cubic(vec2(0, 0), vec2(10, 10), vec2(0, 10), vec2(10, 0));
const DOUBLED = cubic(vec2(0, 0), vec2(20, 0), vec2(-10, 0), vec2(10, 0));
const BARE = cubic(vec2(0, 0), vec2(0, 0), vec2(10, 10), vec2(10, 10));
const POINT = cubic(vec2(1, 1), vec2(1, 1), vec2(1, 1), vec2(1, 1));

describe("a cusp", () => {
  it("has its bounds, its level tangent and the area under it", () => {
    // y = 30 t(1 − t): 7.5 at the middle. x = 30t − 60t² + 40t³ never turns back.
    const box = segmentBounds(CUSP);
    for (const [found, wanted] of [
      [box.minX, 0],
      [box.maxX, 10],
      [box.minY, 0],
      [box.maxY, 7.5],
    ] as const) {
      expect(found).toBeCloseTo(wanted, 9);
    }
    expect(extremeParameters(CUSP, "y")).toEqual([0.5]);
    // ∫ y dx by hand: x′ = 30(1 − 2t)², y = 30t(1 − t), so ∫ 900 (1 − 2t)² t(1 − t) dt = 900/30.
    const closed = { segments: [CUSP, line(vec2(10, 0), vec2(0, 0))], closed: true };
    expect(Math.abs(areaMoments(closed).area)).toBeCloseTo(30, 9);
    expect(isInside(closed, vec2(5, 3))).toBe(true);
    expect(isInside(closed, vec2(1, 5))).toBe(false);
  });

  it("splits at its point, and each half keeps its end and has a tangent there", () => {
    const [first, second] = [splitSegment(CUSP, 0, 0.5), splitSegment(CUSP, 0.5, 1)];
    expect(first.to).toEqual(second.from);
    expect(first.to.y).toBeCloseTo(7.5, 12);
    expect(endTangent(first, "to")?.y).toBeCloseTo(1, 9);
    expect(endTangent(second, "from")?.y).toBeCloseTo(-1, 9);
  });
});

describe("a doubled-back line", () => {
  it("passes x = 5 three times, and its pieces go one way each", () => {
    expect(parametersAtX(DOUBLED, 5)).toHaveLength(3);
    const pieces = splitAtXExtremes(DOUBLED);
    expect(pieces).toHaveLength(3);
    // x = 60t − 150t² + 100t³ turns where 300t² − 300t + 60 = 0.
    const turn = (5 - Math.sqrt(5)) / 10;
    expect(pieces[0]?.to.x).toBeCloseTo(60 * turn - 150 * turn ** 2 + 100 * turn ** 3, 9);
    // Both turns lie inside what its ends span.
    expect(segmentBounds(DOUBLED)).toEqual({ minX: 0, minY: 0, maxX: 10, maxY: 0 });
  });

  it("encloses no area, and is told as crossing itself", () => {
    const closed = {
      segments: [DOUBLED, line(vec2(10, 0), vec2(10, 5)), line(vec2(10, 5), vec2(0, 0))],
      closed: true,
    };
    expect(areaMoments(closed).area).toBeCloseTo(25, 9);
    expect(selfCrossing(DOUBLED)).toBeDefined();
  });
});

describe("handles of no length", () => {
  it("have tangents all the same, and the straight line's bounds and crossings", () => {
    for (const end of ["from", "to"] as const) {
      const tangent = endTangent(BARE, end);
      expect(tangent?.x).toBeCloseTo(Math.SQRT1_2, 12);
      expect(tangent?.y).toBeCloseTo(Math.SQRT1_2, 12);
    }
    expect(segmentBounds(BARE)).toEqual({ minX: 0, minY: 0, maxX: 10, maxY: 10 });
    const closed = {
      segments: [BARE, line(vec2(10, 10), vec2(0, 10)), line(vec2(0, 10), vec2(0, 0))],
      closed: true,
    };
    expect(crossingsAtX(closed, 4).map(({ point }) => point.y)).toEqual([
      expect.closeTo(4, 9),
      expect.closeTo(10, 9),
    ]);
    expect(areaMoments(closed).area).toBeCloseTo(50, 9);
  });
});

describe("a curve of no length", () => {
  it("is a point with bounds, and no direction", () => {
    expect(segmentBounds(POINT)).toEqual({ minX: 1, minY: 1, maxX: 1, maxY: 1 });
    expect(endTangent(POINT, "from")).toBeUndefined();
    expect(segmentLength(POINT)).toBe(0);
    expect(selfCrossing(POINT)).toBeUndefined();
  });
});

describe("any degenerate curve", () => {
  const corner = fc.constantFrom(
    vec2(0, 0),
    vec2(10, 0),
    vec2(10, 10),
    vec2(5, 5),
    vec2(5, 5 + 1e-13),
    vec2(-3, 7),
  );
  const degenerate: fc.Arbitrary<Cubic> = fc
    .tuple(corner, corner, corner, corner)
    .map(([a, b, c, d]) => cubic(a, b, c, d));

  it("gives numbers, or an error with a name", () => {
    fc.assert(
      fc.property(degenerate, (curve) => {
        const numbers = [
          segmentLength(curve),
          ...Object.values(segmentBounds(curve)),
          ...extremeParameters(curve, "x"),
          ...parametersAtX(curve, 5),
          ...flattenSegment(curve, 0.01).flatMap(({ x, y }) => [x, y]),
          ...splitAtXExtremes(curve).flatMap(({ from, to }) => [from.x, from.y, to.x, to.y]),
        ];
        expect(numbers.filter((value) => !Number.isFinite(value))).toEqual([]);
        const box = segmentBounds(curve);
        for (let i = 0; i <= 20; i++) {
          const { x, y } = pointAt(curve, i / 20);
          expect(x >= box.minX - 1e-9 && x <= box.maxX + 1e-9).toBe(true);
          expect(y >= box.minY - 1e-9 && y <= box.maxY + 1e-9).toBe(true);
        }
        try {
          const { area } = areaMoments({ segments: [curve, line(curve.to, curve.from)], closed: true });
          expect(Number.isFinite(area)).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(GeometryError);
        }
      }),
      { seed: SEED, numRuns: 1500 },
    );
  });
});
