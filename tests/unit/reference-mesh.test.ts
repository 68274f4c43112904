import { makeKnife, weighKnife } from "@scantling/geometry";
import { beforeAll, describe, expect, test } from "vitest";
import { steelOf } from "../reference/cutters.js";
import { loadManifold, type MeshWeight, meshParts, weighMesh } from "../reference/mesh.js";
import { steelKnives } from "../reference/steel-knives.js";

// Ten knives as triangle meshes, united and drilled by manifold-3d and weighed by its own volume().
// Accuracy that it reaches: chords lie inside a convex face and outside a hollow one, so one mesh is off by an error that
// goes with the square of its fineness (4e-6 to 6e-4 of the volume at 36 columns a block); Richardson's extrapolation from
// two meshes leaves 2e-8 to 4e-7, the worst where a face stands upright. Vertices are single precision: 6e-8 of each
// coordinate.
const EXTRAPOLATED = 1e-6;
// Surface: slopes enter, and the walls at the plunge and the handle front; the same extrapolation leaves 5e-8, where a groove
// or a swedge is cut 3e-7.
const SURFACE = 1e-6;
const COLUMNS = 18;

const extrapolate = (coarse: number, fine: number): number => fine + (fine - coarse) / 3;

let weigh: (knife: ReturnType<typeof steelOf>, fineness: number) => MeshWeight;
beforeAll(async () => {
  const wasm = await loadManifold();
  weigh = (knife, fineness) => weighMesh(wasm, meshParts(knife, fineness));
});

describe.each(steelKnives())("$name, by manifold-3d", ({ spec, outline }) => {
  const { steel } = weighKnife(makeKnife(spec));
  let coarse: MeshWeight;
  let fine: MeshWeight;
  beforeAll(() => {
    const knife = steelOf(spec, outline);
    coarse = weigh(knife, COLUMNS);
    fine = weigh(knife, 2 * COLUMNS);
  });

  test("the error of one mesh falls with the square of its fineness", () => {
    const ratio = (coarse.volume - steel.volume) / (fine.volume - steel.volume);
    expect(ratio).toBeGreaterThan(3.9);
    expect(ratio).toBeLessThan(4.1);
  });

  test("volume", () => {
    const volume = extrapolate(coarse.volume, fine.volume);
    expect(Math.abs(steel.volume / volume - 1)).toBeLessThan(EXTRAPOLATED);
  });

  test("surface", () => {
    const surface = extrapolate(coarse.surface, fine.surface);
    expect(Math.abs(steel.surface / surface - 1)).toBeLessThan(SURFACE);
  });
});
