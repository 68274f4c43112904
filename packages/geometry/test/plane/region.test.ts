import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GeometryError } from "../../src/errors/errors.js";
import { extremeParameters, pathBounds, segmentBounds } from "../../src/plane/bounds.js";
import { depthInside, isInside, windingNumber } from "../../src/plane/contains.js";
import { holeOutsideArea, sharedDiscArea, wallAround, wallBetween } from "../../src/plane/disc.js";
import { flattenPath, flattenSegment } from "../../src/plane/flatten.js";
import { signedArea } from "../../src/plane/measure.js";
import { nearestOnSegment } from "../../src/plane/nearest.js";
import type { Path } from "../../src/plane/path.js";
import { clipPolygons, ringArea, ringsArea } from "../../src/plane/polygon.js";
import { arcAround, cubic, line, pointAt } from "../../src/plane/segment.js";
import { type Vec2, vec2 } from "../../src/plane/vec2.js";
import { anySegment, between, point, SEED } from "./arbitraries.js";

const polygon = (...corners: Vec2[]): Path => ({
  closed: true,
  segments: corners.map((p, i) => line(p, corners[(i + 1) % corners.length] as Vec2)),
});
const rectangle = polygon(vec2(0, 0), vec2(60, 0), vec2(60, 20), vec2(0, 20));
const disc = (x: number, y: number, radius: number): { centre: Vec2; radius: number } => ({
  centre: vec2(x, y),
  radius,
});

