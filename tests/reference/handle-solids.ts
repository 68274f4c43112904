// Handle blocks as exact solids of OpenCascade: ruled between ellipses, octagons or rounded rectangles, less the tang.
import type { gp_Pnt, OpenCascadeInstance, TopoDS_Shape, TopoDS_Wire } from "replicad-opencascadejs";
import type { BlockShape, HandleShapes, TangShape } from "./handle-shapes.js";
import { arcEdge, common, loft, polygonWire, prism, sidewaysPrism, wireFrom } from "./occ-shapes.js";
import { polyline } from "./outlines.js";
import { cut, drillShapes, type SolidWeight, weighShapes } from "./solids.js";

const REACH = 60;

/**
 * Weighs every block less the tang in it and the pins through it, and the pins.
 *
 * @param sections - between two stations of a handle whose sizes change smoothly.
 */
export function weighHandleSolids(
  oc: OpenCascadeInstance,
  { tang, blocks, pins }: HandleShapes,
  sections: number,
): Map<string, SolidWeight> {
  const steel = tangShape(oc, tang);
  const drills = pins.flatMap(({ x, y, radius }) => drillShapes(oc, roundAt(x, y, radius)));
  const whole = blocks.map((block) => ({ name: block.name, pieces: blockPieces(oc, block, sections) }));
  const weights = new Map<string, SolidWeight>();
  for (const { name, pieces } of whole)
    weights.set(
      name,
      weighShapes(
        oc,
        pieces.map((piece) => cut(oc, piece, [steel, ...drills])),
        ACCURACY,
      ),
    );
  if (drills.length > 0) {
    const rods = whole.flatMap(({ pieces }) =>
      pieces.flatMap((piece) => drills.map((rod) => common(oc, piece, rod))),
    );
    weights.set("pins", weighShapes(oc, rods, ACCURACY));
  }
  return weights;
}

/** Aimed at in OpenCascade's integrals, relative. */
const ACCURACY = 1e-9;

function roundAt(x: number, y: number, radius: number) {
  const at = { x, y };
  return { at, to: at, radius };
}

/** The outline behind the handle front, as thick as the profile says. */
function tangShape(oc: OpenCascadeInstance, { outline, profile }: TangShape): TopoDS_Shape {
  const { tangTop, butt, tangBottom } = outline.runs;
  const [first, last] = [tangTop[0], tangBottom.at(-1)];
  if (!first || !last) throw new Error("a tang has a top and a bottom");
  const closed = [...tangTop, ...butt, ...tangBottom, ...polyline(last.to, first.from)];
  const corners = [
    ...profile.map(({ x, half }) => ({ x, z: half })),
    ...[...profile].reverse().map(({ x, half }) => ({ x, z: -half })),
  ];
  return common(oc, prism(oc, closed, -REACH, REACH), sidewaysPrism(oc, corners, REACH));
}

/** One solid between any two stations. */
function blockPieces(oc: OpenCascadeInstance, block: BlockShape, sections: number): TopoDS_Shape[] {
  return block.stations.slice(1).map((to, k) => {
    const from = block.stations[k] ?? to;
    const count = block.smooth ? sections : 1;
    const wires = Array.from({ length: count + 1 }, (_, i) =>
      sectionWire(oc, block, i === count ? to : from + ((to - from) * i) / count),
    );
    return loft(oc, wires, !block.smooth);
  });
}

function sectionWire(oc: OpenCascadeInstance, block: BlockShape, x: number): TopoDS_Wire {
  const { halfHeight: a, halfWidth: b, corner } = block.section(x);
  const at = (u: number, z: number): gp_Pnt => new oc.gp_Pnt(x, block.centre + u, z);
  if (block.form === "oval") {
    // Its first axis has to be the longer one.
    const long = a >= b ? new oc.gp_Dir(0, 1, 0) : new oc.gp_Dir(0, 0, 1);
    const axes = new oc.gp_Ax2(at(0, 0), new oc.gp_Dir(1, 0, 0), long);
    const ellipse = new oc.gp_Elips(axes, Math.max(a, b), Math.min(a, b));
    return wireFrom(oc, [new oc.BRepBuilderAPI_MakeEdge(ellipse).Edge()]);
  }
  if (block.form === "box") return polygonWire(oc, [at(a, b), at(-a, b), at(-a, -b), at(a, -b)]);
  // The two ends of every corner, once round.
  const corners = [
    { u: 1, z: 1 },
    { u: -1, z: 1 },
    { u: -1, z: -1 },
    { u: 1, z: -1 },
  ].map(({ u, z }) => {
    const high = at(u * a, z * (b - corner));
    const wide = at(u * (a - corner), z * b);
    const inward = corner * (1 - Math.SQRT1_2);
    const middle = at(u * (a - inward), z * (b - inward));
    return u * z > 0 ? { from: high, middle, to: wide } : { from: wide, middle, to: high };
  });
  if (block.form === "octagonal")
    return polygonWire(
      oc,
      corners.flatMap(({ from, to }) => [from, to]),
    );
  return wireFrom(
    oc,
    corners.flatMap(({ from, middle, to }, i) => {
      const next = corners[(i + 1) % corners.length]?.from ?? from;
      return [arcEdge(oc, from, middle, to), new oc.BRepBuilderAPI_MakeEdge(to, next).Edge()];
    }),
  );
}
