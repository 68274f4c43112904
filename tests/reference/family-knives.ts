// One knife of every family; between them they have everything that can be done to a blade.
import type { BladeSpec, FamilyName, KnifeSpec, LandmarkOutlineSpec, TangSpec } from "@scantling/geometry";
import { DEGREE, p } from "./outlines.js";

export interface NamedSpec {
  readonly name: string;
  readonly spec: KnifeSpec;
}

export const heel = (is: number) => ({ at: { kind: "heel" }, is }) as const;
export const tip = (is: number) => ({ at: { kind: "tip" }, is }) as const;
export const share = (share: number, is: number) => ({ at: { kind: "fraction", share }, is }) as const;

function family(
  name: FamilyName,
  what: string,
  sizes: Omit<LandmarkOutlineSpec, "family">,
  blade: Omit<BladeSpec, "outline">,
  tang: TangSpec = { form: "full", length: 110 },
): NamedSpec {
  return {
    name: `${name}: ${what}`,
    spec: {
      steel: { name: "plain", density: 0.00785 },
      blade: { outline: { family: name, ...sizes }, ...blade },
      tang,
    },
  };
}

export const familyKnives = (): readonly NamedSpec[] => [
  family(
    "vegetable",
    "flat of part height, flank taper by stations",
    { edgeLength: 210, heelHeight: 76 },
    {
      ricasso: 8,
      thickness: [heel(4.2), share(0.5, 3.4), tip(2)],
      flankTaper: [heel(0.4), tip(0.15)],
      bevel: { form: "flat", height: 44, edgeThickness: 0.4 },
      edgeAngle: 15 * DEGREE,
    },
  ),
  family(
    "cleaver",
    "convex by default, a hole across the bevel line",
    { edgeLength: 180, heelHeight: 88 },
    {
      thickness: [heel(5)],
      bevel: { form: "convex", height: 42, edgeThickness: 0.8 },
      edgeAngle: 20 * DEGREE,
      holes: [
        { kind: "hanging", at: p(158, 64), diameter: 14 },
        { kind: "lightening", at: p(80, 40), diameter: 9 },
      ],
    },
  ),
  family(
    "straight-back",
    "hollow behind a plunge with a length",
    { edgeLength: 120, heelHeight: 30 },
    {
      ricasso: 9,
      thickness: [heel(4), tip(2.2)],
      plunge: { at: 4, length: 12 },
      bevel: { form: "hollow", height: 19, edgeThickness: 0.45, wheelRadius: 240 },
      edgeAngle: 18 * DEGREE,
    },
  ),
  family(
    "drop-point",
    "microbevel, slot in the bevel",
    { edgeLength: 105, heelHeight: 32 },
    {
      ricasso: 7,
      thickness: [heel(3.8), share(0.6, 3.5), tip(1.8)],
      between: "smooth",
      bevel: { form: "flat", height: 22, edgeThickness: 0.5 },
      edgeAngle: 17 * DEGREE,
      microbevel: { height: 0.4, angle: 25 * DEGREE },
      holes: [{ kind: "lightening", at: p(22, 14), to: p(48, 20), diameter: 6 }],
    },
  ),
  family(
    "clip-point",
    "swedge along the clip",
    { edgeLength: 175, heelHeight: 36 },
    {
      ricasso: 11,
      thickness: [heel(5), tip(3.2)],
      bevel: { form: "flat", height: [heel(18), tip(14)], edgeThickness: 0.6 },
      edgeAngle: 20 * DEGREE,
      swedge: {
        from: { kind: "fraction", share: 0.64 },
        to: { kind: "tip" },
        angle: 30 * DEGREE,
        thickness: [share(0.64, 3.6), tip(0.8)],
      },
    },
  ),
  family(
    "spear-point",
    "two different faces, apex off centre",
    { edgeLength: 130, heelHeight: 31 },
    {
      ricasso: 10,
      thickness: [heel(4.4), tip(2.6)],
      bevel: {
        form: "flat",
        height: 22,
        edgeThickness: 0.5,
        apex: 0.3,
        left: { form: "convex", height: 15, crown: { mm: 0.12 } },
      },
      edgeAngle: { right: 15 * DEGREE, left: 22 * DEGREE },
    },
  ),
  family(
    "trailing-point",
    "convex by its crown to the spine",
    { edgeLength: 150, heelHeight: 28 },
    {
      thickness: [heel(3.2), tip(1.4)],
      bevel: { form: "convex", height: "full", edgeThickness: 0.3, crown: { share: 0.1 } },
      edgeAngle: 16 * DEGREE,
    },
  ),
  family(
    "sheepsfoot",
    "single bevel for the right hand",
    { edgeLength: 95, heelHeight: 26 },
    {
      ricasso: 6,
      thickness: [heel(3.4), tip(2.8)],
      bevel: { form: "flat", height: 14, edgeThickness: 0.3, apex: 1 },
      edgeAngle: { right: "flat", left: 24 * DEGREE },
    },
  ),
  family(
    "tanto",
    "two facets, flank taper",
    { edgeLength: 160, heelHeight: 32 },
    {
      ricasso: 12,
      thickness: [heel(5.2), tip(3.6)],
      flankTaper: 0.5,
      bevel: { form: "flat", height: 18, edgeThickness: 0.6 },
      edgeAngle: 21 * DEGREE,
    },
  ),
  family(
    "seax",
    "a fuller of its own on each face",
    { edgeLength: 210, heelHeight: 38 },
    {
      thickness: [heel(5.6), share(0.6, 5.2), tip(3)],
      bevel: { form: "flat", height: 18, edgeThickness: 0.7 },
      edgeAngle: 22 * DEGREE,
      fullers: [
        { from: p(15, 27), to: p(105, 27), radius: 10, depth: 1.1, faces: "right" },
        { from: p(22, 28), to: p(90, 24), radius: 8, depth: 0.9, faces: "left" },
      ],
    },
  ),
  family(
    "chefs",
    "flat to the spine, the spine eased",
    { edgeLength: 230, heelHeight: 52 },
    {
      ricasso: 14,
      thickness: [heel(3), share(0.4, 2.3), tip(1)],
      between: "smooth",
      bevel: { form: "flat", height: "full", edgeThickness: 0.3 },
      edgeAngle: 14 * DEGREE,
      easedSpine: 0.6,
    },
  ),
  family(
    "petty",
    "apex off centre, edge thickness by stations",
    { edgeLength: 135, heelHeight: 30 },
    {
      ricasso: 9,
      thickness: [heel(2.6), tip(1.3)],
      bevel: { form: "flat", height: 20, edgeThickness: [heel(0.4), tip(0.25)], apex: -0.4 },
      edgeAngle: { right: 18 * DEGREE, left: 11 * DEGREE },
    },
  ),
  family(
    "boning",
    "convex, hidden tang with fillets and a taper of its own",
    { edgeLength: 150, heelHeight: 24 },
    {
      ricasso: 10,
      thickness: [heel(3), tip(1.6)],
      plunge: { at: 3, length: 6 },
      bevel: {
        form: "convex",
        height: [heel(12), share(0.5, 14), tip(10)],
        edgeThickness: 0.35,
        crown: { mm: 0.1 },
      },
      edgeAngle: 17 * DEGREE,
    },
    {
      form: "hidden",
      length: 95,
      shoulderRadius: 2,
      thickness: [
        { at: { kind: "handle" }, is: 3 },
        { at: { kind: "fraction", share: 0.4 }, is: 2.8 },
        { at: { kind: "butt" }, is: 1.8 },
      ],
      between: "smooth",
    },
  ),
  family(
    "slicer",
    "single bevel for the left hand, hollow back",
    { edgeLength: 265, heelHeight: 36 },
    {
      ricasso: 15,
      thickness: [heel(4), tip(2.8)],
      bevel: {
        form: "flat",
        height: 20,
        edgeThickness: 0.4,
        apex: -1,
        left: { form: "hollow", height: 30, wheelRadius: 600 },
      },
      edgeAngle: { right: 22 * DEGREE, left: "flat" },
    },
  ),
];
