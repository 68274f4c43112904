import type { GateStage, StageNeed } from "./stage-need.js";
import type { SteelBand } from "./steel-band.js";

/**
 * What a weigh-in says: enough at the high side of all losses, only at the usual ones, or not even at those. `not-sure`
 * where a mass that rose may hold so much scale that it is short, and may not.
 */
export type GateVerdict = "enough" | "enough-at-usual-losses" | "not-sure" | "short";

/** Steel in hand against steel needed; g, positive to spare. */
export interface WeighIn {
  readonly stage: GateStage;
  /** Steel in hand; where a mass rose, the most that it can be. */
  readonly mass: number;
  /** The least that it can be; the same where nothing rose. */
  readonly least: number;
  readonly need: StageNeed;
  readonly verdict: GateVerdict;
  /** Left over of `mass` at the usual losses; below nothing: short by so much. */
  readonly spare: number;
  /** The same of `least`. */
  readonly leastSpare: number;
  /**
   * From `least` at high losses to `mass` at low ones, with the band of the knife itself in squares: 95 of 100, as far as bands
   * are.
   */
  readonly spareBand: readonly [number, number];
  /** What the knife itself may weigh more or less at this stage than computed, 95 times of 100. */
  readonly knifeBand: { readonly plus: number; readonly minus: number };
}

/** Stages at which the piece has its shape: what it weighs other than computed is the tolerance of work and density. */
const SHAPED: readonly GateStage[] = ["ready", "finished"];

/** Masses nearer than this are the same, g: far below any scale. */
const SAME_MASS = 1e-6;

/**
 * Holds the steel in hand against what a stage needs.
 *
 * Up to the forged blade steel that is not there cannot be ground into shape, and the losses alone decide. A blade that
 * has its shape is held against its own band besides: within it, it is as drawn.
 *
 * @param mass - Steel in hand, handling bar off, g.
 * @param growth - Steel that a gram of the finished blade is at this stage, see `stageGrowth`.
 * @param least - What the steel may be at least where the mass rose, g, see `questionRises`.
 *
 * @example
 * const none = { plus: 0, minus: 0 };
 * const need = { low: 690, value: 702, high: 730 };
 * weighIn("billet", 720, need, 1.1, { sizes: none, density: none }).verdict; // "enough-at-usual-losses"
 */
export function weighIn(
  stage: GateStage,
  mass: number,
  need: StageNeed,
  growth: number,
  band: SteelBand,
  least = mass,
): WeighIn {
  const atStage = (side: "plus" | "minus"): number =>
    Math.hypot(band.sizes[side] * growth, band.density[side] * need.value);
  const knifeBand = { plus: atStage("plus"), minus: atStage("minus") };
  const within = SHAPED.includes(stage) ? knifeBand.minus : 0;
  const reached = (steel: number, limit: number): boolean => steel >= limit - within - SAME_MASS;
  const verdictOf = (steel: number): GateVerdict =>
    reached(steel, need.high) ? "enough" : reached(steel, need.value) ? "enough-at-usual-losses" : "short";
  const [best, worst] = [verdictOf(mass), verdictOf(least)];
  const [spare, leastSpare] = [mass - need.value, least - need.value];
  return {
    stage,
    mass,
    least,
    need,
    verdict: best !== "short" && worst === "short" ? "not-sure" : worst,
    spare,
    leastSpare,
    spareBand: [
      leastSpare - Math.hypot(need.high - need.value, knifeBand.plus),
      spare + Math.hypot(need.value - need.low, knifeBand.minus),
    ],
    knifeBand,
  };
}
