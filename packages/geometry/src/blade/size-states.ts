import { Law } from "../numeric/law.js";
import type { KnifeLaws } from "./knife-laws.js";
import type { Outline } from "./outline.js";
import { type SectionInput, SectionLaw } from "./section-law.js";
import { SlabLaw } from "./slab-law.js";
import type { AllowanceSpec, FinishSpec, KnifeSpec } from "./spec.js";
import { SteelBody } from "./steel-body.js";

/**
 * The bodies between the finished blade and the forging, each with a little more steel than the one before; the upper
 * rows of the steel ledger are their differences.
 *
 * - `finished` as delivered
 * - `unsharpened` without the sharpening planes
 * - `ready` ready to harden: what finish grinding takes is still on, the edge not under its minimum
 * - `undrilled` without cut-outs
 * - `hammered` the bevel as the hammer left it
 * - `tang-forged` the tang's taper not yet ground, where it is forged parallel
 * - `forged` with the grinding allowance on the faces (profile and end allowances are strips around it)
 */
export const SIZE_STATES = [
  "finished",
  "unsharpened",
  "ready",
  "undrilled",
  "hammered",
  "tang-forged",
  "forged",
] as const;
export type SizeState = (typeof SIZE_STATES)[number];

export interface StateInput {
  readonly spec: KnifeSpec;
  readonly outline: Outline;
  readonly laws: KnifeLaws;
  readonly finish: FinishSpec;
  readonly allowances: AllowanceSpec;
}

/** The blade and tang in one size state, as a body that can be weighed, cut and drawn. */
export function bodyInState(input: StateInput, state: SizeState): SteelBody {
  const { spec, outline, laws, finish, allowances } = input;
  const reached = (other: SizeState): boolean => SIZE_STATES.indexOf(state) >= SIZE_STATES.indexOf(other);
  const left = reached("ready") ? allowances.afterHardening : 0;
  const face = reached("forged") ? allowances.face : 0;
  const onBevel = finish.bevels === "ground" ? left : 0;
  const onFlats = finish.flats === "ground" ? left : 0;
  const faceOnBevel = finish.bevels === "ground" ? face : 0;
  const faceOnFlats = finish.flats === "ground" ? face : 0;
  const section: SectionInput = {
    spine: laws.spine,
    flankTaper: laws.flankTaper,
    bevelHeight: laws.bevelHeight,
    form: spec.blade.bevel.form,
    edge: reached("ready")
      ? laws.edgeThickness.map((e) => e + 2 * onBevel).atLeast(allowances.minEdge)
      : laws.edgeThickness,
    onBevel,
    onFlats,
    faceOnBevel,
    faceOnFlats,
    ...(laws.crown === undefined ? {} : { crown: laws.crown }),
    ...(reached("hammered") ? { hammered: { edge: allowances.forgedEdge, to: allowances.forgedBevel } } : {}),
    ...(state === "finished" ? { sharpening: Math.tan(spec.blade.edgeAngle) } : {}),
  };
  const parallel = reached("tang-forged") && allowances.tang === "parallel";
  const slab = new SlabLaw({
    spine: laws.spine,
    tang: parallel ? thickest(laws) : laws.tang,
    handleFront: outline.handleFront,
    onFlats: 2 * (onFlats + faceOnFlats),
    onTang: 2 * (left + face),
  });
  const holes = reached("undrilled") ? [] : [...(spec.blade.holes ?? []), ...(spec.tang.holes ?? [])];
  return new SteelBody({
    path: outline.path,
    edges: [outline.runs.edge],
    slab,
    section: new SectionLaw(section),
    plunge: spec.blade.plunge ?? { at: 0, length: 0 },
    cutouts: holes.map((hole) => ({ centre: hole.at, radius: hole.diameter / 2 })),
  });
}

/** A tang forged parallel is as thick as at the handle front, and nowhere thinner than it will be. */
function thickest(laws: KnifeLaws): Law {
  const front = laws.spine.valueAt(0);
  return laws.tang === undefined ? Law.constant(front) : laws.tang.atLeast(front);
}
