import { makeKnife, weighKnife } from "@scantling/geometry";
import { beforeAll, describe, expect, test } from "vitest";
import { referenceKnives } from "../reference/blades.js";
import { referenceBody } from "../reference/body.js";
import { loadManifold, type MeshWeight, meshParts, weighMesh } from "../reference/mesh.js";

// The same knives as triangle meshes, united and drilled by manifold-3d and weighed by its own volume().
// Accuracy that it reaches: chords lie inside a convex body, so one mesh falls short by an error that goes with the
// square of its fineness (2e-5 to 6e-4 of the volume at 36 columns a block); Richardson's extrapolation from two
// meshes leaves 1e-8 to 2e-6, the worst where a crease ends inside a block. Vertices are single precision: 1e-7.
const EXTRAPOLATED = 5e-6;
// Surface: slopes enter, and the walls at the plunge and the handle front; the same extrapolation leaves about 1e-6.
const SURFACE = 1e-5;

describe.each(referenceKnives())("$name by manifold-3d", ({ spec, outline }) => {
  let coarse: MeshWeight;
  let fine: MeshWeight;
  const { steel } = weighKnife(makeKnife(spec));
  const extrapolate = (a: number, b: number): number => b + (b - a) / 3;

  beforeAll(async () => {
    const wasm = await loadManifold();
    const body = referenceBody(spec, outline);
    coarse = weighMesh(wasm, meshParts(body, 18));
    fine = weighMesh(wasm, meshParts(body, 36));
  });

  test("the error of one mesh falls with the square of its fineness", () => {
    const ratio = (coarse.volume - steel.volume) / (fine.volume - steel.volume);
    expect(ratio).toBeGreaterThan(3.5);
    expect(ratio).toBeLessThan(5.5);
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
