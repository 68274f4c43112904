// A knife's description as laws over x and two faces, for the strips.
import type { FaceSpec, KnifeSpec, LawSpec, Outline, StationPlace } from "@scantling/geometry";
import { type Law, makeLaw } from "../law.js";
import { Crest } from "./crest.js";
import { Cutter, Stadium } from "./cutter.js";
import { Face } from "./face.js";
import { Field } from "./field.js";

/** One face with its own laws. */
export interface GroundFace {
  readonly face: Face;
  readonly height: Law;
  readonly crown: Law | undefined;
  readonly crownIsShare: boolean;
}

export interface Groove {
  readonly plan: Stadium;
  readonly radius: number;
  readonly depth: number;
  readonly right: boolean;
  readonly left: boolean;
}

export interface StripModel {
  readonly field: Field;
  readonly cutter: Cutter;
  readonly right: GroundFace;
  /** Undefined where both faces are alike. */
  readonly left: GroundFace | undefined;
  readonly thickness: Law;
  readonly flank: Law;
  readonly edge: Law;
  readonly tang: Law;
  readonly handleFront: number;
  readonly plunge: { readonly at: number; readonly length: number };
  readonly crest: Crest;
  readonly holes: readonly Stadium[];
  readonly grooves: readonly Groove[];
  /** Stations at which the outline, a law or a cut-out begins or ends, ascending. */
  readonly breaks: readonly number[];
  readonly from: number;
  readonly to: number;
}

export function stripModel(spec: KnifeSpec, outline: Outline): StripModel {
  const { blade, tang } = spec;
  const length = outline.edgeLength;
  const tangLength = outline.handleFront - outline.butt;
  const breaks = new Set([0, outline.handleFront]);
  const place = (at: StationPlace): number => {
    switch (at.kind) {
      case "heel":
        return 0;
      case "tip":
        return length;
      case "handle":
        return outline.handleFront;
      case "butt":
        return outline.butt;
      case "distance":
        return at.mm;
      case "fraction":
        return at.share * length;
    }
  };
  const tangPlace = (at: StationPlace): number => {
    if (at.kind === "handle") return 0;
    if (at.kind === "butt") return tangLength;
    if (at.kind === "distance") return at.mm;
    if (at.kind === "fraction") return at.share * tangLength;
    throw new Error(`no station of a tang: ${at.kind}`);
  };
  const law = (value: LawSpec, smooth = false): Law => {
    const made = makeLaw(value, (station) => place(station.at), smooth);
    for (const x of made.breaks) breaks.add(x);
    return made;
  };
  const thickness = law(blade.thickness, blade.between === "smooth");
  const front = thickness.at(0);
  const tangLaw: Law =
    tang.thickness !== undefined
      ? makeLaw(tang.thickness, (station) => tangPlace(station.at), tang.between === "smooth")
      : { at: (s) => front + (((tang.buttThickness ?? front) - front) * s) / tangLength, breaks: [] };
  for (const s of tangLaw.breaks) breaks.add(outline.handleFront - s);
  const { bevel, edgeAngle, microbevel, swedge } = blade;
  const makeFace = (own: Partial<FaceSpec> | undefined, side: 1 | -1): GroundFace => {
    const face: FaceSpec = { ...bevel, ...own };
    const angle = typeof edgeAngle === "number" ? edgeAngle : side === 1 ? edgeAngle.right : edgeAngle.left;
    const { crown } = face;
    return {
      face: new Face({
        side,
        form: face.form,
        apex: bevel.apex ?? 0,
        wheel: face.wheelRadius ?? Number.NaN,
        plane: angle === "flat" ? undefined : Math.tan(angle),
        micro:
          angle === "flat" || microbevel === undefined
            ? undefined
            : { height: microbevel.height, tan: Math.tan(microbevel.angle) },
      }),
      height: law(face.height === "full" ? Number.POSITIVE_INFINITY : face.height),
      crown: crown && law("mm" in crown ? crown.mm : crown.share),
      crownIsShare: crown !== undefined && "share" in crown,
    };
  };
  const alike =
    bevel.left === undefined &&
    bevel.right === undefined &&
    (bevel.apex ?? 0) === 0 &&
    (typeof edgeAngle === "number" || edgeAngle.left === edgeAngle.right);
  const cutter = new Cutter(outline.path.segments, outline.runs.edge);
  const plunge = blade.plunge ?? { at: 0, length: 0 };
  const holes = [...(blade.holes ?? []), ...(tang.holes ?? [])].map(
    ({ at, to, diameter }) => new Stadium(at, to ?? at, diameter / 2),
  );
  const grooves = (blade.fullers ?? []).map(({ from, to, radius, depth, faces = "both" }): Groove => {
    const half = depth >= radius ? radius : Math.sqrt(depth * (2 * radius - depth));
    return {
      plan: new Stadium(from, to, half),
      radius,
      depth,
      right: faces !== "left",
      left: faces !== "right",
    };
  });
  const model = {
    field: new Field(outline.runs.edge, 1.1 * (cutter.maxY - Math.min(0, cutter.minY))),
    cutter,
    right: makeFace(bevel.right, 1),
    left: alike ? undefined : makeFace(bevel.left, -1),
    thickness,
    flank: law(blade.flankTaper ?? 0),
    edge: law(bevel.edgeThickness),
    tang: tangLaw,
    handleFront: outline.handleFront,
    plunge,
    crest: new Crest({
      eased: blade.easedSpine ?? 0,
      easedFrom: outline.handleFront,
      swedge: swedge && {
        from: place(swedge.from),
        to: place(swedge.to),
        tan: Math.tan(swedge.angle),
        thickness: law(swedge.thickness),
      },
    }),
    holes,
    grooves,
  };
  if (swedge !== undefined) breaks.add(place(swedge.from)).add(place(swedge.to));
  breaks.add(plunge.at).add(plunge.at + plunge.length);
  for (const x of [...cutter.breaks, ...[...holes, ...grooves.map((g) => g.plan)].flatMap((s) => s.breaks)]) {
    breaks.add(x);
  }
  const from = cutter.breaks[0] ?? 0;
  const to = cutter.breaks[cutter.breaks.length - 1] ?? 0;
  const sorted = [...breaks].filter((x) => x >= from && x <= to).sort((a, b) => a - b);
  return { ...model, from, to, breaks: sorted.filter((x, i) => i === 0 || x - (sorted[i - 1] ?? 0) > 1e-11) };
}
