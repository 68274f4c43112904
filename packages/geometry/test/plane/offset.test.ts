import { Bezier } from "bezier-js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GeometryError } from "../../src/errors/errors.js";
import { nearestOnSegment } from "../../src/plane/nearest.js";
import { offsetSegment } from "../../src/plane/offset.js";
import {
  arcBetween,
  type Cubic,
  cubic,
  derivativeAt,
  line,
  pointAt,
  type Segment,
  secondDerivativeAt,
} from "../../src/plane/segment.js";
import { cross, vec2 } from "../../src/plane/vec2.js";
import { anyCubic, anySegment, between, SEED } from "./arbitraries.js";

const codeOf = (make: () => unknown): string => {
  try {
    make();
  } catch (error) {
    if (error instanceof GeometryError) return error.code;
    throw error;
  }
  return "none";
};

/** How far a parallel is from keeping its distance, over points of it. */
function worst(segment: Segment, distance: number, pieces: readonly Segment[]): number {
  let most = 0;
  for (const piece of pieces) {
    for (let i = 0; i <= 50; i++) {
      const found = nearestOnSegment(segment, pointAt(piece, i / 50)).distance;
      most = Math.max(most, Math.abs(found - Math.abs(distance)));
    }
  }
  return most;
}

/** Least radius to the side of the offset, by a dense scan. */
function leastRadius(curve: Cubic, distance: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= 4000; i++) {
    const b = derivativeAt(curve, i / 4000);
    const bend =
      (cross(b, secondDerivativeAt(curve, i / 4000)) / Math.hypot(b.x, b.y) ** 3) * Math.sign(distance);
    if (bend > 0) least = Math.min(least, 1 / bend);
  }
  return least;
}

describe("parallel curves", () => {
  it("of lines and arcs are lines and arcs, exactly", () => {
    expect(offsetSegment(line(vec2(0, 0), vec2(8, 0)), 2)).toEqual([line(vec2(0, 2), vec2(8, 2))]);
    const [inner] = offsetSegment(arcBetween(vec2(10, 0), vec2(0, 10), Math.PI / 2), 4);
    expect(inner).toMatchObject({ kind: "arc", sweep: Math.PI / 2 });
    expect(inner?.kind === "arc" ? inner.radius : 0).toBeCloseTo(6, 12);
    const [outer] = offsetSegment(arcBetween(vec2(10, 0), vec2(0, 10), Math.PI / 2), -4);
    expect(outer?.from.x).toBeCloseTo(14, 12);
  });

  it("of gentle cubics keep their distance, on the asked side, and join without a gap", () => {
    fc.assert(
      fc.property(anyCubic, between(-8, 8), (curve, distance) => {
        if (Math.abs(distance) < 0.1) return;
        let pieces: readonly Segment[];
        try {
          pieces = offsetSegment(curve, distance, 1e-3);
        } catch (error) {
          // A bend that is too tight is told, and there is one.
          expect(error).toBeInstanceOf(GeometryError);
          if ((error as GeometryError).code === "offset-too-tight") {
            expect(leastRadius(curve, distance)).toBeLessThan(Math.abs(distance) * 1.001);
          }
          return;
        }
        expect(leastRadius(curve, distance)).toBeGreaterThan(Math.abs(distance) * 0.999);
        for (const [i, piece] of pieces.entries()) {
          expect([piece.from, piece.to].every((p) => Number.isFinite(p.x + p.y))).toBe(true);
          if (i > 0) expect(piece.from).toEqual(pieces[i - 1]?.to);
        }
        const first = pieces[0];
        const d = derivativeAt(curve, 0);
        if (first !== undefined && Math.hypot(d.x, d.y) > 0) {
          const side = cross(d, { x: first.from.x - curve.from.x, y: first.from.y - curve.from.y });
          expect(Math.sign(side)).toBe(Math.sign(distance));
        }
      }),
      { seed: SEED, numRuns: 400 },
    );
  });

  it("is closer than bezier-js's own, a few thousandths of a mm off on gentle curves", () => {
    const belly = cubic(vec2(0, 0), vec2(60, 0), vec2(110, 10), vec2(140, 40));
    const own = offsetSegment(belly, 3, 1e-5);
    expect(worst(belly, 3, own)).toBeLessThan(2e-5);
    const theirs = new Bezier(0, 0, 60, 0, 110, 10, 140, 40).offset(-3);
    const curves = (Array.isArray(theirs) ? theirs : []).map(({ points: [a, b, c, d] }) =>
      cubic(a as Bezier["points"][0], b ?? vec2(0, 0), c ?? vec2(0, 0), d ?? vec2(0, 0)),
    );
    expect(curves.length).toBeGreaterThan(0);
    expect(worst(belly, 3, curves)).toBeGreaterThan(2e-5);
  });
});

