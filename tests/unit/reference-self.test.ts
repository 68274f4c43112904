import type { KnifeSpec, Outline, Segment } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { referenceBody } from "../reference/body.js";
import { integrateBody } from "../reference/integrate.js";
import { makeLaw } from "../reference/law.js";
import { makeNearest } from "../reference/nearest.js";

// The reference is only worth something if it is right itself: here it is held against numbers done by hand.

function rectangle(length: number, height: number): Outline {
  const corners = [
    { x: 0, y: 0 },
    { x: length, y: 0 },
    { x: length, y: height },
    { x: 0, y: height },
  ];
  const sides = corners.map((from, i): Segment => ({ kind: "line", from, to: corners[(i + 1) % 4] ?? from }));
  const [edge, front, spine, heelFace] = sides.map((side) => [side]);
  return {
    runs: {
      edge: edge ?? [],
      front: front ?? [],
      spine: spine ?? [],
      tangTop: [],
      butt: [],
      tangBottom: [],
      heelFace: heelFace ?? [],
    },
    path: { segments: sides, closed: true },
    edgeLength: length,
    handleFront: 0,
    butt: 0,
    ricasso: 0,
  };
}

function knife(blade: Partial<KnifeSpec["blade"]>): KnifeSpec {
  return {
    steel: { name: "plain", density: 0.00785 },
    blade: {
      outline: { runs: { edge: "M0 0 L200 0" } },
      thickness: [{ at: { kind: "heel" }, is: 4 }],
      bevel: { form: "flat", height: "full", edgeThickness: 0.4 },
      // So steep that the planes take nothing off.
      edgeAngle: Math.atan(1e9),
      ...blade,
    },
    tang: { form: "full" },
  };
}

describe("the brute-force reference", () => {
  test("flat section 30 high, 4 and 0.4 thick, 200 long: 66 mm² and 13 200 mm³", () => {
    // Trapezoid (4 + 0.4)/2 · 30, times the length.
    const moments = integrateBody(referenceBody(knife({}), rectangle(200, 30)));
    expect(moments.volume / 13_200 - 1).toBeCloseTo(0, 8);
    expect(moments.x / moments.volume).toBeCloseTo(100, 6);
    // Trapezoid: centroid above the edge (h/3)(b + 2a)/(a + b) with a the spine.
    expect(moments.y / moments.volume).toBeCloseTo((30 / 3) * ((0.4 + 8) / 4.4), 6);
  });

  test("convex section of radius 500: 75.051097 mm²", () => {
    // Circular segment on the face's chord √(30² + 1.8²); its sagitta is R − √(R² − c²/4).
    const chord = Math.hypot(30, 1.8);
    const crown = 500 - Math.sqrt(500 ** 2 - chord ** 2 / 4);
    const spec = knife({
      bevel: { form: "convex", height: "full", edgeThickness: 0.4, crown: { mm: crown } },
    });
    const moments = integrateBody(referenceBody(spec, rectangle(200, 30)));
    expect(moments.volume / 200).toBeCloseTo(75.051097, 6);
  });

  test("sharpening planes take a triangle prism off", () => {
    // Below the crossing at v·tan θ = 0.2 + 0.06 v the plane is inside the face: that triangle of height v and base 0.4 goes.
    const tan = Math.tan(0.3);
    const crossing = 0.2 / (tan - 0.06);
    const plain = integrateBody(referenceBody(knife({}), rectangle(200, 30)));
    const sharp = integrateBody(referenceBody(knife({ edgeAngle: 0.3 }), rectangle(200, 30)));
    expect(plain.volume - sharp.volume).toBeCloseTo(200 * 0.5 * 0.4 * crossing, 6);
  });

  test("a hole across a crease takes out what stands there", () => {
    const drilled = knife({
      bevel: { form: "flat", height: 15, edgeThickness: 0.4 },
      holes: [{ kind: "lightening", at: { x: 100, y: 15 }, diameter: 8 }],
    });
    const { holes, ...plain } = drilled.blade;
    const afterDrilling = integrateBody(referenceBody(drilled, rectangle(200, 30)));
    const before = integrateBody(referenceBody({ ...drilled, blade: plain }, rectangle(200, 30)));
    expect(holes).toHaveLength(1);
    // Half the disc stands in full thickness 4; the other half at 4 − 0.24 d, d below the line; mean d is 4r/3π.
    const half = (Math.PI * 16) / 2;
    const expected = half * 4 + half * (4 - (3.6 / 15) * ((4 * 4) / (3 * Math.PI)));
    expect(before.volume - afterDrilling.volume).toBeCloseTo(expected, 6);
  });

  test("the edge goes on along its end tangents", () => {
    const nearest = makeNearest([{ kind: "line", from: { x: 0, y: 0 }, to: { x: 10, y: 0 } }]);
    expect(nearest(14, 3)).toEqual({ distance: 3, piece: 1 });
    expect(nearest(-2, 5)).toEqual({ distance: 5, piece: -1 });
  });

  test("shape-preserving law: three stations by hand", () => {
    // Steps 1 and 2, slopes 1 and 1/2. Inner slope: weights 2·2 + 1 and 2 + 2·1, so (5 + 4)/(5/1 + 4/(1/2)) = 9/13. End
    // slope ((2·1 + 2)·1 − 1·(1/2))/3 = 7/6. Half way along the first step: 1/2 + (7/6 − 9/13)/8.
    const stations = [
      [0, 0],
      [1, 1],
      [3, 2],
    ].map(([mm = 0, is = 0]) => ({ at: { kind: "distance" as const, mm }, is }));
    const law = makeLaw(stations, (s) => (s.at.kind === "distance" ? s.at.mm : 0), true);
    expect(law.at(0.5)).toBeCloseTo(1 / 2 + (7 / 6 - 9 / 13) / 8, 14);
    expect([-1, 0, 1, 3, 9].map(law.at)).toEqual([0, 0, 1, 2, 2]);
  });
});
