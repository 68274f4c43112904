import { bevelAt } from "../blade/bevel-at.js";
import { checkNumbers } from "../blade/check-numbers.js";
import { insideEnds } from "../blade/inside-ends.js";
import { type Knife, makeKnife, rebuildKnife } from "../blade/knife.js";
import { bevelsBegin, type Side } from "../blade/knife-faces.js";
import { bladeStation } from "../blade/knife-laws.js";
import { measureBody } from "../blade/measure-body.js";
import { type Reading, Reweigher } from "../blade/reweigher.js";
import { thicknessAbove } from "../blade/section-report.js";
import type { KnifeSpec, StationPlace } from "../blade/spec.js";
import { knifeParts } from "../blade/weigh-knife.js";
import { weighMoments } from "../blade/weight.js";
import { GeometryError, SpecError } from "../errors/errors.js";
import { type GateRoute, gateBodies, neededVolume, stageDensity } from "../stock/gates/stage-need.js";

/**
 * What can be asked of a knife when it is fitted. mm, g, rad.
 *
 * - `mass`, `balance` of the whole knife; the balance point counts from the heel, positive toward the tip
 * - `bevel-angle` per side, of the chord of the ground bevel
 * - `behind-edge` full thickness straight above the edge of the finished blade
 * - `steel` bars as cut at the usual losses, before they are rounded up to the saw's step: it changes evenly
 * - `own` anything else that is a number of the knife
 */
export type FitFigure =
  | { readonly kind: "mass" }
  | { readonly kind: "balance" }
  | {
      readonly kind: "bevel-angle";
      /** Left out: where the bevels stand at their full depth, at the heel or ahead of it. */
      readonly at?: StationPlace;
      readonly side: Side;
    }
  | { readonly kind: "behind-edge"; readonly at?: StationPlace; readonly above: number }
  | { readonly kind: "steel"; readonly route: GateRoute }
  | { readonly kind: "own"; readonly measure: (knife: Knife) => number };

/**
 * A figure of a built knife that is no weight; NaN where the knife has none at that place.
 *
 * @example
 * knifeFigure({ kind: "behind-edge", above: 1 }, knife); // mm, 1 mm above the edge at the heel
 */
export function knifeFigure(figure: Exclude<FitFigure, { kind: "mass" | "balance" }>, knife: Knife): number {
  switch (figure.kind) {
    case "bevel-angle":
      return bevelAt(knife, placeOf(figure.at, knife), figure.side).angle;
    case "behind-edge": {
      const x = insideEnds(knife, placeOf(figure.at, knife));
      return thicknessAbove(knife, x, [figure.above])[0]?.thickness ?? Number.NaN;
    }
    case "steel":
      return steelMass(figure.route, knife);
    case "own":
      return figure.measure(knife);
  }
}

const placeOf = (at: StationPlace | undefined, knife: Knife): number =>
  at === undefined ? bevelsBegin(knife) : bladeStation(at, knife.outline);

function steelMass(route: GateRoute, knife: Knife): number {
  const bodies = gateBodies(knife, "cut", route.losses.scaleModel);
  return (neededVolume(bodies, route, "cut", "value") ?? Number.NaN) * stageDensity(bodies, route, "cut");
}

/** Tells figures of variants of one knife. */
export class FigureReader {
  private readonly spec: KnifeSpec;
  private readonly figures: readonly FitFigure[];
  private readonly scale: Reweigher | undefined;

  constructor(spec: KnifeSpec, figures: readonly FitFigure[]) {
    this.spec = spec;
    this.figures = figures;
    this.scale = figures.some(isWeight) ? new Reweigher(rebuildKnife(spec)) : undefined;
  }

  /**
   * The figures of a variant, in their order. The variant may break rules, as long as it can be measured.
   *
   * @param vary - makes the variant of the description that it is given, and keeps the objects that it leaves alone.
   * @returns undefined where it cannot be measured, or a figure is none.
   */
  read(vary: Vary): readonly number[] | undefined {
    return whereBuilt(() => {
      const spec = vary(this.spec);
      if (checkNumbers(spec).length > 0) return undefined;
      const knife = this.figures.every(isWeight) ? undefined : rebuildKnife(spec);
      const reading = this.scale?.read(vary(this.scale.spec));
      const values = this.figures.map((figure) => this.value(figure, knife, reading));
      return values.every(Number.isFinite) ? values : undefined;
    });
  }

  /** The figures of a variant as it is weighed in the end, by itself; undefined where it breaks a rule too. */
  weigh(vary: Vary): readonly number[] | undefined {
    return whereBuilt(() => {
      const knife = makeKnife(vary(this.spec));
      const reading = this.scale === undefined ? undefined : weighed(knife);
      const values = this.figures.map((figure) => this.value(figure, knife, reading));
      return values.every(Number.isFinite) ? values : undefined;
    });
  }

  /** Whether a variant breaks no rule. */
  isSound(vary: Vary): boolean {
    return whereBuilt(() => makeKnife(vary(this.spec))) !== undefined;
  }

  private value(figure: FitFigure, knife: Knife | undefined, reading: Reading | undefined): number {
    if (isWeight(figure)) return reading?.[figure.kind] ?? Number.NaN;
    return knife === undefined ? Number.NaN : knifeFigure(figure, knife);
  }
}

/** Mass and balance of a knife that was built by itself. */
function weighed(knife: Knife): Reading {
  const parts = knifeParts(knife, weighMoments(measureBody(knife.body("finished")), knife.steelDensity));
  const mass = parts.reduce((sum, part) => sum + part.mass, 0);
  return { mass, balance: parts.reduce((sum, part) => sum + part.mass * part.centre.x, 0) / mass };
}

type Vary = (spec: KnifeSpec) => KnifeSpec;

function whereBuilt<T>(make: () => T | undefined): T | undefined {
  try {
    return make();
  } catch (error) {
    if (error instanceof SpecError || error instanceof GeometryError) return undefined;
    throw error;
  }
}

type WeightFigure = Extract<FitFigure, { kind: "mass" | "balance" }>;

const isWeight = (figure: FitFigure): figure is WeightFigure =>
  figure.kind === "mass" || figure.kind === "balance";