describe("parallels that cannot be", () => {
  // A bow that bends most at its middle, (45, −15): |B′| = 90 and |B″| = 120 there, so with a radius of 90²/120 = 67.5.
  const bow = cubic(vec2(0, 0), vec2(30, -20), vec2(60, -20), vec2(90, 0));
  const RADIUS = 67.5;

  it("inside a bend that is too tight are named, with the radius and the place", () => {
    expect(codeOf(() => offsetSegment(bow, RADIUS * 1.001))).toBe("offset-too-tight");
    expect(codeOf(() => offsetSegment(bow, RADIUS * 0.999, 0.01))).toBe("none");
    expect(codeOf(() => offsetSegment(bow, -10 * RADIUS, 0.01))).toBe("none");
    expect(() => offsetSegment(bow, RADIUS * 1.0001)).toThrow(
      /inside a bend of radius 67\.5\d* mm at \(4[45]/,
    );
    const arc = arcBetween(vec2(10, 0), vec2(0, 10), Math.PI / 2);
    expect(codeOf(() => offsetSegment(arc, 10))).toBe("offset-too-tight");
    expect(codeOf(() => offsetSegment(arc, 9.99))).toBe("none");
  });

  it("of a cusp, of a doubled-back line and of nothing are named", () => {
    const cusp = cubic(vec2(0, 0), vec2(10, 10), vec2(0, 10), vec2(10, 0));
    const doubled = cubic(vec2(0, 0), vec2(20, 0), vec2(-10, 0), vec2(10, 0));
    const nothing = cubic(vec2(1, 1), vec2(1, 1), vec2(1, 1), vec2(1, 1));
    for (const curve of [cusp, doubled, nothing, line(vec2(2, 2), vec2(2, 2))]) {
      expect(codeOf(() => offsetSegment(curve, 1))).toBe("offset-no-direction");
    }
  });

  it("at handles of no length are right on the outside and named on the inside", () => {
    const straight = cubic(vec2(0, 0), vec2(0, 0), vec2(10, 0), vec2(10, 0));
    expect(worst(straight, 2, offsetSegment(straight, 2))).toBeLessThan(1e-9);
    // Toward a handle of no length the bend has no least radius.
    const bent = cubic(vec2(0, 0), vec2(0, 0), vec2(30, 0), vec2(60, 30));
    expect(codeOf(() => offsetSegment(bent, 2))).toBe("offset-too-tight");
    expect(worst(bent, -2, offsetSegment(bent, -2, 1e-3))).toBeLessThan(1.5e-3);
  });

  it("never give a number that is not one", () => {
    const corner = fc.constantFrom(vec2(0, 0), vec2(10, 0), vec2(10, 10), vec2(5, 5), vec2(0, 1e-12));
    const degenerate = fc.tuple(corner, corner, corner, corner).map(([a, b, c, d]) => cubic(a, b, c, d));
    fc.assert(
      fc.property(fc.oneof(degenerate, anySegment), between(-20, 20), (segment, distance) => {
        let pieces: readonly Segment[] = [];
        const code = codeOf(() => {
          pieces = offsetSegment(segment, distance, 1e-2);
        });
        expect(["none", "offset-too-tight", "offset-no-direction", "offset-unresolved"]).toContain(code);
        for (const piece of pieces) {
          for (const t of [0, 0.3, 1]) {
            const p = pointAt(piece, t);
            expect(Number.isFinite(p.x) && Number.isFinite(p.y)).toBe(true);
          }
        }
      }),
      { seed: SEED, numRuns: 600 },
    );
  });
});
