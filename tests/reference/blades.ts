// Three knives that every outside reference weighs. The outlines are explicit runs, written here both as SVG path
// data for the kernel and as segments for the references, so that the reading of paths is checked as well.
import type { Segment } from "@scantling/geometry";
import { DEGREE, outlineOf, p, polyline, type ReferenceKnife, runsSpec } from "./outlines.js";

/** Square front, edge straight and then lifting along an arc; flat bevel of part height, flank taper, tapered tang with holes. */
export function squareFront(): ReferenceKnife {
  // The belly is a circle level at (150, 0) that climbs 12 mm over 75 mm.
  const radius = (75 * 75 + 12 * 12) / 24;
  const belly: Segment = {
    kind: "arc",
    from: p(150, 0),
    to: p(225, 12),
    centre: p(150, radius),
    radius,
    startAngle: -Math.PI / 2,
    sweep: Math.asin(75 / radius),
  };
  const outline = outlineOf(
    {
      edge: [...polyline(p(0, 0), p(150, 0)), belly],
      front: polyline(p(225, 12), p(225, 92)),
      spine: polyline(p(225, 92), p(-10, 92)),
      tangTop: polyline(p(-10, 92), p(-74, 92), p(-138, 92)),
      butt: polyline(p(-138, 92), p(-138, 62)),
      tangBottom: polyline(p(-138, 62), p(-74, 67), p(-10, 64)),
      heelFace: polyline(p(-10, 64), p(0, 64), p(0, 0)),
    },
    225,
    10,
    -138,
  );
  return {
    name: "square front, flat",
    outline,
    spec: {
      steel: { name: "1084", density: 0.00785 },
      blade: {
        outline: runsSpec(outline),
        ricasso: 10,
        thickness: [
          { at: { kind: "heel" }, is: 4.6 },
          { at: { kind: "fraction", share: 0.6 }, is: 3.6 },
          { at: { kind: "tip" }, is: 2.2 },
        ],
        between: "straight",
        flankTaper: 0.3,
        bevel: { form: "flat", height: 48, edgeThickness: 0.5 },
        edgeAngle: 16 * DEGREE,
      },
      tang: {
        form: "full",
        buttThickness: 2.4,
        holes: [
          { kind: "pin", at: p(-26, 76), diameter: 4 },
          { kind: "pin", at: p(-84, 76), diameter: 4 },
          { kind: "thong", at: p(-116, 76), diameter: 6 },
        ],
      },
    },
  };
}

/** Drop point with cubic belly and spine, a plunge that eases in, bevel height by stations, tapered tang with a round butt. */
export function dropPoint(): ReferenceKnife {
  const butt: Segment = {
    kind: "arc",
    from: p(-112, 26),
    to: p(-112, 2),
    centre: p(-112, 14),
    radius: 12,
    startAngle: Math.PI / 2,
    sweep: Math.PI,
  };
  const outline = outlineOf(
    {
      edge: [
        ...polyline(p(0, 0), p(60, 0)),
        { kind: "cubic", from: p(60, 0), control1: p(82, 0), control2: p(104, 8), to: p(118, 20) },
      ],
      spine: [
        { kind: "cubic", from: p(118, 20), control1: p(104, 27), control2: p(88, 30), to: p(66, 30) },
        ...polyline(p(66, 30), p(-8, 30)),
      ],
      tangTop: polyline(p(-8, 30), p(-60, 27), p(-112, 26)),
      butt: [butt],
      tangBottom: polyline(p(-112, 2), p(-60, 5), p(-8, 3)),
      heelFace: polyline(p(-8, 3), p(0, 3), p(0, 0)),
    },
    118,
    8,
    -124,
  );
  return {
    name: "drop point, flat",
    outline,
    spec: {
      steel: { name: "80CrV2", density: 0.00785 },
      blade: {
        outline: runsSpec(outline),
        ricasso: 8,
        thickness: [
          { at: { kind: "heel" }, is: 4 },
          { at: { kind: "tip" }, is: 2.4 },
        ],
        plunge: { at: 2, length: 9 },
        bevel: {
          form: "flat",
          height: [
            { at: { kind: "heel" }, is: 18 },
            { at: { kind: "distance", mm: 70 }, is: 21 },
          ],
          edgeThickness: 0.45,
        },
        edgeAngle: 18 * DEGREE,
      },
      tang: {
        form: "full",
        buttThickness: 1.8,
        holes: [
          { kind: "pin", at: p(-30, 16), diameter: 5 },
          { kind: "pin", at: p(-88, 15), diameter: 5 },
        ],
      },
    },
  };
}

/** Straight back, convex to the spine, smooth taper, a little belly in one cubic, parallel tang. */
export function convexStraightBack(): ReferenceKnife {
  const outline = outlineOf(
    {
      edge: [
        ...polyline(p(0, 0), p(30, 0)),
        { kind: "cubic", from: p(30, 0), control1: p(110, 0), control2: p(180, 10), to: p(215, 46) },
      ],
      spine: polyline(p(215, 46), p(-12, 46)),
      tangTop: polyline(p(-12, 46), p(-130, 44)),
      butt: polyline(p(-130, 44), p(-130, 20)),
      tangBottom: polyline(p(-130, 20), p(-12, 22)),
      heelFace: polyline(p(-12, 22), p(0, 22), p(0, 0)),
    },
    215,
    12,
    -130,
  );
  return {
    name: "straight back, convex",
    outline,
    spec: {
      steel: { name: "52100", density: 0.00781 },
      blade: {
        outline: runsSpec(outline),
        ricasso: 12,
        thickness: [
          { at: { kind: "heel" }, is: 3.2 },
          { at: { kind: "distance", mm: 60 }, is: 2.6 },
          { at: { kind: "fraction", share: 0.75 }, is: 2.0 },
          { at: { kind: "tip" }, is: 1.2 },
        ],
        between: "smooth",
        bevel: { form: "convex", height: "full", edgeThickness: 0.3, crown: { share: 0.08 } },
        edgeAngle: 14 * DEGREE,
      },
      tang: { form: "full", holes: [{ kind: "pin", at: p(-60, 33), diameter: 6 }] },
    },
  };
}

export const referenceKnives = (): readonly ReferenceKnife[] => [
  squareFront(),
  dropPoint(),
  convexStraightBack(),
];