describe("bounds", () => {
  it("are those of a dense scan, and never less", () => {
    fc.assert(
      fc.property(anySegment, (segment) => {
        const box = segmentBounds(segment);
        const scan = Array.from({ length: 2001 }, (_, i) => pointAt(segment, i / 2000));
        const right = Math.max(...scan.map(({ x }) => x));
        const top = Math.max(...scan.map(({ y }) => y));
        expect(box.maxX).toBeGreaterThanOrEqual(right - 1e-12);
        expect(box.maxX - right).toBeLessThan(1e-3);
        expect(box.maxY).toBeGreaterThanOrEqual(top - 1e-12);
        expect(box.maxY - top).toBeLessThan(1e-3);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("of a circle and of nothing", () => {
    const circle = arcAround(vec2(1, 2), 3, 0.7, 2 * Math.PI);
    expect(segmentBounds(circle)).toEqual({
      minX: expect.closeTo(-2, 13),
      minY: expect.closeTo(-1, 13),
      maxX: expect.closeTo(4, 13),
      maxY: expect.closeTo(5, 13),
    });
    expect(extremeParameters(circle, "x")).toHaveLength(2);
    expect(pathBounds({ segments: [], closed: true }).minX).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("flattening", () => {
  it("keeps every chord within the error, with little to spare on arcs", () => {
    fc.assert(
      fc.property(anySegment, between(0.001, 1), (segment, error) => {
        const points = flattenSegment(segment, error);
        const n = points.length - 1;
        let worst = 0;
        for (let i = 0; i < n; i++) {
          const chord = line(points[i] as Vec2, points[i + 1] as Vec2);
          for (const u of [0.25, 0.5, 0.75]) {
            worst = Math.max(worst, nearestOnSegment(chord, pointAt(segment, (i + u) / n)).distance);
          }
        }
        expect(worst).toBeLessThanOrEqual(error + 1e-12);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("does not repeat the first corner of a closed path, and refuses to be endless", () => {
    expect(flattenPath(rectangle, 0.1)).toHaveLength(4);
    expect(flattenPath({ segments: rectangle.segments.slice(0, 3), closed: false }, 0.1)).toHaveLength(4);
    const curve = cubic(vec2(0, 0), vec2(0, 90), vec2(90, 90), vec2(90, 0));
    for (const error of [0, -1, Number.NaN, 1e-12]) {
      expect(() => flattenSegment(curve, error)).toThrow(GeometryError);
    }
  });
});

describe("inside and outside", () => {
  const ring: Path = { segments: [arcAround(vec2(0, 0), 10, 0.4, 2 * Math.PI)], closed: true };

  it("is the distance to the centre for a circle", () => {
    fc.assert(
      fc.property(point, (p) => {
        const q = vec2(p.x / 5, p.y / 5);
        expect(depthInside(ring, q)).toBeCloseTo(10 - Math.hypot(q.x, q.y), 11);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it("counts a joint or an upright side above the point once", () => {
    const diamond = polygon(vec2(0, -5), vec2(5, 0), vec2(0, 5), vec2(-5, 0));
    expect(windingNumber(diamond, vec2(0, 0))).toBe(1);
    expect(windingNumber(diamond, vec2(0, -6))).toBe(0);
    expect(windingNumber(diamond, vec2(0, 6))).toBe(0);
    expect(windingNumber(diamond, vec2(5, -1))).toBe(0);
    expect(windingNumber(rectangle, vec2(60, -1))).toBe(0);
    expect(windingNumber(polygon(vec2(0, 0), vec2(0, 20), vec2(60, 20), vec2(60, 0)), vec2(9, 9))).toBe(-1);
    expect(isInside(rectangle, vec2(60, 10))).toBe(true);
    expect(() => windingNumber({ segments: rectangle.segments, closed: false }, vec2(0, 0))).toThrow(
      GeometryError,
    );
  });
});

describe("holes in steel", () => {
  it("tell the wall that is left", () => {
    expect(wallAround(disc(30, 8, 3), rectangle)).toBeCloseTo(5, 12);
    expect(wallAround(disc(2, 8, 3), rectangle)).toBeCloseTo(-1, 12);
    expect(wallBetween(disc(0, 0, 3), disc(10, 0, 4))).toBeCloseTo(3, 12);
    expect(holeOutsideArea(disc(30, 8, 3), rectangle)).toBe(0);
    expect(holeOutsideArea(disc(3, 8, 3), rectangle)).toBe(0);
  });

  it("tell how much lies outside: a circular segment, by r²(φ − sin φ cos φ), or all of it", () => {
    // 1 mm of a radius of 3 is out: cos φ = 2/3.
    const phi = Math.acos(2 / 3);
    const segment = 9 * (phi - Math.sin(phi) * Math.cos(phi));
    expect(Math.abs(holeOutsideArea(disc(2, 8, 3), rectangle) / segment - 1)).toBeLessThan(1e-3);
    expect(holeOutsideArea(disc(200, 8, 3), rectangle) / (9 * Math.PI)).toBeCloseTo(1, 3);
  });

  it("tell how much two holes share: the lens of two equal circles a radius apart, r²(2π/3 − √3/2)", () => {
    expect(sharedDiscArea(disc(0, 0, 2), disc(2, 0, 2))).toBeCloseTo(
      4 * ((2 * Math.PI) / 3 - Math.sqrt(3) / 2),
      12,
    );
    expect(sharedDiscArea(disc(0, 0, 2), disc(4, 0, 2))).toBe(0);
    expect(sharedDiscArea(disc(0, 0, 5), disc(1, 0, 2))).toBeCloseTo(4 * Math.PI, 12);
  });
});

describe("polygon clipping", () => {
  const square = (x: number, y: number, side = 1): Vec2[] => [
    vec2(x, y),
    vec2(x + side, y),
    vec2(x + side, y + side),
    vec2(x, y + side),
  ];

  it("gives the areas of overlapping squares", () => {
    const [a, b] = [[square(0, 0)], [square(0.5, 0.5)]];
    expect(ringsArea(clipPolygons("intersection", a, b))).toBeCloseTo(0.25, 12);
    expect(ringsArea(clipPolygons("union", a, b))).toBeCloseTo(1.75, 12);
    expect(ringsArea(clipPolygons("difference", a, b))).toBeCloseTo(0.75, 12);
  });

  it("gives a hole as a clockwise ring", () => {
    const rings = clipPolygons("difference", [square(0, 0, 3)], [square(1, 1)]);
    expect(rings.map(ringArea).sort((p, q) => p - q)).toEqual([
      expect.closeTo(-1, 12),
      expect.closeTo(9, 12),
    ]);
  });

  it("bears edges that all but coincide: union and intersection always add up to both", () => {
    const nearly = between(-1, 1).map((v) => Math.sign(v) * 10 ** (-4 - 10 * Math.abs(v)));
    fc.assert(
      fc.property(fc.array(nearly, { minLength: 8, maxLength: 8 }), (noise) => {
        const a = square(0, 0, 10);
        const b = square(0, 0, 10).map((p, i) => vec2(p.x + (noise[i] ?? 0), p.y + (noise[i + 4] ?? 0)));
        const sum =
          ringsArea(clipPolygons("union", [a], [b])) + ringsArea(clipPolygons("intersection", [a], [b]));
        expect(Math.abs(sum - ringArea(a) - ringArea(b))).toBeLessThan(1e-3);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it("refuses corners that are nowhere", () => {
    expect(() =>
      clipPolygons("union", [[vec2(Number.NaN, 0), vec2(1, 0), vec2(0, 1)]], [square(0, 0)]),
    ).toThrow(GeometryError);
  });

  it("agrees with the curves' own area as the chords get finer", () => {
    const lens: Path = {
      closed: true,
      segments: [
        arcAround(vec2(0, 0), 10, 0, Math.PI),
        cubic(vec2(-10, 0), vec2(-4, -9), vec2(6, -9), vec2(10, 0)),
      ],
    };
    const exact = signedArea(lens);
    for (const error of [1e-2, 1e-4]) {
      // A chord off by at most the error all along loses no more than error times length.
      expect(Math.abs(ringArea(flattenPath(lens, error)) - exact)).toBeLessThan(error * 60);
    }
  });
});
