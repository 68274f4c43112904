// The reference body as a triangle mesh, weighed by manifold-3d: booleans of the blocks and of everything cut out.
import type { Manifold, ManifoldToplevel, Vec3 } from "manifold-3d";
import Module from "manifold-3d";
import type { Drill, Groove, Steel } from "./cutters.js";
import { type Block, blocks, rowsOf, type Section, SIDES, type Side } from "./layout.js";

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

export interface Triangles {
  readonly vertProperties: Float32Array;
  readonly triVerts: Uint32Array;
}

/** Triangles of every block, ready for the library: what does not belong to its time. */
export interface MeshParts {
  readonly blocks: readonly Triangles[];
  readonly drills: readonly Drill[];
  readonly grooves: readonly Groove[];
  /** Sides of the prisms that stand for round tools. */
  readonly sides: number;
}

/**
 * Samples the body.
 *
 * @param fineness - columns per block along x; rows per strip follow from it. Chords cut off an error that falls with
 *   the square of it; vertices are stored in single precision, which ends the gain at about 10⁻⁷ relative.
 */
export function meshParts({ body, drills, grooves }: Steel, fineness: number): MeshParts {
  return {
    blocks: blocks(body).map((block) => blockMesh(block, fineness)),
    drills,
    grooves,
    sides: 4 * fineness,
  };
}

/** Volume and surface of the union of all blocks less what is cut out, as manifold-3d measures its own solid. */
export function weighMesh(wasm: ManifoldToplevel, parts: MeshParts): MeshWeight {
  const { sides } = parts;
  return withSolids((keep) => {
    const meshes = parts.blocks.map((mesh) =>
      keep(wasm.Manifold.ofMesh(new wasm.Mesh({ numProp: 3, ...mesh }))),
    );
    const tools = [
      ...parts.drills.map(({ at, to, radius }) => {
        const fitted = sameArea(radius, sides);
        // Turned so that a slot's sides touch corners of the prism, whatever its direction.
        const turn = (Math.atan2(to.y - at.y, to.x - at.x) * 180) / Math.PI;
        const rod = keep(
          keep(wasm.Manifold.cylinder(REACH, fitted, fitted, sides, true)).rotate([0, 0, turn]),
        );
        return keep(wasm.Manifold.hull([at, to].map(({ x, y }) => keep(rod.translate([x, y, 0])))));
      }),
      ...parts.grooves.map((groove) =>
        keep(wasm.Manifold.ofMesh(new wasm.Mesh({ numProp: 3, ...grooveMesh(groove, sides / 4) }))),
      ),
    ];
    let solid = keep(wasm.Manifold.union(meshes));
    for (const tool of tools) solid = keep(solid.subtract(tool));
    if (solid.status() !== "NoError") throw new Error(`manifold-3d: ${solid.status()}`);
    return { volume: solid.volume(), surface: solid.surfaceArea(), triangles: solid.numTri() };
  });
}

const REACH = 100;

/**
 * The bottom of a cylinder with spherical ends: rings about its line from the deepest place up, one of them in the face it
 * is cut into.
 *
 * @param count - rings below the face, and sides of a quarter turn.
 */
function grooveMesh({ at, to, radius, depth, z }: Groove, count: number): Triangles {
  const mesh = new MeshBuilder();
  const inward = z > 0 ? -1 : 1;
  const heading = Math.atan2(to.y - at.y, to.x - at.x);
  const face = Math.acos((radius - depth) / radius);
  const ends = [
    { from: to, start: heading - Math.PI / 2 },
    { from: at, start: heading + Math.PI / 2 },
  ];
  const rings = Array.from({ length: Math.ceil(1.5 * count) + 1 }, (_, k) => {
    const lean = (face * k) / count;
    const ring = radius * Math.sin(lean);
    return ends.flatMap(({ from, start }) =>
      Array.from({ length: 2 * count + 1 }, (_, j) => {
        const angle = start + (Math.PI * j) / (2 * count);
        const [x, y] = [from.x + ring * Math.cos(angle), from.y + ring * Math.sin(angle)];
        return { index: mesh.vertex([x, y, z + inward * radius * Math.cos(lean)]) };
      }),
    );
  });
  const polygon = (corners: readonly ({ readonly index: number } | undefined)[]): void => {
    mesh.polygon(inward < 0 ? corners : [...corners].reverse());
  };
  rings.slice(1).forEach((next, k) => {
    const here = rings[k];
    here?.forEach((corner, j) => {
      const i = (j + 1) % here.length;
      polygon([corner, here[i], next[i], next[j]]);
    });
  });
  polygon(rings.at(-1) ?? []);
  return mesh.arrays();
}

