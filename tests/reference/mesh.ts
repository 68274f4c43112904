// The reference body as a triangle mesh, weighed by manifold-3d: booleans of the blocks and of the drilled holes.

import type { Manifold, ManifoldToplevel } from "manifold-3d";
import Module from "manifold-3d";
import type { Hole, ReferenceBody } from "./body.js";
import { type Block, blocks, type Section } from "./layout.js";

export interface MeshWeight {
  readonly volume: number;
  readonly surface: number;
  readonly triangles: number;
}

export async function loadManifold(): Promise<ManifoldToplevel> {
  const wasm = await Module();
  wasm.setup();
  return wasm;
}

/** Triangles of every block, ready for the library: what does not belong to its time. */
export interface MeshParts {
  readonly blocks: readonly { readonly vertProperties: Float32Array; readonly triVerts: Uint32Array }[];
  readonly holes: readonly Hole[];
  readonly sides: number;
}

/**
 * Samples the body.
 *
 * @param fineness - columns per block along x; rows per face follow from it. Chords cut off an error that falls with
 *   the square of it; vertices are stored in single precision, which ends the gain at about 10⁻⁷ relative.
 */
export function meshParts(body: ReferenceBody, fineness: number): MeshParts {
  return {
    blocks: blocks(body).map((block) => blockMesh(block, fineness)),
    holes: body.holes,
    sides: 8 * Math.ceil(fineness / 4),
  };
}

/** Volume and surface of the union of all blocks less the holes, as manifold-3d measures its own solid. */
export function weighMesh(wasm: ManifoldToplevel, { blocks: meshes, holes, sides }: MeshParts): MeshWeight {
  const kept: Manifold[] = [];
  const keep = (solid: Manifold): Manifold => {
    kept.push(solid);
    return solid;
  };
  try {
    const parts = meshes.map((mesh) => keep(wasm.Manifold.ofMesh(new wasm.Mesh({ numProp: 3, ...mesh }))));
    let solid = keep(wasm.Manifold.union(parts));
    for (const hole of holes) {
      // A many-sided prism of the same area as the round hole.
      const radius = hole.radius * Math.sqrt((2 * Math.PI) / sides / Math.sin((2 * Math.PI) / sides));
      const cutter = keep(
        keep(wasm.Manifold.cylinder(100, radius, radius, sides, true)).translate(hole.x, hole.y, 0),
      );
      solid = keep(solid.subtract(cutter));
    }
    if (solid.status() !== "NoError") throw new Error(`manifold-3d: ${solid.status()}`);
    return { volume: solid.volume(), surface: solid.surfaceArea(), triangles: solid.numTri() };
  } finally {
    for (const solid of kept) solid.delete();
  }
}

/** One block, watertight: both faces, the walls along the outline and the two end sections. */
function blockMesh(block: Block, fineness: number): MeshParts["blocks"][number] {
  const rows = Math.max(2, Math.ceil(fineness / 3));
  const mesh = new MeshBuilder();
  const columns = Array.from({ length: fineness + 1 }, (_, i) => {
    // Closer together toward the ends, where an outline may be round.
    const section = block.section((1 - Math.cos((Math.PI * i) / fineness)) / 2);
    const heights = rowHeights(section, rows).map((y) => ({ x: section.x, y, z: section.half(y) }));
    return {
      right: heights.map(({ x, y, z }) => mesh.vertex(x, y, z)),
      left: heights.map(({ x, y, z }) => mesh.vertex(x, y, -z)),
    };
  });
  columns.forEach((here, i) => {
    const next = columns[i + 1];
    const count = here.right.length - 1;
    for (let j = 0; j < count; j++) {
      if (next) {
        mesh.quad(here.right[j], next.right[j], next.right[j + 1], here.right[j + 1]);
        mesh.quad(here.left[j], here.left[j + 1], next.left[j + 1], next.left[j]);
      }
      if (i === 0) mesh.quad(here.right[j], here.right[j + 1], here.left[j + 1], here.left[j]);
      if (i === fineness) mesh.quad(here.right[j], here.left[j], here.left[j + 1], here.right[j + 1]);
    }
    if (next) {
      mesh.quad(here.right[0], here.left[0], next.left[0], next.right[0]);
      mesh.quad(here.right[count], next.right[count], next.left[count], here.left[count]);
    }
  });
  return mesh.arrays();
}

function rowHeights({ cuts }: Section, rows: number): number[] {
  const ys: number[] = [cuts[0] ?? 0];
  for (let k = 0; k + 1 < cuts.length; k++) {
    const a = cuts[k] ?? 0;
    const b = cuts[k + 1] ?? 0;
    for (let j = 1; j <= rows; j++) ys.push(j === rows ? b : a + ((b - a) * j) / rows);
  }
  return ys;
}

/** Vertices that fall together become one, and triangles that lose a corner by it are left out. */
class MeshBuilder {
  private readonly known = new Map<string, number>();
  private readonly coordinates: number[] = [];
  private readonly corners: number[] = [];

  vertex(x: number, y: number, z: number): number {
    const place = [Math.fround(x), Math.fround(y), Math.fround(z) || 0];
    const key = place.join(" ");
    const found = this.known.get(key);
    if (found !== undefined) return found;
    const index = this.coordinates.length / 3;
    this.coordinates.push(...place);
    this.known.set(key, index);
    return index;
  }

  quad(a = -1, b = -1, c = -1, d = -1): void {
    this.triangle(a, b, c);
    this.triangle(a, c, d);
  }

  private triangle(a: number, b: number, c: number): void {
    if (a !== b && b !== c && c !== a) this.corners.push(a, b, c);
  }

  arrays(): { vertProperties: Float32Array; triVerts: Uint32Array } {
    return { vertProperties: new Float32Array(this.coordinates), triVerts: new Uint32Array(this.corners) };
  }
}
