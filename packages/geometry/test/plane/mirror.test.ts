import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { areaMoments, signedArea } from "../../src/plane/measure.js";
import { mirrorPath, mirrorPoint, mirrorSegment } from "../../src/plane/mirror.js";
import { nearestOnSegment } from "../../src/plane/nearest.js";
import { arcAround, derivativeAt, pointAt } from "../../src/plane/segment.js";
import { segmentsFromPathData } from "../../src/plane/svg-path.js";
import { validateOutline } from "../../src/plane/validate.js";
import { anySegment, SEED } from "./arbitraries.js";

describe("a curve seen from the other face", () => {
  it("has every point of the curve at −x, at the same parameter, and comes back when seen again", () => {
    fc.assert(
      fc.property(anySegment, (segment) => {
        const mirrored = mirrorSegment(segment);
        expect(mirrored.from).toEqual(mirrorPoint(segment.from));
        expect(mirrored.to).toEqual(mirrorPoint(segment.to));
        for (let i = 0; i <= 20; i++) {
          const [p, q] = [pointAt(segment, i / 20), pointAt(mirrored, i / 20)];
          const [d, e] = [derivativeAt(segment, i / 20), derivativeAt(mirrored, i / 20)];
          const size = 1e-13 * (1 + Math.abs(p.x) + Math.abs(p.y) + Math.hypot(d.x, d.y));
          expect(Math.abs(q.x + p.x)).toBeLessThan(size);
          expect(Math.abs(q.y - p.y)).toBeLessThan(size);
          expect(Math.abs(e.x + d.x)).toBeLessThan(size);
          expect(Math.abs(e.y - d.y)).toBeLessThan(size);
        }
        const back = mirrorSegment(mirrored);
        expect(nearestOnSegment(segment, pointAt(back, 0.3)).distance).toBeLessThan(1e-9);
        if (segment.kind !== "arc") expect(back).toEqual(segment);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("has an arc that turns the other way: a quarter from (2, 0) up to (0, 2) becomes one from (−2, 0) down to up", () => {
    const mirrored = mirrorSegment(arcAround({ x: 0, y: 0 }, 2, 0, Math.PI / 2));
    expect(mirrored).toMatchObject({ kind: "arc", sweep: -Math.PI / 2, startAngle: Math.PI, radius: 2 });
    const middle = pointAt(mirrored, 0.5);
    expect(middle.x).toBeCloseTo(-Math.SQRT2, 14);
    expect(middle.y).toBeCloseTo(Math.SQRT2, 14);
  });
});

it("an outline seen from the other face is a sound outline of the same moments but for the sign of x", () => {
  const outline = {
    segments: segmentsFromPathData(
      "M0 0 H80 C100 0 115 8 120 20 A60 60 0 0 1 70 30 H-60 A10 10 0 0 1 -60 10 H0 Z",
    ),
    closed: true,
  };
  const mirrored = mirrorPath(outline);
  expect(validateOutline(mirrored)).toEqual([]);
  expect(signedArea(mirrored)).toBeCloseTo(signedArea(outline), 9);
  const [before, after] = [areaMoments(outline), areaMoments(mirrored)];
  expect(after.first.x).toBeCloseTo(-before.first.x, 6);
  expect(after.first.y).toBeCloseTo(before.first.y, 6);
  expect(after.second.xy).toBeCloseTo(-before.second.xy, 4);
});
