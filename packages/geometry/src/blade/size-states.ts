import { Law } from "../numeric/law.js";
import { CrestLaw, type Swedge } from "./crest.js";
import type { FaceInput, Sharpening } from "./face-law.js";
import { bladeLaw, bladeStation, type KnifeLaws } from "./knife-laws.js";
import type { Outline } from "./outline.js";
import { SectionLaw } from "./section-law.js";
import { SlabLaw } from "./slab-law.js";
import type { AllowanceSpec, EdgeAngleSpec, FinishSpec, KnifeSpec, SwedgeSpec } from "./spec.js";
import { SteelBody, type SteelBodyInput } from "./steel-body.js";

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
/** Name of a size state. */
export type SizeState = (typeof SIZE_STATES)[number];

/** What a size state is built from. */
export interface StateInput {
  readonly spec: KnifeSpec;
  readonly outline: Outline;
  readonly laws: KnifeLaws;
  readonly finish: FinishSpec;
  readonly allowances: AllowanceSpec;
}

/**
 * The blade and tang in one size state, as a body that can be weighed, cut and drawn.
 *
 * @example
 * bodyInState(knife, "forged").slab.thicknessAt(0); // 4.4, the face allowance and what is ground after hardening
 */
export function bodyInState(input: StateInput, state: SizeState): SteelBody {
  const { spec, outline, laws, finish, allowances } = input;
  const reached = (other: SizeState): boolean => SIZE_STATES.indexOf(state) >= SIZE_STATES.indexOf(other);
  const left = reached("ready") ? allowances.afterHardening : 0;
  const face = reached("forged") ? allowances.face : 0;
  const onBevel = finish.bevels === "ground" ? left : 0;
  const onFlats = finish.flats === "ground" ? left : 0;
  const faceOnBevel = finish.bevels === "ground" ? face : 0;
  const faceOnFlats = finish.flats === "ground" ? face : 0;
  const edge = reached("ready")
    ? laws.edgeThickness.map((e) => e + 2 * onBevel).atLeast(allowances.minEdge)
    : laws.edgeThickness;
  const faceInput = (side: 1 | -1): FaceInput => {
    const own = side === 1 ? laws.right : laws.left;
    return {
      side,
      spine: laws.spine,
      flankTaper: laws.flankTaper,
      bevelHeight: own.bevelHeight,
      form: own.form,
      ...(own.crown === undefined ? {} : { crown: own.crown }),
      ...(own.wheelRadius === undefined ? {} : { wheelRadius: own.wheelRadius }),
      edge,
      apex: spec.blade.bevel.apex ?? 0,
      onBevel,
      onFlats,
      faceOnBevel,
      faceOnFlats,
      // A bevel that is left from the hammer is forged to its finished size: there is nothing to grind off it.
      ...(reached("hammered") && finish.bevels === "ground"
        ? { hammered: { edge: allowances.forgedEdge, to: allowances.forgedBevel } }
        : {}),
      ...(state === "finished" ? sharpeningOf(spec, side) : {}),
    };
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
    section: laws.symmetric ? new SectionLaw(faceInput(1)) : new SectionLaw(faceInput(1), faceInput(-1)),
    plunge: spec.blade.plunge ?? { at: 0, length: 0 },
    cutouts: holes.map((hole) => ({
      centre: hole.at,
      radius: hole.diameter / 2,
      ...(hole.to === undefined ? {} : { to: hole.to }),
    })),
    ...(reached("undrilled") ? {} : spineAndGrooves(input, slab)),
  });
}

/** Fullers, swedge and eased spine are ground: the forging has none of them. */
function spineAndGrooves(
  { spec, outline }: StateInput,
  slab: SlabLaw,
): Pick<SteelBodyInput, "crest" | "grooves"> {
  const { easedSpine = 0, swedge, fullers = [] } = spec.blade;
  return {
    ...(fullers.length === 0
      ? {}
      : { grooves: fullers.map((fuller) => ({ ...fuller, faces: fuller.faces ?? ("both" as const) })) }),
    ...(easedSpine === 0 && swedge === undefined
      ? {}
      : {
          crest: new CrestLaw({
            easing: easedSpine,
            from: outline.handleFront,
            slab,
            ...(swedge === undefined ? {} : { swedge: swedgeOf(swedge, outline) }),
          }),
        }),
  };
}

function swedgeOf(swedge: SwedgeSpec, outline: Outline): Swedge {
  return {
    from: bladeStation(swedge.from, outline),
    to: bladeStation(swedge.to, outline),
    tan: Math.tan(swedge.angle),
    thickness: bladeLaw(swedge.thickness, outline),
  };
}

/** The sharpening of one face; none where the angle is `flat`. */
function sharpeningOf(spec: KnifeSpec, side: 1 | -1): { readonly sharpening?: Sharpening } {
  const angle = sideAngle(spec.blade.edgeAngle, side);
  const { microbevel } = spec.blade;
  if (angle === "flat") return {};
  return {
    sharpening: {
      tan: Math.tan(angle),
      ...(microbevel === undefined
        ? {}
        : { micro: { height: microbevel.height, tan: Math.tan(microbevel.angle) } }),
    },
  };
}

/**
 * Sharpening angle of one side, rad.
 *
 * @example
 * sideAngle({ right: 0.26, left: "flat" }, -1); // "flat"
 */
export function sideAngle(angle: EdgeAngleSpec, side: 1 | -1): number | "flat" {
  if (typeof angle === "number") return angle;
  return side === 1 ? angle.right : angle.left;
}

/** A tang forged parallel is as thick as at the handle front, and nowhere thinner than it will be. */
function thickest(laws: KnifeLaws): Law {
  const front = laws.spine.valueAt(0);
  return laws.tang === undefined ? Law.constant(front) : laws.tang.atLeast(front);
}
