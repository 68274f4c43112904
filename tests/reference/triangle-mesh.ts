// The fair rival of the kernel: a plain triangle mesh in TypeScript, no library, no booleans. Triangles over points that
// were sampled beforehand, signed tetrahedra summed; round holes in the flats by their closed form.
import type { Drill, Steel } from "./cutters.js";
import { type Block, blocks, type FaceSection, rowsOf, SIDES } from "./layout.js";

export interface TriangleWeight {
  readonly volume: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Points of one block: columns along x, each with the same rows; right face first. Three numbers a point, mm. */
interface BlockPoints {
  readonly columns: number;
  readonly right: number;
  readonly left: number;
  readonly coordinates: Float64Array;
}

/** Sampled points, ready to be made into triangles: what does not belong to its time. */
export interface TrianglePoints {
  readonly blocks: readonly BlockPoints[];
  readonly holes: readonly {
    readonly x: number;
    readonly y: number;
    readonly radius: number;
    readonly thickness: number;
    /** Growth of the thickness along x, mm per mm. */
    readonly slope: number;
  }[];
}

/**
 * Samples the body.
 *
 * @param fineness - columns per block along x; rows per strip follow from it. The error falls with the square of it.
 * @throws where a hole is a slot, or not in the flats: those have no closed form here
 */
export function trianglePoints({ body, drills, grooves }: Steel, fineness: number): TrianglePoints {
  if (grooves.length > 0) throw new Error("plain triangles are not grooved");
  const thickness = (x: number, y: number): number => body.face(x, y, "right") + body.face(x, y, "left");
  const holeOf = ({ at, to, radius }: Drill): TrianglePoints["holes"][number] => {
    const { x, y } = at;
    const [low, middle, high] = [-radius, 0, radius].map((d) => thickness(x + d, y)) as [
      number,
      number,
      number,
    ];
    const isFlat = [-radius, radius].every((d) => Math.abs(thickness(x, y + d) - middle) < 1e-12);
    if (at !== to || !isFlat || Math.abs(low + high - 2 * middle) > 1e-12)
      throw new Error("plain triangles have round holes in the flats only");
    return { x, y, radius, thickness: middle, slope: (high - low) / (2 * radius) };
  };
  return { blocks: blocks(body).map((block) => blockPoints(block, fineness)), holes: drills.map(holeOf) };
}

/** A strip that bows out of the straight by more than this half way up is given as many rows as there are columns, mm. */
const BOWED = 0.01;

function blockPoints(block: Block, fineness: number): BlockPoints {
  const rowCounts = (face: FaceSection): number[] =>
    face.strips.map((_, k) => {
      const [low = 0, middle = 0, high = 0] = rowsOf(face, k, [0, 0.5, 1]).map((y) => face.height(y));
      return Math.abs(low + high - 2 * middle) / 2 > BOWED ? fineness : Math.ceil(fineness / 6);
    });
  const half = block.section(0.5);
  const counts = { right: rowCounts(half.right), left: rowCounts(half.left) };
  const heights = (face: FaceSection, rows: readonly number[]): number[] => [
    face.cuts[0] ?? 0,
    ...rows.flatMap((count, k) =>
      rowsOf(
        face,
        k,
        Array.from({ length: count }, (_, i) => (i + 1) / count),
      ),
    ),
  ];
  const sections = Array.from({ length: fineness + 1 }, (_, i) =>
    block.section((1 - Math.cos((Math.PI * i) / fineness)) / 2),
  );
  const [right = 0, left = 0] = SIDES.map((side) => counts[side].reduce((sum, count) => sum + count, 1));
  const coordinates = new Float64Array(3 * sections.length * (right + left));
  let n = 0;
  for (const side of SIDES) {
    for (const section of sections) {
      for (const y of heights(section[side], counts[side])) {
        const z = section[side].height(y);
        coordinates.set([section.x, y, side === "right" ? z : -z], n);
        n += 3;
      }
    }
  }
  return { columns: sections.length, right, left, coordinates };
}

/** Volume and centre of the closed mesh over the points, less the holes. */
export function weighTriangles({ blocks: all, holes }: TrianglePoints): TriangleWeight {
  let volume = 0;
  let mx = 0;
  let my = 0;
  let mz = 0;
  for (const block of all) {
    const { coordinates: c } = block;
    const corners = trianglesOf(block);
    let six = 0;
    let sx = 0;
    let sy = 0;
    let sz = 0;
    for (let i = 0; i < corners.length; i += 3) {
      const p = 3 * (corners[i] as number);
      const q = 3 * (corners[i + 1] as number);
      const r = 3 * (corners[i + 2] as number);
      const ax = c[p] as number;
      const ay = c[p + 1] as number;
      const az = c[p + 2] as number;
      const bx = c[q] as number;
      const by = c[q + 1] as number;
      const bz = c[q + 2] as number;
      const dx = c[r] as number;
      const dy = c[r + 1] as number;
      const dz = c[r + 2] as number;
      // Six times the tetrahedron between the triangle and the heel; its centre is a quarter of the corners' sum.
      const v = ax * (by * dz - bz * dy) + ay * (bz * dx - bx * dz) + az * (bx * dy - by * dx);
      six += v;
      sx += v * (ax + bx + dx);
      sy += v * (ay + by + dy);
      sz += v * (az + bz + dz);
    }
    volume += six / 6;
    mx += sx / 24;
    my += sy / 24;
    mz += sz / 24;
  }
  for (const { x, y, radius, thickness, slope } of holes) {
    const taken = Math.PI * radius * radius * thickness;
    volume -= taken;
    // ∬ x(t + slope·(x − x₀)) dA over the disc
    mx -= taken * x + (slope * Math.PI * radius ** 4) / 4;
    my -= taken * y;
  }
  return { volume, x: mx / volume, y: my / volume, z: mz / volume };
}

/** Corners of the triangles of one block: faces, walls along the outline, end sections. */
function trianglesOf({ columns, right, left }: BlockPoints): Uint32Array {
  const cells = (columns - 1) * (right - 1 + left - 1 + 2);
  const corners = new Uint32Array(3 * (2 * cells + 2 * (right + left - 1)));
  const base = columns * right;
  let n = 0;
  const triangle = (a: number, b: number, c: number): void => {
    corners[n++] = a;
    corners[n++] = b;
    corners[n++] = c;
  };
  const quad = (a: number, b: number, c: number, d: number): void => {
    triangle(a, b, c);
    triangle(a, c, d);
  };
  for (let i = 0; i + 1 < columns; i++) {
    const r0 = i * right;
    const r1 = r0 + right;
    const l0 = base + i * left;
    const l1 = l0 + left;
    for (let j = 0; j + 1 < right; j++) quad(r0 + j, r1 + j, r1 + j + 1, r0 + j + 1);
    for (let j = 0; j + 1 < left; j++) quad(l0 + j, l0 + j + 1, l1 + j + 1, l1 + j);
    quad(r0, l0, l1, r1);
    quad(r1 - 1, r1 + right - 1, l1 + left - 1, l1 - 1);
  }
  // An end section is plane: how it is cut into triangles does not matter, so all are drawn from its lowest point.
  const end = (r: number, l: number, turned: boolean): void => {
    const fan = (a: number, b: number): void => {
      if (turned) triangle(r, b, a);
      else triangle(r, a, b);
    };
    for (let j = 0; j + 1 < right; j++) fan(r + j, r + j + 1);
    fan(r + right - 1, l + left - 1);
    for (let j = left - 1; j > 0; j--) fan(l + j, l + j - 1);
  };
  end(0, base, false);
  end((columns - 1) * right, base + (columns - 1) * left, true);
  return corners;
}
