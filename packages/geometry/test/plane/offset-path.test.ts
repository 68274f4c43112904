import { describe, expect, it } from "vitest";
import { FAMILY_NAMES } from "../../src/blade/families.js";
import { makeKnife } from "../../src/blade/knife.js";
import { windingNumber } from "../../src/plane/contains.js";
import { pathLength } from "../../src/plane/length.js";
import { signedArea } from "../../src/plane/measure.js";
import { nearestOnPath } from "../../src/plane/nearest.js";
import { offsetPath } from "../../src/plane/offset-path.js";
import type { Path } from "../../src/plane/path.js";
import { pointAt } from "../../src/plane/segment.js";
import { segmentsFromPathData } from "../../src/plane/svg-path.js";
import { validateOutline } from "../../src/plane/validate.js";

const closed = (d: string): Path => ({ segments: segmentsFromPathData(d), closed: true });
const only = (paths: readonly Path[]): Path => {
  expect(paths).toHaveLength(1);
  return paths[0] as Path;
};

/** Greatest error of the distance from the outline, over dense points of the lines. */
function worst(path: Path, distance: number, lines: readonly Path[]): number {
  let most = 0;
  for (const { segments } of lines) {
    for (const segment of segments) {
      for (let i = 0; i <= 40; i++) {
        const found = nearestOnPath(path, pointAt(segment, i / 40))?.distance ?? Number.NaN;
        most = Math.max(most, Math.abs(found - Math.abs(distance)));
      }
    }
  }
  return most;
}

describe("lines round an outline", () => {
  it("round a square have arcs at its corners, and inside it none", () => {
    const square = closed("M0 0 H10 V10 H0 Z");
    const outer = only(offsetPath(square, 2));
    expect(outer.segments.filter(({ kind }) => kind === "arc")).toHaveLength(4);
    expect(signedArea(outer)).toBeCloseTo(100 + 4 * 10 * 2 + Math.PI * 4, 9);
    const inner = only(offsetPath(square, -2));
    expect(inner.segments).toHaveLength(4);
    expect(signedArea(inner)).toBeCloseTo(36, 9);
    expect(offsetPath(square, -5.5)).toEqual([]);
  });

  it("are trimmed in an inward corner", () => {
    // An L: 12 × 12 less 8 × 8. Outside at 1: the outer corners get arcs, the inner corner none.
    const angle = closed("M0 0 H12 V4 H4 V12 H0 Z");
    const outer = only(offsetPath(angle, 1));
    expect(outer.segments.filter(({ kind }) => kind === "arc")).toHaveLength(5);
    // By Steiner: area + perimeter · 1 + five quarters of a circle, less the square that two strips share at the inner corner.
    expect(signedArea(outer)).toBeCloseTo(80 + 48 - 1 + (5 * Math.PI) / 4, 9);
    expect(validateOutline(outer)).toEqual([]);
    expect(worst(angle, 1, [outer])).toBeLessThan(1e-9);
  });

  it("leave out a fillet that is too tight for them", () => {
    // The same L with a fillet of radius 1 in its inner corner.
    const filleted = closed("M0 0 H12 V4 H5 A1 1 0 0 0 4 5 V12 H0 Z");
    for (const distance of [0.5, 1, 2]) {
      const outer = only(offsetPath(filleted, distance));
      expect(validateOutline(outer)).toEqual([]);
      expect(worst(filleted, distance, [outer])).toBeLessThan(1e-9);
    }
  });

  it("fall in two where a waist is too narrow, and close a hole where a mouth is", () => {
    // Two arcs of radius 1.5 that meet 1 beside their centres, for both rims of a gap of 2: so much lies under each arc.
    const underArc = 1.5 - Math.sqrt(1.25) / 2 - 1.125 * Math.asin(1 / 1.5);
    const waist = closed("M0 0 H10 V4 H20 V0 H30 V10 H20 V6 H10 V10 H0 Z");
    const inner = offsetPath(waist, -1.5);
    expect(inner).toHaveLength(2);
    for (const one of inner) expect(signedArea(one)).toBeCloseTo(7 * 7 + 2 * underArc, 9);
    const mouth = closed("M0 0 H30 V20 H16 V16 H22 V4 H8 V16 H14 V20 H0 Z");
    const outer = offsetPath(mouth, 1.5);
    expect(outer).toHaveLength(2);
    expect(worst(mouth, 1.5, outer)).toBeLessThan(1e-9);
    // The hole is run round clockwise.
    expect(signedArea(outer[1] as Path)).toBeCloseTo(-(11 * 9 + 2 * underArc), 9);
  });

  it("are the outline itself at no distance", () => {
    const square = closed("M0 0 H10 V10 H0 Z");
    expect(offsetPath(square, 0)).toEqual([square]);
  });
});

describe.each(FAMILY_NAMES.map((family) => [family]))("lines round a %s", (family) => {
  const { outline } = makeKnife({
    steel: { name: "1084" },
    blade: {
      outline: { family, edgeLength: 180, heelHeight: 40 },
      ricasso: 12,
      thickness: [{ at: { kind: "heel" }, is: 4 }],
      bevel: { form: "flat", height: "full", edgeThickness: 0.5 },
      edgeAngle: 0.28,
    },
    tang: { form: "hidden", length: 90, heights: { front: 16, middle: 13, butt: 10 }, shoulderRadius: 2 },
  });
  it.each([-2, -0.5, 0.3, 0.5, 1, 2.5, 6])("keep their distance of %s mm and cross nowhere", (distance) => {
    const lines = offsetPath(outline.path, distance);
    const line = only(lines);
    expect(worst(outline.path, distance, lines)).toBeLessThan(1e-4);
    expect(validateOutline(line)).toEqual([]);
    // By Steiner no more than the strip along the outline and a circle.
    const grown = signedArea(line) - signedArea(outline.path);
    expect(Math.sign(grown)).toBe(Math.sign(distance));
    expect(Math.abs(grown)).toBeLessThan(
      Math.abs(distance) * pathLength(outline.path) + Math.PI * distance ** 2 + 1,
    );
    expect(windingNumber(line, { x: 20, y: 20 })).toBe(1);
  });
});
