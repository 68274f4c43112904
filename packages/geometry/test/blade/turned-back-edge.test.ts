import { describe, expect, test } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import type { KnifeSpec } from "../../src/blade/spec.js";

/** A blade 32 high whose edge goes round the end in an arc of radius 16 and back along the spine by the given angle. */
const roundEnd = (turn: number): KnifeSpec => {
  const x = 120 + 16 * Math.sin(turn);
  const y = 16 - 16 * Math.cos(turn);
  return {
    steel: { name: "1084" },
    blade: {
      outline: {
        runs: {
          edge: `M0 0 L120 0 A16 16 0 0 1 ${x} ${y}`,
          spine: `L100 32 L-5 32`,
          tangTop: "L-105 28",
          butt: "L-105 8",
          tangBottom: "L-5 6",
          heelFace: "L0 6 L0 0",
        },
      },
      thickness: [
        { at: { kind: "heel" }, is: 4 },
        { at: { kind: "tip" }, is: 2.5 },
      ],
      bevel: { form: "flat", height: 10, edgeThickness: 0.4 },
      edgeAngle: 0.28,
    },
    tang: { form: "full" },
  };
};

// An edge that has turned back is not prolonged over the blade: the spine keeps its thickness, the bevel its height.
describe.each([150, 175, 180])("an edge that turns %i°", (degrees) => {
  const body = makeKnife(roundEnd((degrees * Math.PI) / 180)).body("finished");

  test("leaves the spine as thick as its law", () => {
    for (const x of [10, 40, 60, 90]) {
      const top = body.footprint.topAt(x) ?? Number.NaN;
      expect(body.thicknessAt({ x, y: top - 0.1 })).toBeCloseTo(body.slab.thicknessAt(x), 9);
    }
  });

  test("has its bevel as high as asked", () => {
    body.sectionAt(60);
    expect(body.section.bevelHeight).toBe(10);
    // Half way up the bevel the face stands half way between the edge and the spine.
    const half = body.slab.thicknessAt(60);
    expect(body.thicknessAt({ x: 60, y: 5 })).toBeCloseTo((0.4 + half) / 2, 9);
  });
});