/** Deletes every solid that was kept, for nothing collects them by itself. */
export function withSolids<T>(work: (keep: (solid: Manifold) => Manifold) => T): T {
  const kept: Manifold[] = [];
  try {
    return work((solid) => {
      kept.push(solid);
      return solid;
    });
  } finally {
    for (const solid of kept) solid.delete();
  }
}

/** Radius of the many-sided prism of the same area as a round one. */
export function sameArea(radius: number, sides: number): number {
  return radius * Math.sqrt((2 * Math.PI) / sides / Math.sin((2 * Math.PI) / sides));
}

/** One block, watertight: both faces, the walls along the outline and the two end sections. */
function blockMesh(block: Block, fineness: number): Triangles {
  const count = Math.max(2, Math.ceil(fineness / 3));
  const rows = Array.from({ length: count + 1 }, (_, j) => j / count);
  const mesh = new MeshBuilder();
  const columns = Array.from({ length: fineness + 1 }, (_, i) => {
    // Closer together toward the ends, where an outline may be round.
    const section = block.section((1 - Math.cos((Math.PI * i) / fineness)) / 2);
    const chain = (side: Side): Corner[] =>
      rowHeights(section, side, rows).map((y) => {
        const z = section[side].height(y);
        return { y, index: mesh.vertex([section.x, y, side === "right" ? z : -z]) };
      });
    return { right: chain("right"), left: chain("left") };
  });
  columns.slice(1).forEach((next, i) => {
    const here = columns[i];
    if (!here) return;
    for (const side of SIDES) {
      for (let j = 0; j + 1 < here[side].length; j++) {
        const corners = [here[side][j], next[side][j], next[side][j + 1], here[side][j + 1]];
        mesh.polygon(side === "right" ? corners : corners.reverse());
      }
    }
    mesh.polygon([here.right[0], here.left[0], next.left[0], next.right[0]]);
    mesh.polygon([here.right.at(-1), next.right.at(-1), next.left.at(-1), here.left.at(-1)]);
  });
  const [first, last] = [columns[0], columns[fineness]];
  if (first) endSection(mesh, first.right, first.left);
  if (last) endSection(mesh, last.left, last.right);
  return mesh.arrays();
}

interface Corner {
  readonly y: number;
  readonly index: number;
}

/** Triangles between two chains that rise side by side: the one that is lower next goes on. */
function endSection(mesh: MeshBuilder, a: readonly Corner[], b: readonly Corner[]): void {
  let i = 0;
  let j = 0;
  for (;;) {
    const nextA = a[i + 1];
    const nextB = b[j + 1];
    if (nextA && (!nextB || nextA.y <= nextB.y)) {
      mesh.polygon([a[i], nextA, b[j]]);
      i++;
    } else if (nextB) {
      mesh.polygon([a[i], nextB, b[j]]);
      j++;
    } else return;
  }
}

function rowHeights(section: Section, side: Side, rows: readonly number[]): number[] {
  const face = section[side];
  return [face.cuts[0] ?? 0, ...face.strips.flatMap((_, k) => rowsOf(face, k, rows).slice(1))];
}

/** Vertices that fall together become one, and triangles that lose a corner by it are left out. */
export class MeshBuilder {
  private readonly known = new Map<string, number>();
  private readonly coordinates: number[] = [];
  private readonly corners: number[] = [];

  vertex(point: Vec3): number {
    const place = point.map((v) => Math.fround(v) || 0);
    const key = place.join(" ");
    const found = this.known.get(key);
    if (found !== undefined) return found;
    const index = this.coordinates.length / 3;
    this.coordinates.push(...place);
    this.known.set(key, index);
    return index;
  }

  /** A fan of triangles around the first corner. */
  polygon(corners: readonly ({ readonly index: number } | undefined)[]): void {
    const [a, ...rest] = corners.map((corner) => corner?.index ?? -1);
    rest.slice(1).forEach((c, k) => {
      const b = rest[k];
      if (a === undefined || b === undefined) return;
      if (a !== b && b !== c && c !== a) this.corners.push(a, b, c);
    });
  }

  arrays(): Triangles {
    return { vertProperties: new Float32Array(this.coordinates), triVerts: new Uint32Array(this.corners) };
  }
}
