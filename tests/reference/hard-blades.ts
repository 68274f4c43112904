// Knives whose distance to the edge is awkward: corners, round ends, edges that bend both ways. Their creases run across
// the sections, so only the quadrature takes them, not the meshes and lofts.
import type { KnifeSpec, Segment } from "@scantling/geometry";
import { DEGREE, outlineOf, p, polyline, type ReferenceKnife, runsSpec } from "./outlines.js";

const STEEL: KnifeSpec["steel"] = { name: "1095", density: 0.00785 };
const TANG = polyline(p(0, 28), p(-90, 26));
const BUTT = polyline(p(-90, 26), p(-90, 6));
const TANG_BOTTOM = polyline(p(-90, 6), p(0, 8));
const HEEL_FACE = polyline(p(0, 8), p(0, 0));

/** A corner in the edge: two facets that meet in a ridge up the middle of the steel. */
function corneredEdge(): ReferenceKnife {
  const outline = outlineOf(
    {
      edge: polyline(p(0, 0), p(120, 0), p(150, 28)),
      spine: polyline(p(150, 28), p(0, 28)),
      tangTop: TANG,
      butt: BUTT,
      tangBottom: TANG_BOTTOM,
      heelFace: HEEL_FACE,
    },
    150,
    0,
    -90,
  );
  return {
    name: "corner in the edge",
    outline,
    spec: {
      steel: STEEL,
      blade: {
        outline: runsSpec(outline),
        thickness: [
          { at: { kind: "heel" }, is: 5 },
          { at: { kind: "tip" }, is: 3.5 },
        ],
        flankTaper: 0.4,
        bevel: { form: "flat", height: 20, edgeThickness: 0.6 },
        edgeAngle: 22 * DEGREE,
      },
      tang: { form: "full" },
    },
  };
}

/** The edge runs up a quarter circle whose centre lies inside the blade: beyond it the nearest point jumps. */
function roundEnd(): ReferenceKnife {
  const end: Segment = {
    kind: "arc",
    from: p(100, 0),
    to: p(112, 12),
    centre: p(100, 12),
    radius: 12,
    startAngle: -Math.PI / 2,
    sweep: Math.PI / 2,
  };
  const outline = outlineOf(
    {
      edge: [...polyline(p(0, 0), p(100, 0)), end],
      spine: [
        { kind: "cubic", from: p(112, 12), control1: p(112, 22), control2: p(104, 28), to: p(90, 28) },
        ...polyline(p(90, 28), p(0, 28)),
      ],
      tangTop: TANG,
      butt: BUTT,
      tangBottom: TANG_BOTTOM,
      heelFace: HEEL_FACE,
    },
    112,
    0,
    -90,
  );
  return {
    name: "round end",
    outline,
    spec: {
      steel: STEEL,
      blade: {
        outline: runsSpec(outline),
        thickness: [{ at: { kind: "heel" }, is: 3 }],
        bevel: { form: "convex", height: "full", edgeThickness: 0.5 },
        edgeAngle: 20 * DEGREE,
      },
      tang: { form: "full" },
    },
  };
}

/** An edge that bends in and then out, laws by stations, a slow plunge, and holes across the bevel line. */
function recurvedAndDrilled(): ReferenceKnife {
  const outline = outlineOf(
    {
      edge: [{ kind: "cubic", from: p(0, 0), control1: p(45, 12), control2: p(95, -14), to: p(140, 18) }],
      spine: [
        { kind: "cubic", from: p(140, 18), control1: p(120, 29), control2: p(90, 30), to: p(60, 30) },
        { kind: "cubic", from: p(60, 30), control1: p(40, 30), control2: p(20, 28), to: p(0, 28) },
      ],
      tangTop: TANG,
      butt: BUTT,
      tangBottom: TANG_BOTTOM,
      heelFace: HEEL_FACE,
    },
    140,
    0,
    -90,
  );
  return {
    name: "recurved edge, drilled bevel",
    outline,
    spec: {
      steel: STEEL,
      blade: {
        outline: runsSpec(outline),
        thickness: [
          { at: { kind: "heel" }, is: 4.2 },
          { at: { kind: "distance", mm: 40 }, is: 4.4 },
          { at: { kind: "fraction", share: 0.6 }, is: 3 },
          { at: { kind: "tip" }, is: 2 },
        ],
        between: "smooth",
        flankTaper: [
          { at: { kind: "heel" }, is: 0.2 },
          { at: { kind: "tip" }, is: 0.1 },
        ],
        plunge: { at: 5, length: 20 },
        bevel: {
          form: "convex",
          height: [
            { at: { kind: "heel" }, is: 13 },
            { at: { kind: "tip" }, is: 17 },
          ],
          edgeThickness: [
            { at: { kind: "heel" }, is: 0.7 },
            { at: { kind: "tip" }, is: 0.4 },
          ],
          crown: { mm: 0.15 },
        },
        edgeAngle: 19 * DEGREE,
        holes: [
          { kind: "lightening", at: p(50, 17), diameter: 9 },
          { kind: "lightening", at: p(16, 16), diameter: 5 },
        ],
      },
      tang: {
        form: "full",
        thickness: [
          { at: { kind: "handle" }, is: 4.2 },
          { at: { kind: "distance", mm: 30 }, is: 3.4 },
          { at: { kind: "butt" }, is: 2.5 },
        ],
        between: "smooth",
      },
    },
  };
}

export const hardKnives = (): readonly ReferenceKnife[] => [corneredEdge(), roundEnd(), recurvedAndDrilled()];
