import { makeKnife, weighKnife } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { referenceKnives } from "../reference/blades.js";
import { steelOf } from "../reference/cutters.js";
import { singleBevel, twoFaces } from "../reference/form-blades.js";
import { trianglePoints, weighTriangles } from "../reference/triangle-mesh.js";

// The plain triangle mesh that the benchmark runs against is only a rival if it is right: chords cut off an error that
// falls with the square of its fineness; what is left after Richardson's extrapolation was measured at 1e-8 to 3e-7.

describe.each([...referenceKnives(), singleBevel(), twoFaces()])(
  "$name, by plain triangles",
  ({ spec, outline }) => {
    const { steel } = weighKnife(makeKnife(spec));
    const knife = steelOf(spec, outline);
    const [coarse, fine] = [18, 36].map((fineness) => weighTriangles(trianglePoints(knife, fineness)));
    if (!coarse || !fine) throw new Error("two meshes");

    test("the error falls with the square of the fineness", () => {
      const ratio = (coarse.volume - steel.volume) / (fine.volume - steel.volume);
      expect(ratio).toBeGreaterThan(3.9);
      expect(ratio).toBeLessThan(4.1);
    });

    test("volume and centre", () => {
      const volume = fine.volume + (fine.volume - coarse.volume) / 3;
      expect(Math.abs(volume / steel.volume - 1)).toBeLessThan(1e-6);
      for (const axis of ["x", "y", "z"] as const) {
        const moment = (one: typeof fine): number => one.volume * one[axis];
        const centre = (moment(fine) + (moment(fine) - moment(coarse)) / 3) / volume;
        expect(Math.abs(centre - steel.centre[axis]), axis).toBeLessThan(1e-4);
      }
    });
  },
);
