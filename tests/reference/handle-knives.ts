// Knives with shaped handles: hidden and through tangs in blocks of every section, with guard, pommel and pins.
import type { HandleSpec, TangSpec } from "@scantling/geometry";
import { hiddenTang } from "./form-blades.js";
import { outlineOf, p, polyline, type ReferenceKnife, runsSpec } from "./outlines.js";

export interface HandleKnife extends ReferenceKnife {
  /** y half way up the tang. */
  readonly middle: number;
}

/** Oval, swelling smoothly in the palm, behind a guard; a hidden tang with filleted shoulders and a round butt. */
function ovalHandle(): HandleKnife {
  const { spec, outline } = hiddenTang();
  const handle: HandleSpec = {
    guard: {
      material: { name: "brass", density: 0.0085 },
      at: -8,
      length: 7,
      height: 40,
      width: 15,
      section: "oval",
    },
    block: {
      material: { name: "bog oak", density: 0.00072 },
      section: "oval",
      length: 112,
      height: [
        { at: { kind: "handle" }, is: 29 },
        { at: { kind: "fraction", share: 0.45 }, is: 34 },
        { at: { kind: "butt" }, is: 28 },
      ],
      width: [
        { at: { kind: "handle" }, is: 21 },
        { at: { kind: "fraction", share: 0.45 }, is: 25 },
        { at: { kind: "butt" }, is: 20 },
      ],
      between: "smooth",
    },
  };
  return { name: "oval handle, guard", outline, spec: { ...spec, handle }, middle: 14 };
}

/** A plain blade on a straight narrow tang that tapers about a level line to its butt. */
function narrowTang(
  butt: number,
  rear: number,
  tang: TangSpec,
  handle: HandleSpec,
): Omit<HandleKnife, "name"> {
  const outline = outlineOf(
    {
      edge: polyline(p(0, 0), p(100, 0)),
      front: polyline(p(100, 0), p(100, 30)),
      spine: polyline(p(100, 30), p(-6, 30)),
      tangTop: polyline(p(-6, 30), p(-6, 22), p(butt, 15 + rear / 2)),
      butt: polyline(p(butt, 15 + rear / 2), p(butt, 15 - rear / 2)),
      tangBottom: polyline(p(butt, 15 - rear / 2), p(-6, 8), p(-6, 0)),
      heelFace: polyline(p(-6, 0), p(0, 0)),
    },
    100,
    6,
    butt,
  );
  return {
    outline,
    middle: 15,
    spec: {
      steel: { name: "1084", density: 0.00785 },
      blade: {
        outline: runsSpec(outline),
        ricasso: 6,
        thickness: [{ at: { kind: "heel" }, is: 4 }],
        bevel: { form: "flat", height: 20, edgeThickness: 0.4 },
        edgeAngle: 0.3,
      },
      tang,
      handle,
    },
  };
}

/** Octagonal, tapering both ways; its tang goes through to a pommel. */
function octagonalHandle(): HandleKnife {
  return {
    name: "octagonal handle, pommel",
    ...narrowTang(
      -128,
      8,
      {
        form: "through",
        thickness: [
          { at: { kind: "handle" }, is: 4 },
          { at: { kind: "butt" }, is: 3 },
        ],
      },
      {
        block: {
          material: { name: "magnolia", density: 0.00049 },
          section: "octagonal",
          length: 114,
          height: [
            { at: { kind: "handle" }, is: 24 },
            { at: { kind: "butt" }, is: 29 },
          ],
          width: [
            { at: { kind: "handle" }, is: 19 },
            { at: { kind: "distance", mm: 60 }, is: 22 },
            { at: { kind: "butt" }, is: 23 },
          ],
        },
        pommel: { material: { name: "brass", density: 0.0085 }, at: -120, length: 8, height: 30, width: 22 },
      },
    ),
  };
}

/** Rounded rectangle, pinned through the tang; the pin is thinner than its hole in the steel. */
function roundedHandle(): HandleKnife {
  return {
    name: "rounded handle, pinned",
    ...narrowTang(
      -98,
      9,
      {
        form: "hidden",
        thickness: [
          { at: { kind: "handle" }, is: 4 },
          { at: { kind: "distance", mm: 50 }, is: 4 },
          { at: { kind: "butt" }, is: 2.6 },
        ],
        holes: [{ kind: "pin", at: p(-40, 15), diameter: 5.5, pin: 5 }],
      },
      {
        block: {
          material: { name: "ironwood", density: 0.00105 },
          section: "rounded",
          length: 108,
          centre: 15.5,
          height: [
            { at: { kind: "handle" }, is: 27 },
            { at: { kind: "fraction", share: 0.5 }, is: 31 },
            { at: { kind: "butt" }, is: 26 },
          ],
          width: 21,
          cornerRadius: 6,
        },
        pins: { material: { name: "brass", density: 0.0085 } },
      },
    ),
  };
}

export const handleKnives = (): readonly HandleKnife[] => [ovalHandle(), octagonalHandle(), roundedHandle()];
