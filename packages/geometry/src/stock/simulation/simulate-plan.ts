import type { LedgerBodies } from "../blade-states.js";
import { type LossSide, lossesAt } from "../loss-side.js";
import type { StockPlan } from "../plan.js";
import type { StockForging } from "../search.js";
import type { ShopSpec } from "../shop.js";
import { type ForgeFailure, findFailures } from "./failures.js";
import { type ForgeSetting, type ForgeStep, forgeForward } from "./forge-forward.js";
import { solveStraight } from "./heats.js";

/** What of a plan is forged. */
export type SimulatedPlan = Pick<StockPlan, "bars" | "width" | "thickness" | "cutLength" | "layers" | "bar">;

/** A plan forged forwards at one side of the losses' bands. Lengths mm, volumes mm³, masses g. */
export interface ForgeRun {
  readonly side: LossSide;
  /** From the bars as cut to the sharpened blade; the second step sets the spare aside. */
  readonly steps: readonly ForgeStep[];
  /** Length of each bar that ends exactly at the finished blade, found by forging. `Infinity` where none does. */
  readonly usedLength: number;
  /** What the bars hold beyond that; below nothing where they are too short. */
  readonly spareVolume: number;
  readonly spareMass: number;
  /** Mass of the sharpened blade and tang that comes out. */
  readonly finishedVolume: number;
  readonly finishedMass: number;
  /** Mass that the finished steel would be over (or short: below nothing) if all of the bars went through the fire. */
  readonly overAtFinish: number;
  /** Why these bars cannot become the blade; empty where they can. */
  readonly failures: readonly ForgeFailure[];
}

/**
 * Forges a plan forwards from its bars: cleaning, welding heats and squeeze, dressing, cropping, forging heats, grinding,
 * drilling, heat treatment, finish grinding and sharpening. Written apart from the ledger, which works backwards: the
 * length that the blade needs is found by forging, and what is left of the bars is the ledger's `spare`.
 *
 * @param plan - One of `planStock`, or any other stack with a length.
 * @param side - Which end of the losses' bands is met.
 *
 * @example
 * const shop = { ...DEFAULT_SHOP, rack: [{ name: "6 x 40", width: 40, thickness: 6 }] };
 * const bodies = ledgerBodies(knife);
 * const [plan] = planStock(bodies, shop, knife.forging).plans;
 * if (plan === undefined) throw new Error("a bar of 40 x 6 becomes this blade");
 * const run = simulatePlan(bodies, shop, knife.forging, plan);
 * run.failures.length; // 0
 * run.finishedMass / (bodies.finished * bodies.density); // 1
 */
export function simulatePlan(
  bodies: LedgerBodies,
  shop: ShopSpec,
  forging: StockForging,
  plan: SimulatedPlan,
  side: LossSide = "value",
): ForgeRun {
  const { cutLength, bars, width, thickness } = plan;
  const setting: ForgeSetting = { bodies, losses: lossesAt(shop.losses, side), forging, limits: shop.limits };
  const outOf = (length: number): number => finishedOf(forgeForward(setting, plan, length));
  const usedLength = solveStraight(outOf, bodies.finished, [2 * cutLength, cutLength]);
  const whole = forgeForward(setting, plan, cutLength);
  const isFed = usedLength <= cutLength * (1 + ROUNDING);
  const forged = isFed ? forgeForward(setting, plan, usedLength) : whole;
  const spareVolume = bars * width * thickness * (cutLength - usedLength);
  const finishedVolume = finishedOf(forged);
  return {
    side,
    steps: isFed ? withSpare(whole, forged, spareVolume, bodies.density) : whole,
    usedLength,
    spareVolume,
    spareMass: spareVolume * bodies.density,
    finishedVolume,
    finishedMass: finishedVolume * bodies.density,
    overAtFinish: (finishedOf(whole) - bodies.finished) * bodies.density,
    failures: findFailures(bodies, shop, plan, whole, usedLength),
  };
}

/** Relative; a length is no shorter than needed for the last digits of a double. */
const ROUNDING = 1e-12;

const finishedOf = (steps: readonly ForgeStep[]): number => steps[steps.length - 1]?.volume ?? 0;

/** The whole bars first, then what is set aside, then the part that is forged. */
function withSpare(
  [cut]: readonly ForgeStep[],
  [used, ...rest]: readonly ForgeStep[],
  volume: number,
  density: number,
): ForgeStep[] {
  if (cut === undefined || used === undefined) return [];
  return [cut, { ...used, step: "spare", lostVolume: volume, lostMass: volume * density }, ...rest];
}
