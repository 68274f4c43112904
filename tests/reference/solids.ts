// The reference body as boundary-represented solids, weighed by OpenCascade: every block is sewn from B-spline surfaces
// that interpolate exact points of the body, no face running across a crease; round holes are cut by true cylinders.
import init, { type OpenCascadeInstance, type TopoDS_Shape } from "replicad-opencascadejs";
import type { Hole, ReferenceBody } from "./body.js";
import { type Block, blocks, MISSING, type Section } from "./layout.js";

export interface SolidWeight {
  readonly volume: number;
  readonly x: number;
  readonly y: number;
}

type Point = readonly [number, number, number];
type Grid = readonly (readonly Point[])[];

export const loadOpenCascade = (): Promise<OpenCascadeInstance> => init();

/** Points of the faces of every half block, ready for the library: what does not belong to its time. */
export interface SolidParts {
  readonly blocks: readonly { readonly faces: readonly Grid[]; readonly holes: readonly Hole[] }[];
}

/**
 * Samples the body.
 *
 * @param fineness - sections per block; the surfaces between them are cubic, so their error falls with its fourth power
 */
export function solidParts(body: ReferenceBody, fineness: number): SolidParts {
  return {
    blocks: blocks(body).map((block) => ({
      faces: halfBlockFaces(block, fineness),
      holes: body.holes.filter(({ x, radius }) => x + radius > block.from && x - radius < block.to),
    })),
  };
}

/** Volume and mass centre of the body, from OpenCascade's own volume integrals over its own solids. */
export function weighSolids(
  oc: OpenCascadeInstance,
  { blocks: parts }: SolidParts,
  accuracy = 1e-6,
): SolidWeight {
  const total = new oc.GProp_GProps();
  for (const { faces, holes } of parts) {
    const sewing = new oc.BRepBuilderAPI_Sewing(1e-4, true, true, true, false);
    for (const face of faces) sewing.Add(interpolatedFace(oc, face));
    sewing.Perform(new oc.Message_ProgressRange());
    let solid: TopoDS_Shape = new oc.ShapeFix_Solid().SolidFromShell(oc.TopoDS.Shell(sewing.SewedShape()));
    for (const hole of holes) {
      const axis = new oc.gp_Ax2(new oc.gp_Pnt(hole.x, hole.y, -1), new oc.gp_Dir(0, 0, 1));
      const drill = new oc.BRepPrimAPI_MakeCylinder(axis, hole.radius, 100).Shape();
      solid = new oc.BRepAlgoAPI_Cut(solid, drill, new oc.Message_ProgressRange()).Shape();
    }
    const part = new oc.GProp_GProps();
    oc.BRepGProp.VolumeProperties(solid, part, accuracy, false, false);
    total.Add(part, 1);
  }
  const centre = total.CentreOfMass();
  return { volume: 2 * total.Mass(), x: centre.X(), y: centre.Y() };
}

/** A face may run out to nothing at the end of a block, and the tip is a point: there the loft stops just short of it. */
function inset(block: Block, end: 0 | 1): number {
  const heights = (share: number): number[] => {
    const { cuts } = block.section(share);
    return cuts.slice(1).map((cut, k) => cut - (cuts[k] ?? 0));
  };
  const there = heights(end);
  const runsOut = heights(0.5).some((height, k) => height > MISSING && (there[k] ?? 0) < 1e-5);
  return runsOut ? 5e-6 : 0;
}

/** The faces that close the half of a block above the centre plane, that plane included. */
function halfBlockFaces(block: Block, fineness: number): Grid[] {
  const first = inset(block, 0);
  const last = 1 - inset(block, 1);
  const sections = Array.from({ length: fineness + 1 }, (_, i): Section => {
    const share = (1 - Math.cos((Math.PI * i) / fineness)) / 2;
    return block.section(first + share * (last - first));
  });
  const middle = block.section(0.5);
  const rows = Math.max(4, Math.ceil(fineness / 2));
  const faces: Grid[] = [];
  for (const k of [0, 1, 2].filter(
    (strip) => (middle.cuts[strip + 1] ?? 0) - (middle.cuts[strip] ?? 0) > MISSING,
  )) {
    const strip = (section: Section, height: (y: number) => number): Point[] => {
      const a = section.cuts[k] ?? 0;
      const b = section.cuts[k + 1] ?? 0;
      return Array.from({ length: rows + 1 }, (_, j): Point => {
        const y = j === rows ? b : a + ((b - a) * j) / rows;
        return [section.x, y, height(y)];
      });
    };
    faces.push(sections.map((section) => strip(section, section.half)));
    faces.push(sections.map((section) => strip(section, () => 0)));
    for (const end of [sections[0], sections[fineness]])
      if (end) faces.push(upright(strip(end, end.half), rows));
  }
  const bottomThick = middle.half(middle.cuts[0] ?? 0) > MISSING;
  for (const boundary of bottomThick ? [0, 3] : [3]) {
    const top = sections.map((section): Point => {
      const y = section.cuts[boundary] ?? 0;
      return [section.x, y, section.half(y)];
    });
    faces.push(upright(top, rows));
  }
  return faces;
}

/** A wall from the centre plane up to a row of points. */
function upright(top: readonly Point[], rows: number): Grid {
  return top.map(([x, y, z]) => Array.from({ length: rows + 1 }, (_, j): Point => [x, y, (z * j) / rows]));
}

function interpolatedFace(oc: OpenCascadeInstance, grid: Grid): TopoDS_Shape {
  const columns = grid.length;
  const rows = grid[0]?.length ?? 0;
  const points = new oc.NCollection_Array2_gp_Pnt(1, columns, 1, rows);
  grid.forEach((column, i) => {
    column.forEach(([x, y, z], j) => {
      points.SetValue(i + 1, j + 1, new oc.gp_Pnt(x, y, z));
    });
  });
  const surface = new oc.GeomAPI_PointsToBSplineSurface();
  surface.Interpolate(points, false);
  if (!surface.IsDone()) throw new Error("OpenCascade could not interpolate a face");
  return new oc.BRepBuilderAPI_MakeFace(surface.Surface(), 1e-7).Face();
}
