import { type HandleSpec, type KnifeSpec, makeKnife, type PartWeight, weighKnife } from "@scantling/geometry";
import type { ManifoldToplevel } from "manifold-3d";
import type { OpenCascadeInstance } from "replicad-opencascadejs";
import { beforeAll, describe, expect, test } from "vitest";
import { handleKnives } from "../reference/handle-knives.js";
import { weighHandleMeshes } from "../reference/handle-mesh.js";
import { type HandleShapes, handleShapes } from "../reference/handle-shapes.js";
import { weighHandleSolids } from "../reference/handle-solids.js";
import { loadManifold, meshParts, weighMesh } from "../reference/mesh.js";
import { slabBodies } from "../reference/slab-faces.js";
import { contouredSlabs, filletedSlabs } from "../reference/slab-knives.js";
import { weighSlabSolids } from "../reference/slab-solids.js";
import { loadOpenCascade, type SolidWeight, solidParts, weighSolids } from "../reference/solids.js";

// Shaped handles, part by part, from two modellers that know nothing of handles.

let oc: OpenCascadeInstance;
let wasm: ManifoldToplevel;
beforeAll(async () => {
  [oc, wasm] = await Promise.all([loadOpenCascade(), loadManifold()]);
});

/** The parts that are solids, with the volume that each has by its material's density. */
function partsOf(spec: KnifeSpec): readonly (PartWeight & { readonly volume: number })[] {
  const { handle } = spec;
  return weighKnife(makeKnife(spec))
    .parts.filter(({ name }) => name !== "steel")
    .map((part) => ({ ...part, volume: part.mass / densityOf(handle, part.name) }));
}

function densityOf(handle: HandleSpec | undefined, name: string): number {
  const { slabs, liners, pins, bolsters, block, guard, pommel } = handle ?? {};
  const made = { slabs, liners, pins, bolsters: bolsters?.[0], handle: block, guard, pommel };
  return Object.entries(made).find(([key]) => key === name)?.[1]?.material.density ?? Number.NaN;
}

function compare(
  spec: KnifeSpec,
  solids: ReadonlyMap<string, SolidWeight>,
  volume: number,
  centre: number,
): void {
  const parts = partsOf(spec);
  expect(parts.map(({ name }) => name).sort()).toEqual([...solids.keys()].sort());
  for (const part of parts) {
    const solid = solids.get(part.name);
    if (!solid) continue;
    expect(Math.abs(part.volume / solid.volume - 1), part.name).toBeLessThan(volume);
    const { x, y, z } = part.centre;
    expect(Math.hypot(x - solid.x, y - solid.y, z - solid.z), part.name).toBeLessThan(centre);
  }
}

describe.each(handleKnives())("$name", ({ spec, outline, middle }) => {
  let shapes: HandleShapes;
  beforeAll(() => {
    shapes = handleShapes(spec, outline, middle);
  });

  // Ruled faces between ellipses, circles and straight lines are exact, and so are the tang's planes and cylinders: what
  // is left are OpenCascade's own integrals, 1e-10 of the volume and 1e-9 mm. Where the sizes change smoothly, eight
  // sections between two stations reach the same.
  test("volume and centre of every part, by OpenCascade", () => {
    compare(spec, weighHandleSolids(oc, shapes, 8), 1e-9, 1e-8);
  });

  // Chords round an oval take 2e-4 of it off at 48 to a quarter turn; extrapolated from half as many, 6e-8 are left, as
  // little as single precision allows.
  test("volume of every part, by manifold-3d", () => {
    const [coarse, fine] = [24, 48].map((fineness) => weighHandleMeshes(wasm, shapes, fineness));
    for (const part of partsOf(spec)) {
      const a = coarse?.get(part.name) ?? Number.NaN;
      const b = fine?.get(part.name) ?? Number.NaN;
      expect(Math.abs((b + (b - a) / 3) / part.volume - 1), part.name).toBeLessThan(2e-7);
    }
  });
});

describe("slabs", () => {
  // A rolling ball along a straight side leaves a cylinder, along an arc a torus: both exact. 4e-9 are left by the fillets'
  // seams, and nothing on parts without one.
  test("one thickness, rounded edges, liners, bolsters, pins: every part, by OpenCascade", () => {
    const { spec, outline } = filletedSlabs();
    compare(spec, weighSlabSolids(oc, spec, outline), 2e-8, 1e-6);
  });

  describe("with a contour, on a tapered tang", () => {
    const { spec, outline } = contouredSlabs();
    const slabs = partsOf(spec).find(({ name }) => name === "slabs");
    const { covered, bare } = slabBodies(spec, outline);

    // With surfaces through 13 sections between two stations 7e-8 are left, and 4 nm on the centre.
    test("volume and centre, by OpenCascade", () => {
      const [outer, inner] = [covered, bare].map((body) => weighSolids(oc, solidParts(body, 12)));
      if (!outer || !inner || !slabs) throw new Error("nothing to compare");
      const volume = outer.volume - inner.volume;
      expect(Math.abs(slabs.volume / volume - 1)).toBeLessThan(3e-7);
      const x = (outer.volume * outer.x - inner.volume * inner.x) / volume;
      const y = (outer.volume * outer.y - inner.volume * inner.y) / volume;
      expect(Math.hypot(slabs.centre.x - x, slabs.centre.y - y)).toBeLessThan(2e-5);
    });

    // 5e-4 short at 36 columns; extrapolated, 7e-6 are left by the edges, whose quarter circles end upright.
    test("volume, by manifold-3d", () => {
      const [a = 0, b = 0] = [18, 36].map(
        (n) => weighMesh(wasm, meshParts(covered, n)).volume - weighMesh(wasm, meshParts(bare, n)).volume,
      );
      expect(Math.abs((b + (b - a) / 3) / (slabs?.volume ?? Number.NaN) - 1)).toBeLessThan(2e-5);
    });
  });
});
