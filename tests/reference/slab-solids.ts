// Slabs of one thickness on a parallel tang as exact solids of OpenCascade: the outline drawn out, its long edges rounded
// by a rolling ball, cut into layers, drilled.
import type { KnifeSpec, Outline } from "@scantling/geometry";
import type { gp_Pnt, OpenCascadeInstance, TopoDS_Shape } from "replicad-opencascadejs";
import { common, fillet, prism } from "./occ-shapes.js";
import { polyline } from "./outlines.js";
import { cut, drillShapes, type SolidWeight, weighShapes } from "./solids.js";

const REACH = 100;
const ACCURACY = 1e-9;

/** Slabs, liners, pins and bolsters of a knife whose tang and slabs have one thickness each. */
export function weighSlabSolids(
  oc: OpenCascadeInstance,
  { tang, blade, handle = {} }: KnifeSpec,
  outline: Outline,
): Map<string, SolidWeight> {
  const { slabs, liners, bolsters = [] } = handle;
  const thickness = slabs?.thickness;
  const steel = blade.thickness[0]?.is;
  if (typeof thickness !== "number" || steel === undefined || blade.thickness.length > 1)
    throw new Error("these solids have one thickness each");
  const { tangTop, butt, tangBottom } = outline.runs;
  const [top, bottom] = [tangTop[0], tangBottom.at(-1)];
  if (!top || !bottom) throw new Error("a tang has a top and a bottom");
  const flats = [...tangTop, ...butt, ...tangBottom, ...polyline(bottom.to, top.from)];
  const layer = (half: number): TopoDS_Shape => prism(oc, flats, -half, half);
  const lined = steel / 2 + (liners?.thickness ?? 0);
  const half = lined + thickness;
  // A long side's edges run along x and lie in the outer faces.
  const isLong = ([a, b]: readonly gp_Pnt[]): boolean =>
    a !== undefined &&
    b !== undefined &&
    Math.abs(a.X() - b.X()) > 1 &&
    Math.abs(Math.abs(a.Z()) - half) < 1e-6 &&
    Math.abs(a.Z() - b.Z()) < 1e-6;
  const whole = fillet(oc, layer(half), slabs?.edgeRadius ?? 0, isLong);

  const pins = (tang.holes ?? []).filter(({ kind }) => kind === "pin");
  const rods = pins.flatMap(({ at, diameter, pin }) =>
    drillShapes(oc, { at, to: at, radius: (pin ?? diameter) / 2 }),
  );
  const boxes = bolsters.map(({ at, length, height, width, centre = 0 }) => ({
    solid: box(oc, [at - length, centre - height / 2, -width / 2], [at, centre + height / 2, width / 2]),
    place: box(oc, [at - length, -REACH, -REACH], [at, REACH, REACH]),
  }));
  const places = boxes.map(({ place }) => place);
  const between = (outer: TopoDS_Shape, inner: number): TopoDS_Shape =>
    cut(oc, outer, [layer(inner), ...places, ...rods]);
  const weigh = (shapes: readonly TopoDS_Shape[]): SolidWeight => weighShapes(oc, shapes, ACCURACY);
  return new Map([
    ["slabs", weigh([between(whole, lined)])],
    ["liners", weigh([between(layer(lined), steel / 2)])],
    ["pins", weigh(rods.map((rod) => common(oc, whole, rod)))],
    ["bolsters", weigh(boxes.map(({ solid }) => cut(oc, solid, [layer(steel / 2)])))],
  ]);
}

type Triple = readonly [number, number, number];

function box(oc: OpenCascadeInstance, from: Triple, to: Triple): TopoDS_Shape {
  return new oc.BRepPrimAPI_MakeBox(new oc.gp_Pnt(...from), new oc.gp_Pnt(...to)).Shape();
}
