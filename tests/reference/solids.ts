// The reference body as boundary-represented solids, weighed by OpenCascade: every block is sewn from polynomial surfaces
// through exact points of the body, no face running across a crease; holes, slots and grooves are cut by true
// cylinders, boxes and spheres.
import init, { type OpenCascadeInstance, type TopoDS_Shape } from "replicad-opencascadejs";
import type { Drill, Groove, Steel } from "./cutters.js";
import { type Block, blocks, MISSING, rowsOf, type Section, SIDES, type Side } from "./layout.js";
import { controlPoints, type Grid, nodes, type Point } from "./patches.js";

export interface SolidWeight {
  readonly volume: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export const loadOpenCascade = (): Promise<OpenCascadeInstance> => init();

/** Control points of the faces of every half block, ready for the library: what does not belong to its time. */
export interface SolidParts {
  /** Both faces are the same: only the right half is there, and counts twice. */
  readonly even: boolean;
  readonly halves: readonly {
    readonly faces: readonly Grid[];
    readonly drills: readonly Drill[];
    readonly grooves: readonly Groove[];
  }[];
}

/**
 * Samples the body.
 *
 * @param fineness - degree of the surfaces along x, with as many sections per block and one more
 */
export function solidParts({ body, drills, grooves }: Steel, fineness: number): SolidParts {
  const all = blocks(body);
  const even =
    all.every(isEven) && grooves.every(({ at, z }) => grooves.some((one) => one.at === at && one.z === -z));
  const halves = all.flatMap((block) => {
    const within = (tool: Drill): boolean =>
      Math.max(tool.at.x, tool.to.x) + tool.radius > block.from &&
      Math.min(tool.at.x, tool.to.x) - tool.radius < block.to;
    return (even ? (["right"] as const) : SIDES)
      .filter((side) => isThick(block.section(0.5), side))
      .map((side) => ({
        faces: halfBlockFaces(block, side, fineness).map(controlPoints),
        drills: drills.filter(within),
        grooves: grooves.filter(
          (groove) => within(groove) && (side === "right" ? groove.z > 0 : groove.z < 0),
        ),
      }));
  });
  return { even, halves };
}

/** Volume and mass centre of the body, from OpenCascade's own volume integrals over its own solids. */
export function weighSolids(oc: OpenCascadeInstance, parts: SolidParts, accuracy = 1e-6): SolidWeight {
  const shapes = parts.halves.map(({ faces, drills, grooves }) => {
    const sewing = new oc.BRepBuilderAPI_Sewing(1e-4, true, true, true, false);
    for (const face of faces) sewing.Add(polynomialFace(oc, face));
    sewing.Perform(new oc.Message_ProgressRange());
    const solid = new oc.ShapeFix_Solid().SolidFromShell(oc.TopoDS.Shell(sewing.SewedShape()));
    const tools = [
      ...drills.flatMap((drill) => drillShapes(oc, drill)),
      ...grooves.flatMap((groove) => grooveShapes(oc, groove)),
    ];
    return cut(oc, solid, tools);
  });
  const { volume, x, y, z } = weighShapes(oc, shapes, accuracy);
  return parts.even ? { volume: 2 * volume, x, y, z: 0 } : { volume, x, y, z };
}

/** Volume and mass centre of shapes that do not overlap. */
export function weighShapes(
  oc: OpenCascadeInstance,
  shapes: readonly TopoDS_Shape[],
  accuracy = 1e-6,
): SolidWeight {
  const total = new oc.GProp_GProps();
  for (const shape of shapes) {
    const part = new oc.GProp_GProps();
    oc.BRepGProp.VolumeProperties(shape, part, accuracy, false, false);
    total.Add(part, 1);
  }
  const centre = total.CentreOfMass();
  return { volume: total.Mass(), x: centre.X(), y: centre.Y(), z: centre.Z() };
}

export function cut(
  oc: OpenCascadeInstance,
  shape: TopoDS_Shape,
  tools: readonly TopoDS_Shape[],
): TopoDS_Shape {
  return tools.reduce(
    (rest, tool) => new oc.BRepAlgoAPI_Cut(rest, tool, new oc.Message_ProgressRange()).Shape(),
    shape,
  );
}

const REACH = 100;

/** A round hole's cylinder; for a slot two of them and the box between, which are cut one after the other. */
export function drillShapes(oc: OpenCascadeInstance, { at, to, radius }: Drill): TopoDS_Shape[] {
  const round = ({ x, y }: Drill["at"]): TopoDS_Shape => {
    const axis = new oc.gp_Ax2(new oc.gp_Pnt(x, y, -REACH), new oc.gp_Dir(0, 0, 1));
    return new oc.BRepPrimAPI_MakeCylinder(axis, radius, 2 * REACH).Shape();
  };
  if (at === to) return [round(at)];
  const [dx, dy] = [to.x - at.x, to.y - at.y];
  const length = Math.hypot(dx, dy);
  const [ux, uy] = [dx / length, dy / length];
  const corner = new oc.gp_Pnt(at.x + radius * uy, at.y - radius * ux, -REACH);
  const axes = new oc.gp_Ax2(corner, new oc.gp_Dir(0, 0, 1), new oc.gp_Dir(ux, uy, 0));
  const box = new oc.BRepPrimAPI_MakeBox(axes, length, 2 * radius, 2 * REACH).Shape();
  return [round(at), box, round(to)];
}

function grooveShapes(oc: OpenCascadeInstance, { at, to, radius, z }: Groove): TopoDS_Shape[] {
  const ends = [at, to].map(({ x, y }) => new oc.gp_Pnt(x, y, z));
  const [dx, dy] = [to.x - at.x, to.y - at.y];
  const axis = new oc.gp_Ax2(new oc.gp_Pnt(at.x, at.y, z), new oc.gp_Dir(dx, dy, 0));
  const rod = new oc.BRepPrimAPI_MakeCylinder(axis, radius, Math.hypot(dx, dy)).Shape();
  return [rod, ...ends.map((end) => new oc.BRepPrimAPI_MakeSphere(end, radius).Shape())];
}

/** Thickness of a half at a height, counted from the section's middle. */
const halfThickness = (section: Section, side: Side, y: number): number =>
  section[side].height(y) - (side === "right" ? section.middle : -section.middle);

const isThick = (section: Section, side: Side): boolean =>
  section[side].cuts.slice(1).some((to, k) => {
    const from = section[side].cuts[k] ?? to;
    return [from, (from + to) / 2, to].some((y) => halfThickness(section, side, y) > MISSING);
  });

/** Whether both faces are the same, from three sections of the block. */
function isEven(block: Block): boolean {
  return [0.1, 0.5, 0.9].every((share) => {
    const { right, left } = block.section(share);
    const same = (y: number, k: number): boolean =>
      Math.abs(y - (left.cuts[k] ?? Number.NaN)) < MISSING &&
      Math.abs(right.height(y) - left.height(y)) < MISSING;
    return right.cuts.length === left.cuts.length && right.cuts.every(same);
  });
}

/** A strip may run out to nothing at the end of a block, and the tip is a point: there the loft stops just short of it. */
function inset(block: Block, side: Side, end: 0 | 1): number {
  const heights = (share: number): number[] => {
    const { cuts } = block.section(share)[side];
    return cuts.slice(1).map((cut, k) => cut - (cuts[k] ?? 0));
  };
  const there = heights(end);
  const runsOut = heights(0.5).some((height, k) => height > MISSING && (there[k] ?? 0) < 1e-5);
  return runsOut ? Math.max(1e-6, 2e-6 / (block.to - block.from)) : 0;
}

/** The faces that close a half block: its own face, the plane that parts the halves, walls and ends. */
function halfBlockFaces(block: Block, side: Side, fineness: number): Grid[] {
  const outward = side === "right" ? 1 : -1;
  const first = inset(block, side, 0);
  const last = 1 - inset(block, side, 1);
  // Drawn together at the ends, where an outline may be round: there its height goes with the root of the way.
  const sections = nodes(fineness).map((t) => {
    const share = (1 - Math.cos(Math.PI * t)) / 2;
    return block.section(first + share * (last - first));
  });
  const middle = block.section(0.5);
  const rows = nodes(Math.max(2, Math.ceil(fineness / 2)));
  const upright = (tops: readonly Point[]): Grid =>
    tops.map(([x, y, z]) => {
      const base = sections.find((section) => section.x === x)?.middle ?? 0;
      return rows.map((share): Point => [x, y, base + (z - base) * share]);
    });
  const faces: Grid[] = [];
  const { cuts } = middle[side];
  cuts.slice(1).forEach((to, k) => {
    if (to - (cuts[k] ?? to) <= MISSING) return;
    const strip = (section: Section, height: (y: number) => number): Point[] =>
      rowsOf(section[side], k, rows).map((y): Point => [section.x, y, height(y)]);
    const outer = (section: Section): Point[] => strip(section, (y) => outward * section[side].height(y));
    faces.push(sections.map(outer));
    faces.push(sections.map((section) => strip(section, () => section.middle)));
    for (const end of [sections[0], sections[fineness]]) if (end) faces.push(upright(outer(end)));
  });
  for (const boundary of [0, cuts.length - 1]) {
    if (halfThickness(middle, side, cuts[boundary] ?? 0) <= MISSING) continue;
    const top = sections.map((section): Point => {
      const y = section[side].cuts[boundary] ?? 0;
      return [section.x, y, outward * section[side].height(y)];
    });
    faces.push(upright(top));
  }
  return faces;
}

/** One span each way, of as many degrees as there are control points and one less. */
function polynomialFace(oc: OpenCascadeInstance, grid: Grid): TopoDS_Shape {
  const poles = new oc.NCollection_Array2_gp_Pnt(1, grid.length, 1, grid[0]?.length ?? 0);
  grid.forEach((column, i) => {
    column.forEach(([x, y, z], j) => {
      poles.SetValue(i + 1, j + 1, new oc.gp_Pnt(x, y, z));
    });
  });
  const knots = new oc.NCollection_Array1_double(1, 2);
  knots.SetValue(1, 0);
  knots.SetValue(2, 1);
  const ends = (degree: number) => {
    const counts = new oc.NCollection_Array1_int(1, 2);
    counts.SetValue(1, degree + 1);
    counts.SetValue(2, degree + 1);
    return counts;
  };
  const [m, n] = [grid.length - 1, (grid[0]?.length ?? 0) - 1];
  const surface = new oc.Geom_BSplineSurface(poles, knots, knots, ends(m), ends(n), m, n, false, false);
  return new oc.BRepBuilderAPI_MakeFace(surface, 1e-7).Face();
}
