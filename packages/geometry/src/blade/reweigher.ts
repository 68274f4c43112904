import { BevelMoments } from "./bevel-moments.js";
import { buildOutline } from "./build-outline.js";
import { cutoutPath } from "./cutout-path.js";
import { grooveVolume } from "./groove-volume.js";
import { type HandlePart, handleParts } from "./handle-parts.js";
import type { Knife } from "./knife.js";
import { knifeLaws } from "./knife-laws.js";
import { measureBody } from "./measure-body.js";
import { type Moments, VOLUME, X } from "./moments.js";
import type { Outline } from "./outline.js";
import { isOneHandlePart, isOneObject, isOneOutline, isOneTang } from "./same-inputs.js";
import { bodyInState } from "./size-states.js";
import { slabMoments } from "./slab-moments.js";
import type { HoleSpec, KnifeSpec } from "./spec.js";
import type { SteelBody } from "./steel-body.js";
import { withHandleMoved } from "./with-handle-moved.js";

/** Mass of a whole knife, g, and its balance point from the heel, mm. */
export interface Reading {
  readonly mass: number;
  readonly balance: number;
}

/** ∭dV, mm³, and ∭x dV, mm⁴. */
type Sums = readonly [volume: number, x: number];

/** Relative error at which knives are weighed: a milligram in a kilogram. */
const AIM = 1e-6;

/** One description with what has been found of it. */
interface Weighed {
  readonly spec: KnifeSpec;
  readonly outline: Outline;
  /** Steel without holes and fullers. */
  readonly body: SteelBody;
  readonly bare: Sums;
  readonly holes: readonly (readonly [hole: HoleSpec, taken: Sums])[];
  readonly parts: readonly HandlePart[];
}

/**
 * Weighs variants of one knife, each with a number or two moved. Whatever a variant leaves as it was is not measured again: the
 * outline is drawn anew only where it moves, the steel without holes measured only where blade or tang change, a hole or a
 * part of the handle where itself or what it stands on does; densities and masses move no integral at all.
 *
 * What was left is told by its objects: a variant has to be made by `changedAt`, which keeps them.
 *
 * @example
 * const scale = new Reweigher(rebuildKnife(spec));
 * scale.read(changedAt(scale.spec, "steel.density", 1e-5)).mass - scale.middle.mass;
 */
export class Reweigher {
  /** The knife as described, every density written in. */
  readonly spec: KnifeSpec;
  readonly outline: Outline;
  readonly middle: Reading;
  private readonly knife: Knife;
  private readonly base: Weighed;

  /** @param knife - with every density written in, as `rebuildKnife` makes it. */
  constructor(knife: Knife) {
    this.knife = knife;
    this.spec = knife.spec;
    this.outline = knife.outline;
    this.base = this.weigh(knife.spec, knife.outline, undefined, knife.outline);
    this.middle = reading(this.base);
  }

  /**
   * Weighs a variant. Where its handle front moves, what is put on the tang goes with it.
   *
   * @param outline - stands in for the one that the description draws; the laws stay where the knife's own outline has them,
   *   for a side that is left too far out does not move the taper that was forged before.
   * @throws {SpecError} where no outline can be drawn.
   */
  read(spec: KnifeSpec, outline?: Outline): Reading {
    const { base } = this;
    const drawn = outline ?? (isOneOutline(spec, base.spec) ? base.outline : buildOutline(spec).outline);
    const placed = withHandleMoved(spec, drawn.handleFront - base.outline.handleFront);
    return reading(this.weigh(placed, drawn, base, outline === undefined ? drawn : base.outline));
  }

