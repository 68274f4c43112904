// Shapes of OpenCascade from segments, points and sections: thin wrappers around its own makers.
import type { Segment, Vec2 } from "@scantling/geometry";
import type {
  gp_Pnt,
  OpenCascadeInstance,
  TopoDS_Edge,
  TopoDS_Shape,
  TopoDS_Wire,
} from "replicad-opencascadejs";
import { locate } from "./curve.js";

type Place = (at: Vec2) => gp_Pnt;

/** A closed path as a plane face at a height z, drawn out upward. */
export function prism(
  oc: OpenCascadeInstance,
  segments: readonly Segment[],
  from: number,
  to: number,
): TopoDS_Shape {
  const place: Place = ({ x, y }) => new oc.gp_Pnt(x, y, from);
  const face = new oc.BRepBuilderAPI_MakeFace(wireOf(oc, segments, place), true).Face();
  return new oc.BRepPrimAPI_MakePrism(face, new oc.gp_Vec(0, 0, to - from), false, true).Shape();
}

/** A polygon in x and z, drawn out along y both ways. */
export function sidewaysPrism(
  oc: OpenCascadeInstance,
  corners: readonly { readonly x: number; readonly z: number }[],
  reach: number,
): TopoDS_Shape {
  const points = corners.map(({ x, z }) => new oc.gp_Pnt(x, -reach, z));
  const face = new oc.BRepBuilderAPI_MakeFace(polygonWire(oc, points), true).Face();
  return new oc.BRepPrimAPI_MakePrism(face, new oc.gp_Vec(0, 2 * reach, 0), false, true).Shape();
}

export function common(oc: OpenCascadeInstance, a: TopoDS_Shape, b: TopoDS_Shape): TopoDS_Shape {
  return new oc.BRepAlgoAPI_Common(a, b, new oc.Message_ProgressRange()).Shape();
}

/** A solid through sections that have the same number of edges: ruled between them, or smooth. */
export function loft(oc: OpenCascadeInstance, wires: readonly TopoDS_Wire[], ruled: boolean): TopoDS_Shape {
  const sections = new oc.BRepOffsetAPI_ThruSections(true, ruled, 1e-9);
  for (const wire of wires) sections.AddWire(wire);
  sections.CheckCompatibility(false);
  sections.Build(new oc.Message_ProgressRange());
  return sections.Shape();
}

export function polygonWire(oc: OpenCascadeInstance, points: readonly gp_Pnt[]): TopoDS_Wire {
  const edges = points.flatMap((to, i) => {
    const from = points.at(i - 1);
    return from ? [new oc.BRepBuilderAPI_MakeEdge(from, to).Edge()] : [];
  });
  return wireFrom(oc, edges);
}

export function wireFrom(oc: OpenCascadeInstance, edges: readonly TopoDS_Edge[]): TopoDS_Wire {
  const wire = new oc.BRepBuilderAPI_MakeWire();
  for (const edge of edges) wire.Add(edge);
  return wire.Wire();
}

function wireOf(oc: OpenCascadeInstance, segments: readonly Segment[], place: Place): TopoDS_Wire {
  return wireFrom(
    oc,
    segments.map((segment) => {
      const [from, middle, to] = [0, 0.5, 1].map((t) => place(locate(segment, t))) as [
        gp_Pnt,
        gp_Pnt,
        gp_Pnt,
      ];
      if (segment.kind === "line") return new oc.BRepBuilderAPI_MakeEdge(from, to).Edge();
      if (segment.kind === "arc") return arcEdge(oc, from, middle, to);
      const poles = new oc.NCollection_Array1_gp_Pnt(1, 4);
      [segment.from, segment.control1, segment.control2, segment.to].forEach((pole, i) => {
        poles.SetValue(i + 1, place(pole));
      });
      return new oc.BRepBuilderAPI_MakeEdge(new oc.Geom_BezierCurve(poles)).Edge();
    }),
  );
}

/** Circular arc through three points. */
export function arcEdge(oc: OpenCascadeInstance, from: gp_Pnt, middle: gp_Pnt, to: gp_Pnt): TopoDS_Edge {
  return new oc.BRepBuilderAPI_MakeEdge(new oc.GC_MakeArcOfCircle(from, middle, to).Value()).Edge();
}

/** Every edge that a test picks by its two ends, with a radius rolled along it. */
export function fillet(
  oc: OpenCascadeInstance,
  shape: TopoDS_Shape,
  radius: number,
  picks: (ends: readonly gp_Pnt[]) => boolean,
): TopoDS_Shape {
  const maker = new oc.BRepFilletAPI_MakeFillet(shape, oc.ChFi3d_FilletShape.ChFi3d_Rational);
  const seen: TopoDS_Edge[] = [];
  const explorer = new oc.TopExp_Explorer(
    shape,
    oc.TopAbs_ShapeEnum.TopAbs_EDGE,
    oc.TopAbs_ShapeEnum.TopAbs_SHAPE,
  );
  for (; explorer.More(); explorer.Next()) {
    const edge = oc.TopoDS.Edge(explorer.Current());
    // Each edge comes once from either of its faces.
    if (seen.some((other) => other.IsSame(edge))) continue;
    seen.push(edge);
    const curve = new oc.BRepAdaptor_Curve(edge);
    const ends = [curve.Value(curve.FirstParameter()), curve.Value(curve.LastParameter())];
    if (picks(ends)) maker.Add(radius, edge);
  }
  return maker.Shape();
}
