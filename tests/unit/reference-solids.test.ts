import { makeKnife, weighKnife } from "@scantling/geometry";
import type { OpenCascadeInstance } from "replicad-opencascadejs";
import { beforeAll, describe, expect, test } from "vitest";
import { steelOf } from "../reference/cutters.js";
import { loadOpenCascade, type SolidWeight, solidParts, weighSolids } from "../reference/solids.js";
import { steelKnives } from "../reference/steel-knives.js";

// The same knives as solids of polynomial faces, cut by true cylinders, boxes and spheres, weighed by OpenCascade (BRepGProp).
// Accuracy that it reaches with surfaces through 13 sections a block: 1e-8 to 1e-7 of the volume, 0.02 µm on the mass centre
// along the blade and a hundredth of that across it. With half as many sections it is 1e-6; with 17 nothing changes, for what
// is left are a strip's ends, 1e-6 of it, that a loft cannot run out to.
const SECTIONS = 12;
const VOLUME = 3e-7;
/** mm */
const CENTRE = 5e-5;
const CENTRE_ACROSS = 1e-7;

let oc: OpenCascadeInstance;
beforeAll(async () => {
  oc = await loadOpenCascade();
});

describe.each(steelKnives())("$name, by OpenCascade", ({ spec, outline }) => {
  const { steel } = weighKnife(makeKnife(spec));
  let solid: SolidWeight;
  beforeAll(() => {
    solid = weighSolids(oc, solidParts(steelOf(spec, outline), SECTIONS));
  });

  test("volume", () => {
    expect(Math.abs(steel.volume / solid.volume - 1)).toBeLessThan(VOLUME);
  });

  test("mass centre", () => {
    expect(Math.abs(steel.centre.x - solid.x)).toBeLessThan(CENTRE);
    expect(Math.abs(steel.centre.y - solid.y)).toBeLessThan(CENTRE);
    expect(Math.abs(steel.centre.z - solid.z)).toBeLessThan(CENTRE_ACROSS);
  });
});