  /** @param measured - the outline by which the stations of laws are found. */
  private weigh(spec: KnifeSpec, outline: Outline, base: Weighed | undefined, measured: Outline): Weighed {
    const isOutlineLeft = outline === base?.outline;
    const isBladeLeft = isOutlineLeft && isOneObject(spec.blade, base.spec.blade, ["holes", "fullers"]);
    const isTangLeft = isOutlineLeft && isOneObject(spec.tang, base.spec.tang, ["holes"]);
    const isSteelLeft = isBladeLeft && isTangLeft;
    const body = isSteelLeft && base !== undefined ? base.body : this.bareBody(spec, outline, measured);
    return {
      spec,
      outline,
      body,
      bare:
        base === undefined || !isBladeLeft
          ? sumsOf(measureBody(body, AIM))
          : isTangLeft
            ? base.bare
            : // The bevels end ahead of the tang: only the slab between the flats has changed.
              plus(base.bare, minus(slabSums(body), slabSums(base.body))),
      holes: holesOf(spec).map((hole) => {
        const known = isSteelLeft ? base?.holes.find(([other]) => other === hole) : undefined;
        return known ?? [hole, takenBy(hole, body)];
      }),
      parts: this.parts(spec, outline, body, base),
    };
  }

  private bareBody(spec: KnifeSpec, outline: Outline, measured: Outline): SteelBody {
    const { finish, allowances } = this.knife;
    const { blade, tang } = spec;
    const bare = { ...spec, blade: { ...blade, holes: [], fullers: [] }, tang: { ...tang, holes: [] } };
    return bodyInState(
      { spec: bare, outline, laws: knifeLaws(bare, measured), finish, allowances },
      "finished",
    );
  }

  private parts(
    spec: KnifeSpec,
    outline: Outline,
    body: SteelBody,
    base: Weighed | undefined,
  ): readonly HandlePart[] {
    const isOutlineLeft = outline === base?.outline;
    if (isOutlineLeft && spec.handle === base.spec.handle && isOneTang(spec, base.spec)) return base.parts;
    const parts = handleParts(spec.handle, outline, body.slab, holesOf(spec));
    if (base === undefined || !isOutlineLeft) return parts;
    return parts.map((part) => {
      const before = base.parts.find(({ path }) => path === part.path);
      return before !== undefined && isOneHandlePart(part.path, spec, base.spec)
        ? { ...before, density: part.density }
        : part;
    });
  }
}

function reading({ spec, bare, holes, parts }: Weighed): Reading {
  const grooves = (spec.blade.fullers ?? []).map((fuller): Sums => {
    const { volume, x } = grooveVolume({ ...fuller, faces: fuller.faces ?? "both" });
    return [volume, volume * x];
  });
  const steel = [...holes.map(([, taken]) => taken), ...grooves].reduce(minus, bare);
  let mass = 0;
  let moment = 0;
  const take = ([volume, x]: Sums, density: number): void => {
    mass += volume * density;
    moment += x * density;
  };
  take(steel, spec.steel.density ?? Number.NaN);
  for (const { moments, density } of parts) take(sumsOf(moments), density ?? Number.NaN);
  for (const part of spec.handle?.parts ?? []) take([1, part.at.x], part.mass);
  return { mass, balance: moment / mass };
}

const holesOf = ({ blade, tang }: KnifeSpec): readonly HoleSpec[] => [
  ...(blade.holes ?? []),
  ...(tang.holes ?? []),
];

const sumsOf = ({ value }: Moments): Sums => [value[VOLUME] as number, value[X] as number];
const plus = (a: Sums, b: Sums): Sums => [a[0] + b[0], a[1] + b[1]];
const minus = (a: Sums, b: Sums): Sums => [a[0] - b[0], a[1] - b[1]];
const slabSums = (body: SteelBody): Sums => sumsOf(slabMoments(body.input.path, body.slab));

/** Steel that a hole takes: the slab's, less what the bevels took from it before. */
function takenBy({ at, to, diameter }: HoleSpec, body: SteelBody): Sums {
  const cutout = { centre: at, radius: diameter / 2, ...(to === undefined ? {} : { to }) };
  const slab = slabMoments(cutoutPath(cutout), body.slab);
  const front = Math.max(at.x, to?.x ?? at.x) + cutout.radius;
  if (front <= body.groundFrom) return sumsOf(slab);
  const scale = slab.value.map(Math.abs);
  return minus(sumsOf(slab), sumsOf(new BevelMoments(body).overDisc(cutout, scale, AIM)));
}
