import type { FaceInput } from "../../src/blade/face-law.js";
import { Footprint } from "../../src/blade/footprint.js";
import { SectionLaw } from "../../src/blade/section-law.js";
import { SlabLaw } from "../../src/blade/slab-law.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { type Cutout, SteelBody } from "../../src/blade/steel-body.js";
import { Law } from "../../src/numeric/law.js";
import { line, type Segment } from "../../src/plane/segment.js";
import type { Vec2 } from "../../src/plane/vec2.js";
import { heel } from "./random-knives.js";

export const p = (x: number, y: number): Vec2 => ({ x, y });

/** Straight lines from point to point. */
export const lines = (...points: readonly Vec2[]): Segment[] =>
  points.slice(1).map((to, i) => line(points[i] as Vec2, to));

/** A linear law over a stretch. */
export const linear = (x0: number, y0: number, x1: number, y1: number): Law =>
  Law.straight([
    { at: x0, is: y0 },
    { at: x1, is: y1 },
  ]);

/** A section that is the same on both faces; sharpening by the tan of its angle. */
export type SectionInput = Omit<FaceInput, "side" | "apex" | "sharpening"> & { readonly sharpening?: number };

const bothFaces = ({ sharpening, ...input }: SectionInput): SectionLaw =>
  new SectionLaw({
    ...input,
    side: 1,
    apex: 0,
    ...(sharpening === undefined ? {} : { sharpening: { tan: sharpening } }),
  });

export interface BladeOnly {
  readonly edge: readonly Segment[];
  /** Corners of the rest of the outline, from the edge's end back to its start. */
  readonly around: readonly Vec2[];
  readonly section: Partial<SectionInput>;
  readonly plunge?: { readonly at: number; readonly length: number };
  readonly cutouts?: readonly Cutout[];
}

/** A blade without a tang: an edge, straight lines round the rest, and whatever is said of its section. */
export function bladeOnly({ edge, around, section, plunge, cutouts = [] }: BladeOnly): SteelBody {
  const first = edge[0] as Segment;
  const last = edge[edge.length - 1] as Segment;
  const input: SectionInput = {
    spine: Law.constant(4),
    flankTaper: Law.constant(0),
    bevelHeight: "full",
    form: "flat",
    edge: Law.constant(0.4),
    onBevel: 0,
    onFlats: 0,
    faceOnBevel: 0,
    faceOnFlats: 0,
    ...section,
  };
  const path = { segments: [...edge, ...lines(last.to, ...around, first.from)], closed: true };
  return new SteelBody({
    path,
    edges: [edge],
    slab: new SlabLaw({
      spine: input.spine,
      tang: undefined,
      handleFront: new Footprint(path).minX - 1,
      onFlats: 0,
      onTang: 0,
    }),
    section: bothFaces(input),
    plunge: plunge ?? { at: 0, length: 0 },
    cutouts,
  });
}

/** A rectangle of blade, edge along the bottom. */
export const rectangle = (
  length: number,
  height: number,
  section: Partial<SectionInput>,
  more: Partial<Pick<BladeOnly, "plunge" | "cutouts">> = {},
): SteelBody =>
  bladeOnly({
    edge: lines(p(0, 0), p(length, 0)),
    around: [p(length, height), p(0, height)],
    section,
    ...more,
  });

/** A knife by explicit runs: a rectangular blade of 120 × 30 with a tang of 80 × 20 behind a ricasso of 20. */
export function boxKnife(
  blade: Partial<KnifeSpec["blade"]> = {},
  rest: { readonly tang?: Partial<KnifeSpec["tang"]> } & Partial<Omit<KnifeSpec, "tang">> = {},
): KnifeSpec {
  const { tang, ...other } = rest;
  return {
    steel: { name: "test steel", density: 0.00785 },
    blade: {
      outline: {
        runs: {
          edge: "M0 0 L120 0",
          front: "L120 30",
          spine: "L-20 30",
          tangTop: "L-100 30",
          butt: "L-100 10",
          tangBottom: "L-20 10",
          heelFace: "L0 10 L0 0",
        },
      },
      thickness: [heel(4)],
      bevel: { form: "flat", height: "full", edgeThickness: 0.4 },
      edgeAngle: 0.3,
      ...blade,
    },
    tang: { form: "full", ...tang },
    ...other,
  };
}
