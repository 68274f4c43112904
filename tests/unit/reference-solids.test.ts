import { makeKnife, weighKnife } from "@scantling/geometry";
import type { OpenCascadeInstance } from "replicad-opencascadejs";
import { beforeAll, describe, expect, test } from "vitest";
import { referenceKnives } from "../reference/blades.js";
import { referenceBody } from "../reference/body.js";
import { loadOpenCascade, type SolidWeight, solidParts, weighSolids } from "../reference/solids.js";

// The same knives as solids of B-spline faces, drilled by true cylinders, weighed by OpenCascade (BRepGProp).
// Accuracy that it reaches: 1e-7 to 5e-7 of the volume and 0.06 µm on the mass centre, with cubic surfaces through 9
// sections a block. Neither finer sections nor a tighter accuracy of its integrals improve on that: what remains comes
// from sewing and trimming the faces.
const SECTIONS = 8;
const VOLUME = 2e-6;
/** mm */
const CENTRE = 2e-4;

let oc: OpenCascadeInstance;
beforeAll(async () => {
  oc = await loadOpenCascade();
});

describe.each(referenceKnives())("$name by OpenCascade", ({ spec, outline }) => {
  const { steel } = weighKnife(makeKnife(spec));
  let solid: SolidWeight;
  beforeAll(() => {
    solid = weighSolids(oc, solidParts(referenceBody(spec, outline), SECTIONS));
  });

  test("volume", () => {
    expect(Math.abs(steel.volume / solid.volume - 1)).toBeLessThan(VOLUME);
  });

  test("mass centre", () => {
    expect(Math.abs(steel.centre.x - solid.x)).toBeLessThan(CENTRE);
    expect(Math.abs(steel.centre.y - solid.y)).toBeLessThan(CENTRE);
  });
});
