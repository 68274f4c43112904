// Knives that between them have every form of bevel, and what is cut into one. Each has its own proportions, so that
// no two share a mistake by accident.
import type { Segment } from "@scantling/geometry";
import { DEGREE, outlineOf, p, polyline, type ReferenceKnife } from "./outlines.js";
import { formKnife, pointed } from "./pointed.js";

/** Convex to the spine, level there by default; the spine's edges eased. */
export const convexByDefault = (): ReferenceKnife =>
  formKnife(
    "convex by default, eased spine",
    pointed({
      length: 140,
      height: 34,
      straight: 70,
      spineBreak: 70,
      tip: 22,
      ricasso: 10,
      butt: -115,
      front: 24,
      rear: 28,
    }),
    {
      thickness: [
        { at: { kind: "heel" }, is: 4.4 },
        { at: { kind: "tip" }, is: 2.6 },
      ],
      bevel: { form: "convex", height: 26, edgeThickness: 0.5 },
      edgeAngle: 19 * DEGREE,
      easedSpine: 0.7,
    },
  );

/** Hollow from a wheel, part height, behind a plunge that eases in. */
export const hollow = (): ReferenceKnife =>
  formKnife(
    "hollow, plunge with a length",
    pointed({
      length: 105,
      height: 29,
      straight: 48,
      spineBreak: 52,
      tip: 19,
      ricasso: 9,
      butt: -108,
      front: 22,
      rear: 26,
    }),
    {
      thickness: [
        { at: { kind: "heel" }, is: 4 },
        { at: { kind: "distance", mm: 60 }, is: 3.6 },
        { at: { kind: "tip" }, is: 2 },
      ],
      between: "smooth",
      plunge: { at: 3, length: 10 },
      bevel: { form: "hollow", height: 17, edgeThickness: 0.4, wheelRadius: 110 },
      edgeAngle: 18 * DEGREE,
    },
  );

/** The whole bevel on the left face, the right one flat: ground for the right hand. */
export const singleBevel = (): ReferenceKnife =>
  formKnife(
    "single bevel",
    pointed({
      length: 180,
      height: 44,
      straight: 105,
      spineBreak: 120,
      tip: 30,
      ricasso: 14,
      butt: -120,
      front: 30,
      rear: 34,
    }),
    {
      thickness: [
        { at: { kind: "heel" }, is: 4.2 },
        { at: { kind: "tip" }, is: 2.8 },
      ],
      bevel: { form: "flat", height: 22, edgeThickness: 0.3, apex: 1 },
      edgeAngle: { right: "flat", left: 24 * DEGREE },
    },
  );

/** Apex off centre, faces that differ in everything: flat and tall on the right, convex by its crown and low on the left. */
export const twoFaces = (): ReferenceKnife =>
  formKnife(
    "apex off centre, two different faces",
    pointed({
      length: 125,
      height: 32,
      straight: 60,
      spineBreak: 66,
      tip: 21,
      ricasso: 11,
      butt: -110,
      front: 24,
      rear: 27,
    }),
    {
      thickness: [
        { at: { kind: "heel" }, is: 3.8 },
        { at: { kind: "tip" }, is: 2.4 },
      ],
      bevel: {
        form: "flat",
        height: 25,
        edgeThickness: 0.5,
        apex: 0.3,
        left: { form: "convex", height: 16, crown: { mm: 0.2 } },
      },
      edgeAngle: { right: 15 * DEGREE, left: 21 * DEGREE },
    },
  );

/** Flat with a flank taper and a microbevel; a round hole across the bevel line and a slot in the bevel. */
export const drilledBevel = (): ReferenceKnife =>
  formKnife(
    "microbevel, hole and slot in the bevel",
    pointed({
      length: 150,
      height: 46,
      straight: 85,
      spineBreak: 90,
      tip: 31,
      ricasso: 12,
      butt: -112,
      front: 30,
      rear: 34,
    }),
    {
      thickness: [
        { at: { kind: "heel" }, is: 4.5 },
        { at: { kind: "tip" }, is: 3 },
      ],
      flankTaper: 0.4,
      bevel: { form: "flat", height: 27, edgeThickness: 0.6 },
      edgeAngle: 16 * DEGREE,
      microbevel: { height: 0.5, angle: 24 * DEGREE },
      holes: [
        { kind: "hanging", at: p(30, 25), diameter: 9 },
        { kind: "lightening", at: p(52, 13), to: p(74, 19), diameter: 6 },
      ],
    },
  );

