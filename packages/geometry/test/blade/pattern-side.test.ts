import { expect, test } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import { patternGeometry } from "../../src/blade/pattern-geometry.js";
import { statePattern } from "../../src/blade/state-pattern.js";
import type { Segment } from "../../src/plane/segment.js";

const knife = makeKnife({
  steel: { name: "1084" },
  blade: {
    outline: { family: "vegetable", edgeLength: 180, heelHeight: 60, straightEdge: 120 },
    ricasso: 10,
    thickness: [{ at: { kind: "heel" }, is: 4 }],
    bevel: { form: "flat", height: 30, edgeThickness: 0.5, left: { height: 18 } },
    edgeAngle: 0.28,
  },
  tang: { form: "full", length: 100, heights: { front: 24, middle: 22, butt: 24 } },
});

/** Height of a bevel line over the straight edge. */
const heightOf = ([, line = []]: readonly (readonly Segment[])[]): number => line[0]?.from.y ?? Number.NaN;

test("each face of a pattern has its own bevel line, 30 mm up on the right and 18 mm on the left", () => {
  expect(heightOf(patternGeometry(knife, "finished").bevelLine)).toBeCloseTo(30, 9);
  expect(heightOf(patternGeometry(knife, "finished", "right").bevelLine)).toBeCloseTo(30, 9);
  expect(heightOf(patternGeometry(knife, "finished", "left").bevelLine)).toBeCloseTo(18, 9);
  expect(heightOf(statePattern(knife, "ready", "left").bevelLine)).toBeCloseTo(18, 9);
});
