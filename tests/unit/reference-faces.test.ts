import { type BladeSpec, type KnifeSpec, makeKnife, type Outline, type Segment } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { referenceBody } from "../reference/body.js";
import { drawnKnives } from "../reference/edge-knives.js";
import { familyKnives } from "../reference/family-knives.js";
import { outlineOf, p, polyline } from "../reference/outlines.js";
import { Chance } from "../reference/random/chance.js";

// The reference is only worth something if it is right itself: here its faces are held against numbers done by hand, and
// then the library's against the reference, point by point.

const DEGREE = Math.PI / 180;

/** A straight-edged block 200 long and 30 high, 4 thick, 0.4 at the edge, planes so steep that they take nothing off. */
function block(blade: Partial<BladeSpec>): ReturnType<typeof referenceBody> {
  const [edge, front, spine, heelFace] = [p(0, 0), p(200, 0), p(200, 30), p(0, 30)].map((from, i, all) =>
    polyline(from, all[(i + 1) % 4] ?? from),
  ) as [Segment[], Segment[], Segment[], Segment[]];
  const outline: Outline = outlineOf({ edge, front, spine, heelFace }, 200, 0, 0);
  const spec: KnifeSpec = {
    steel: { name: "plain", density: 0.00785 },
    blade: {
      outline: { runs: { edge: "M0 0 L200 0" } },
      thickness: [{ at: { kind: "heel" }, is: 4 }],
      bevel: { form: "flat", height: "full", edgeThickness: 0.4 },
      edgeAngle: Math.atan(1e9),
      ...blade,
    },
    tang: { form: "full" },
  };
  return referenceBody(spec, outline);
}