/** Swedge that grows out of a parallel blade, and a groove of its own depth on each face. */
export const swedgeAndFullers = (): ReferenceKnife =>
  formKnife(
    "swedge, fullers",
    pointed({
      length: 160,
      height: 36,
      straight: 95,
      spineBreak: 105,
      tip: 24,
      ricasso: 12,
      butt: -118,
      front: 26,
      rear: 30,
    }),
    {
      thickness: [
        { at: { kind: "heel" }, is: 5 },
        { at: { kind: "distance", mm: 90 }, is: 5 },
        { at: { kind: "tip" }, is: 3 },
      ],
      bevel: { form: "flat", height: 16, edgeThickness: 0.6 },
      edgeAngle: 20 * DEGREE,
      swedge: {
        from: { kind: "distance", mm: 95 },
        to: { kind: "tip" },
        angle: 28 * DEGREE,
        thickness: [
          { at: { kind: "distance", mm: 95 }, is: 4.8 },
          { at: { kind: "tip" }, is: 0.8 },
        ],
      },
      fullers: [
        { from: p(14, 26), to: p(72, 26), radius: 9, depth: 1, faces: "right" },
        { from: p(20, 27), to: p(60, 25), radius: 7, depth: 0.8, faces: "left" },
      ],
    },
  );

/** Hidden tang that thins toward its round butt, its shoulders with fillets; bevel from the heel with a plunge. */
export const hiddenTang = (): ReferenceKnife => {
  const straight = 50;
  const quarter = (
    centre: [number, number],
    startAngle: number,
    from: [number, number],
    to: [number, number],
  ) =>
    ({
      kind: "arc",
      from: p(...from),
      to: p(...to),
      centre: p(...centre),
      radius: 3,
      startAngle,
      sweep: -Math.PI / 2,
    }) satisfies Segment;
  const outline = outlineOf(
    {
      edge: [
        ...polyline(p(0, 0), p(straight, 0)),
        { kind: "cubic", from: p(straight, 0), control1: p(74, 0), control2: p(98, 7), to: p(115, 19) },
      ],
      spine: [
        { kind: "cubic", from: p(115, 19), control1: p(100, 25), control2: p(84, 28), to: p(62, 28) },
        ...polyline(p(62, 28), p(-8, 28)),
      ],
      // Level for the length of the fillet, then tapering.
      tangTop: [
        ...polyline(p(-8, 28), p(-8, 23)),
        quarter([-11, 23], 0, [-8, 23], [-11, 20]),
        ...polyline(p(-11, 20), p(-90, 18)),
      ],
      butt: [
        {
          kind: "arc",
          from: p(-90, 18),
          to: p(-90, 10),
          centre: p(-90, 14),
          radius: 4,
          startAngle: Math.PI / 2,
          sweep: Math.PI,
        },
      ],
      tangBottom: [
        ...polyline(p(-90, 10), p(-11, 8)),
        quarter([-11, 5], Math.PI / 2, [-11, 8], [-8, 5]),
        ...polyline(p(-8, 5), p(-8, 0)),
      ],
      heelFace: polyline(p(-8, 0), p(0, 0)),
    },
    115,
    8,
    -94,
  );
  return formKnife(
    "hidden tang, shoulders with fillets",
    outline,
    {
      thickness: [
        { at: { kind: "heel" }, is: 4 },
        { at: { kind: "tip" }, is: 2.5 },
      ],
      plunge: { at: 4, length: 8 },
      bevel: {
        form: "convex",
        height: [
          { at: { kind: "heel" }, is: 15 },
          { at: { kind: "distance", mm: 60 }, is: 19 },
        ],
        edgeThickness: 0.4,
        crown: { share: 0.1 },
      },
      edgeAngle: 17 * DEGREE,
    },
    {
      form: "hidden",
      thickness: [
        { at: { kind: "handle" }, is: 4 },
        { at: { kind: "fraction", share: 0.5 }, is: 3.2 },
        { at: { kind: "butt" }, is: 2.4 },
      ],
    },
  );
};

export const formKnives = (): readonly ReferenceKnife[] => [
  convexByDefault(),
  hollow(),
  singleBevel(),
  twoFaces(),
  drilledBevel(),
  swedgeAndFullers(),
  hiddenTang(),
];
