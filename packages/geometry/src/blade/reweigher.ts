import { materialDensity } from "../materials/material-density.js";
import { BevelMoments } from "./bevel-moments.js";
import { bevelSums } from "./bevel-sums.js";
import { buildOutline } from "./build-outline.js";
import { cutoutPath } from "./cutout-path.js";
import { grooveVolume } from "./groove-volume.js";
import type { Knife } from "./knife.js";
import { knifeLaws } from "./knife-laws.js";
import { type HandlePart, measurableParts } from "./measurable-parts.js";
import { measureBody } from "./measure-body.js";
import { type Moments, VOLUME, X } from "./moments.js";
import type { Outline } from "./outline.js";
import { withReusedRuns } from "./reused-runs.js";
import {
  isOneBlade,
  isOneHandlePart,
  isOneObject,
  isOneOutline,
  isOneTang,
  type Measured,
} from "./same-inputs.js";
import { bodyInState } from "./size-states.js";
import { slabMoments } from "./slab-moments.js";
import type { HoleSpec, KnifeSpec, MaterialSpec } from "./spec.js";
import { readAt } from "./spec-path.js";
import type { SteelBody } from "./steel-body.js";
import { layersOnTang, type TangLayers } from "./tang-layers.js";
import { withHandleMoved } from "./with-handle-moved.js";

/** Mass of a whole knife, g, and its balance point from the heel, mm. */
export interface Reading {
  readonly mass: number;
  readonly balance: number;
}

/** ∭dV, mm³, and ∭x dV, mm⁴. */
type Sums = readonly [volume: number, x: number];

/** Relative error at which the knife itself is weighed, and what a hole in its bevels takes. */
const AIM = 1e-7;
/** Stations in each piece of a variant's bevels. */
const POINTS = 5;

/** One description with what has been found of it. */
interface Weighed extends Measured {
  /** Steel without holes and fullers. */
  readonly body: SteelBody;
  /** What bevels, swedge and eased spine take from the slab, with a few stations. */
  readonly ground: Sums;
  readonly bare: Sums;
  readonly holes: readonly (readonly [hole: HoleSpec, taken: Sums])[];
  readonly parts: readonly HandlePart[];
}

/**
 * Weighs variants of one knife, each with a number or two moved. Whatever a variant leaves as it was is not measured again: the
 * outline is drawn anew only where it moves, what is ground off measured only where the blade changes, a hole or a part of the
 * handle where itself or what it stands on does; densities and masses move no integral at all. A variant's steel differs from
 * the knife's by the difference of two quadratures of the same make, so that their errors drop out.
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
  /** Surfaces on the knife's own tang: they stay where only holes move. */
  private readonly layers: TangLayers | undefined;

  /** @param knife - with every density written in, as `rebuildKnife` makes it. */
  constructor(knife: Knife) {
    const { spec, outline } = knife;
    this.knife = knife;
    this.spec = spec;
    this.outline = outline;
    const body = this.bareBody(spec, outline, outline);
    this.layers = spec.handle === undefined ? undefined : layersOnTang(spec.handle, outline, body.slab);
    this.base = {
      spec,
      outline,
      slab: body.slab,
      body,
      ground: bevelSums(body, POINTS),
      bare: sumsOf(measureBody(body, AIM)),
      holes: holesOf(spec).map((hole) => [hole, takenBy(hole, body)]),
      parts: measurableParts(spec.handle, outline, body.slab, holesOf(spec), this.layers),
    };
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
    if (outline !== undefined) return reading(this.weigh(spec, outline, base.outline));
    const drawn = isOneOutline(spec, base.spec)
      ? base.outline
      : withReusedRuns(buildOutline(spec).outline, base.outline);
    return reading(this.weigh(spec, drawn, drawn));
  }

  /** @param measured - the outline by which the stations of laws are found. */
  private weigh(given: KnifeSpec, outline: Outline, measured: Outline): Weighed {
    const { base } = this;
    const spec = withHandleMoved(given, outline.handleFront - base.outline.handleFront);
    const isSteelLeft =
      outline === base.outline &&
      isOneObject(spec.blade, base.spec.blade, ["holes", "fullers"]) &&
      isOneObject(spec.tang, base.spec.tang, ["holes"]);
    const body = isSteelLeft ? base.body : this.bareBody(spec, outline, measured);
    const self: Measured = { spec, outline, slab: body.slab };
    const ground = isSteelLeft || isOneBlade(self, base) ? base.ground : bevelSums(body, POINTS);
    return {
      ...self,
      body,
      ground,
      bare: isSteelLeft
        ? base.bare
        : plus(base.bare, minus(minus(slabSums(body), slabSums(base.body)), minus(ground, base.ground))),
      holes: holesOf(spec).map((hole) => {
        const isLeft = isSteelLeft || (hole.at.x < 0 && isOneTang(self, base));
        const known = isLeft ? base.holes.find(([other]) => other === hole) : undefined;
        return known ?? [hole, takenBy(hole, body)];
      }),
      parts: this.parts(self),
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

  private parts(self: Measured): readonly HandlePart[] {
    const { base } = this;
    const { spec, outline, slab } = self;
    const isLeft = (path: string): boolean => isOneHandlePart(path, self, base);
    if (base.parts.every(({ path }) => isLeft(path))) {
      return base.parts.map((part) => ({ ...part, density: densityAt(spec, part.path) }));
    }
    const isTangLeft = spec.handle === base.spec.handle && outline === base.outline && isOneTang(self, base);
    const layers = isTangLeft ? this.layers : undefined;
    return measurableParts(spec.handle, outline, slab, holesOf(spec), layers).map((part) => {
      const before = base.parts.find(({ path }) => path === part.path);
      return before !== undefined && isLeft(part.path) ? { ...before, density: part.density } : part;
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

const densityAt = (spec: KnifeSpec, path: string): number | undefined =>
  materialDensity(readAt(spec, `${path}.material`) as MaterialSpec);

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
