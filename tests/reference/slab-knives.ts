// Knives with slabs on a full tang, their long edges rounded: of one thickness with liners, bolsters and pins, and with a
// contour on a tapered tang.
import type { HandleSpec, Segment, TangSpec } from "@scantling/geometry";
import { outlineOf, p, polyline, type ReferenceKnife, runsSpec } from "./outlines.js";

const BUTT = -122;
const HANDLE_FRONT = -10;

function fullTang(
  name: string,
  top: Segment,
  bottom: Segment,
  tang: TangSpec,
  handle: HandleSpec,
): ReferenceKnife {
  const outline = outlineOf(
    {
      edge: polyline(p(0, 0), p(120, 0)),
      front: polyline(p(120, 0), p(120, 36)),
      spine: polyline(p(120, 36), p(HANDLE_FRONT, 36)),
      tangTop: [top],
      butt: polyline(top.to, bottom.from),
      tangBottom: [bottom],
      heelFace: polyline(bottom.to, p(0, bottom.to.y), p(0, 0)),
    },
    120,
    -HANDLE_FRONT,
    BUTT,
  );
  return {
    name,
    outline,
    spec: {
      steel: { name: "1084", density: 0.00785 },
      blade: {
        outline: runsSpec(outline),
        ricasso: -HANDLE_FRONT,
        thickness: [{ at: { kind: "heel" }, is: 4 }],
        bevel: { form: "flat", height: 24, edgeThickness: 0.4 },
        edgeAngle: 0.3,
      },
      tang,
      handle,
    },
  };
}

/** Straight back, belly in a circular arc; one pin stands under the rounded edge. */
export function filletedSlabs(): ReferenceKnife {
  const radius = 340;
  // An arc from the butt to the handle front, hollow upward: the palm's swell.
  const [from, to] = [p(BUTT, 8), p(HANDLE_FRONT, 10)];
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const back = Math.sqrt(radius ** 2 - chord ** 2 / 4);
  const centre = p(
    (from.x + to.x) / 2 - (back * (to.y - from.y)) / chord,
    (from.y + to.y) / 2 + (back * (to.x - from.x)) / chord,
  );
  const bottom: Segment = {
    kind: "arc",
    from,
    to,
    centre,
    radius,
    startAngle: Math.atan2(from.y - centre.y, from.x - centre.x),
    sweep: 2 * Math.asin(chord / (2 * radius)),
  };
  return fullTang(
    "slabs with rounded edges, liners, bolsters, pins",
    { kind: "line", from: p(HANDLE_FRONT, 36), to: p(BUTT, 34) },
    bottom,
    {
      form: "full",
      holes: [
        { kind: "pin", at: p(-38, 21), diameter: 6, pin: 5.5 },
        { kind: "pin", at: p(-92, 11), diameter: 5 },
        { kind: "lightening", at: p(-65, 22), diameter: 9 },
      ],
    },
    {
      slabs: { material: { name: "walnut", density: 0.00064 }, thickness: 8, edgeRadius: 5 },
      liners: { material: { name: "fibre", density: 0.0013 }, thickness: 0.8 },
      pins: { material: { name: "brass", density: 0.0085 } },
      bolsters: [
        {
          material: { name: "brass", density: 0.0085 },
          at: HANDLE_FRONT,
          length: 12,
          height: 44,
          width: 19,
          centre: 22,
        },
      ],
    },
  );
}

/** Both long sides curved, the slabs swelling in the palm, on a tang that tapers to the butt. */
export function contouredSlabs(): ReferenceKnife {
  return fullTang(
    "contoured slabs on a tapered tang",
    { kind: "cubic", from: p(HANDLE_FRONT, 36), control1: p(-48, 33), control2: p(-86, 39), to: p(BUTT, 35) },
    { kind: "cubic", from: p(BUTT, 7), control1: p(-90, 14), control2: p(-52, 4), to: p(HANDLE_FRONT, 11) },
    {
      form: "full",
      thickness: [
        { at: { kind: "handle" }, is: 4 },
        { at: { kind: "butt" }, is: 2.4 },
      ],
      holes: [
        { kind: "pin", at: p(-34, 22), diameter: 5 },
        { kind: "pin", at: p(-98, 22), diameter: 5 },
      ],
    },
    {
      slabs: {
        material: { name: "walnut", density: 0.00064 },
        thickness: [
          { at: { kind: "handle" }, is: 7 },
          { at: { kind: "distance", mm: 60 }, is: 9.5 },
          { at: { kind: "butt" }, is: 8 },
        ],
        edgeRadius: 4,
      },
    },
  );
}