describe("faces of the reference by hand", () => {
  test("hollow from a wheel of 500: deepest in the middle of its chord, by R − √(R² − s²/4)", () => {
    const chord = Math.hypot(30, 1.8);
    const depth = 500 - Math.sqrt(500 ** 2 - chord ** 2 / 4);
    const body = block({
      bevel: { form: "hollow", height: "full", edgeThickness: 0.4, wheelRadius: 500 },
    });
    const y = 15 + (depth * 1.8) / chord;
    expect(body.half(100, y)).toBeCloseTo(1.1 - (depth * 30) / chord, 10);
  });

  test("convex by default: level at the bevel line, where the circle has its highest point", () => {
    const body = block({ bevel: { form: "convex", height: 20, edgeThickness: 0.4 } });
    // Centre straight below (20, 2): R = (20² + 1.8²)/(2 · 1.8); half way R − √(R² − 10²) below the top.
    const radius = (20 ** 2 + 1.8 ** 2) / 3.6;
    expect(body.half(100, 10)).toBeCloseTo(2 - (radius - Math.sqrt(radius ** 2 - 100)), 10);
    expect(body.half(100, 25)).toBe(2);
  });

  test("flank taper, and how it dies out within the last quarter", () => {
    const bevel = { form: "flat", edgeThickness: 0.4 } as const;
    // At 15 of 30 all of it: (4 − 0.6)/2 there, straight to 2 at 30.
    expect(block({ flankTaper: 0.6, bevel: { ...bevel, height: 15 } }).half(100, 22.5)).toBeCloseTo(1.85, 12);
    // At 27 of 30 the share 4 · 3/30 of it.
    const low = block({ flankTaper: 0.6, bevel: { ...bevel, height: 27 } });
    expect(low.half(100, 27)).toBeCloseTo((4 - 0.6 * 0.4) / 2, 12);
  });

  test("single bevel: all of it on the left face", () => {
    const body = block({
      bevel: { form: "flat", height: 20, edgeThickness: 0.4, apex: 1 },
      edgeAngle: { right: "flat", left: 24 * DEGREE },
    });
    expect(body.face(100, 0.1, "right")).toBe(2);
    expect(body.face(100, 0.1, "left")).toBeCloseTo(-2 + 0.1 * Math.tan(24 * DEGREE), 12);
    // From −2 + 0.4 at the edge to 2 at the bevel line.
    expect(body.face(100, 10, "left")).toBeCloseTo((-1.6 + 2) / 2, 12);
    expect(body.half(100, 10)).toBeCloseTo((2 + 0.2) / 2, 12);
  });

  test("apex at 0.5: the edge thickness shared out as 1 to 3", () => {
    const body = block({ bevel: { form: "flat", height: 20, edgeThickness: 0.4, apex: 0.5 } });
    expect(body.face(100, 1e-7, "right")).toBeCloseTo(1 + 0.1, 6);
    expect(body.face(100, 1e-7, "left")).toBeCloseTo(-1 + 0.3, 6);
  });

  test("microbevel, and the plane that runs on from it", () => {
    const body = block({
      bevel: { form: "flat", height: "full", edgeThickness: 1 },
      edgeAngle: 20 * DEGREE,
      microbevel: { height: 0.4, angle: 30 * DEGREE },
    });
    expect(body.half(100, 0.3)).toBeCloseTo(0.3 * Math.tan(30 * DEGREE), 12);
    const there = 0.4 * Math.tan(30 * DEGREE) + 0.1 * Math.tan(20 * DEGREE);
    expect(body.half(100, 0.5)).toBeCloseTo(there, 12);
  });

  test("plunge: a quarter of the way in it has taken 5/32 of the bevel", () => {
    const body = block({ plunge: { at: 20, length: 40 } });
    expect(body.half(30, 10)).toBeCloseTo(2 - (5 / 32) * (2 - 0.8), 12);
    expect(body.half(20, 10)).toBe(2);
    expect(body.half(60, 10)).toBeCloseTo(0.8, 12);
  });

  test("swedge and eased spine, by the depth below the top", () => {
    const swedged = block({
      swedge: {
        from: { kind: "heel" },
        to: { kind: "fraction", share: 0.5 },
        angle: 45 * DEGREE,
        thickness: 1,
      },
    });
    expect(swedged.half(90, 29.5)).toBeCloseTo(1, 12);
    expect(swedged.half(110, 29.5)).toBeCloseTo(0.2 + (1.8 * 29.5) / 30, 12);
    const eased = block({ easedSpine: 1, bevel: { form: "flat", height: 10, edgeThickness: 0.4 } });
    expect(eased.half(100, 29.6)).toBeCloseTo(1 + Math.sqrt(1 - 0.6 ** 2), 12);
  });

  test("fuller of radius 10, 1 deep: 3 off its line √91 − 9 deep, on its own face only", () => {
    const body = block({
      bevel: { form: "flat", height: 10, edgeThickness: 0.4 },
      fullers: [{ from: p(50, 20), to: p(120, 20), radius: 10, depth: 1, faces: "right" }],
    });
    expect(body.face(80, 23, "right")).toBeCloseTo(2 - (Math.sqrt(91) - 9), 12);
    expect(body.face(123, 20, "right")).toBeCloseTo(2 - (Math.sqrt(91) - 9), 12);
    expect(body.face(80, 23, "left")).toBe(2);
  });

  test("a slot is drilled along its whole line", () => {
    const body = block({ holes: [{ kind: "lightening", at: p(50, 15), to: p(70, 20), diameter: 6 }] });
    expect(body.isDrilled(60, 17.5)).toBe(true);
    expect(body.isDrilled(72, 21)).toBe(true);
    expect(body.isDrilled(60, 21)).toBe(false);
  });
});

// Straight out of the formulas on both sides: what is left is rounding.
const EQUAL = 1e-9;
const SEED = 2611;

describe.each([...familyKnives(), ...drawnKnives()])("faces of $name", ({ spec }) => {
  test("are the library's at 300 points, and so are its holes", () => {
    const knife = makeKnife(spec);
    const body = knife.body("finished");
    const model = referenceBody(spec, knife.outline);
    const { breaks } = model.slicer;
    const [from, to] = [breaks[0] ?? 0, breaks[breaks.length - 1] ?? 0];
    const chance = new Chance(SEED);
    for (let i = 0; i < 300; i++) {
      const x = chance.between(i % 3 === 0 ? from : 0, to);
      const [low = 0, high = 0] = model.slicer.crossings(x);
      // More of them near the edge, where the planes are.
      const y = low + (high - low) * chance.between(0, 1) ** 2;
      for (const side of ["right", "left"] as const) {
        const off = Math.abs(model.face(x, y, side) - body.faceAt({ x, y }, side));
        expect(off, `${side} face at (${x}, ${y}), seed ${SEED}`).toBeLessThan(EQUAL);
      }
      expect(body.thicknessAt({ x, y }) === 0, `hole at (${x}, ${y})`).toBe(model.isDrilled(x, y));
    }
  });
});
