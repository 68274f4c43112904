import { describe, expect, it } from "vitest";
import { type Knife, makeKnife } from "../../src/blade/knife.js";
import { sectionMarks } from "../../src/blade/section-outline-marks.js";
import { edgeBevelAt } from "../../src/blade/section-report.js";
import { randomKnives } from "./random-knives.js";

/** A blade that falls straight to nothing at its tip, 3 thick: near the tip the sharpening planes meet the spine. */
const wedge = (microbevel?: { readonly angle: number; readonly height: number }): Knife =>
  makeKnife({
    steel: { name: "1084" },
    blade: {
      outline: {
        runs: {
          edge: "M0 0 H100",
          spine: "L0 40",
          tangTop: "L-100 40",
          butt: "L-100 15",
          tangBottom: "L0 15",
        },
      },
      thickness: [{ at: { kind: "heel" }, is: 3 }],
      bevel: { form: "flat", height: 10, edgeThickness: 0.5 },
      edgeAngle: 0.3,
      ...(microbevel === undefined ? {} : { microbevel }),
    },
    tang: { form: "full" },
  });

describe("the sharpening bevel where the blade is lower than it would be", () => {
  it("ends at the spine, with the thickness that the planes leave there", () => {
    // Height 0.4·(100 − x): 0.2 mm at x = 99.5, where a plane at 0.3 rad has come 0.2·tan 0.3 out on either side.
    const bevel = edgeBevelAt(wedge(), 99.5);
    expect(bevel?.height).toBeCloseTo(0.2, 9);
    expect(bevel?.width).toBeCloseTo(0.2 / Math.cos(0.3), 9);
    expect(bevel?.behind).toBeCloseTo(2 * 0.2 * Math.tan(0.3), 9);
    expect(sectionMarks(wedge(), 99.5).right?.edgeBevel?.top.y).toBeCloseTo(0.2, 9);
  });

  it("is as it was where the blade is high enough: e/(2(tan θ − tan α))", () => {
    const height = 0.5 / (2 * (Math.tan(0.3) - 1.25 / 10));
    expect(edgeBevelAt(wedge(), 50)?.height).toBeCloseTo(height, 9);
  });

  it("counts a microbevel below it", () => {
    const bevel = edgeBevelAt(wedge({ angle: 0.5, height: 0.1 }), 99.5);
    expect(bevel?.height).toBeCloseTo(0.2, 9);
    expect(bevel?.width).toBeCloseTo(0.1 / Math.cos(0.5) + 0.1 / Math.cos(0.3), 9);
  });

  it("never rises above the spine, and leaves what a caliper finds there", () => {
    for (const { knife } of randomKnives(40)) {
      const { edgeLength } = knife.outline;
      const body = knife.body("finished");
      for (const share of [0.3, 0.7, 0.95, 0.99, 0.9999]) {
        for (const side of ["right", "left"] as const) {
          const bevel = edgeBevelAt(knife, share * edgeLength, side);
          if (bevel === undefined) continue;
          const spine = body.spineDistanceAt(share * edgeLength);
          expect(bevel.height).toBeLessThan(spine + 1e-9);
          // As the body itself is thick at the point where the drawn section has the bevel's upper end.
          const x = share * edgeLength;
          const y = sectionMarks(knife, x)[side]?.edgeBevel?.top.y ?? Number.NaN;
          const thickness = body.faceUncut({ x, y }, "right") + body.faceUncut({ x, y }, "left");
          if (body.crestAt(x) === undefined) expect(bevel.behind).toBeCloseTo(thickness, 6);
          expect(bevel.width).toBeGreaterThanOrEqual(bevel.height);
        }
      }
    }
  });
});
