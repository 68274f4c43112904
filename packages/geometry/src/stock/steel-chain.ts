import type { ForgingSpec } from "../blade/spec.js";
import { dressedWidth, stackHeight, weldedHeight, weldedWidth } from "./billet.js";
import type { LedgerBodies } from "./blade-states.js";
import { type Losses, type LossSide, lossesAt } from "./loss-side.js";
import { beforeFractionLoss, beforeSkinLoss, flatSurface } from "./scale-loss.js";
import type { LossSpec, StockLimits } from "./shop.js";

/** What is the same for every stack of one knife, at one side of the losses' bands. Volumes mm³. */
export interface SteelChain {
  readonly losses: Losses;
  readonly heats: number;
  readonly weldingHeats: number;
  readonly weldReduction: number;
  readonly weldSpreadShare: number;
  /** Sharpened, finished and heat treated: with its scale, ready to harden. */
  readonly ready: number;
  readonly heatTreatmentScale: number;
  readonly forged: number;
  readonly forgedSurface: number;
}

/**
 * Adds heat-treatment scale to the measured bodies and so finds the volume of the forged blade.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const chain = makeSteelChain(ledgerBodies(knife), losses, limits, knife.forging, "value");
 * traceStack(chain, 1, 40, 6).length; // mm of one 40 × 6 bar that feed the blade
 */
export function makeSteelChain(
  bodies: LedgerBodies,
  lossSpec: LossSpec,
  limits: StockLimits,
  forging: ForgingSpec,
  side: LossSide,
): SteelChain {
  const losses = lossesAt(lossSpec, side);
  const treated = bodies.finished + bodies.sharpening + bodies.finishGrinding;
  const ready =
    losses.scaleModel === "skin"
      ? treated + losses.heatTreatmentScale * bodies.readySurface
      : beforeFractionLoss(treated, losses.heatTreatmentScale, 1);
  const ground =
    bodies.drilling +
    bodies.bevelGrinding +
    bodies.tangGrinding +
    bodies.faceGrinding +
    bodies.profileTrimming;
  return {
    losses,
    heats: forging.heats,
    weldingHeats: forging.weldingHeats,
    weldReduction: limits.minWeldReduction,
    weldSpreadShare: limits.weldSpreadShare,
    ready,
    heatTreatmentScale: ready - treated,
    forged: ready + ground,
    forgedSurface: bodies.forgedSurface,
  };
}

/** One stack traced back from the forged blade: volumes mm³, lengths mm. */
export interface StackTrace {
  dressed: number;
  crop: number;
  dressing: number;
  welded: number;
  cleaned: number;
  cleaning: number;
  /** Shortest length of bar that feeds the forged blade; `Infinity` where no length does. */
  length: number;
  dressedLength: number;
  weldedLength: number;
}

/**
 * A trace that nothing was traced into yet.
 *
 * @example
 * emptyTrace().length; // 0
 */
export const emptyTrace = (): StackTrace => ({
  dressed: 0,
  crop: 0,
  dressing: 0,
  welded: 0,
  cleaned: 0,
  cleaning: 0,
  length: 0,
  dressedLength: 0,
  weldedLength: 0,
});

/**
 * Traces a stack of `bars` flats `width × thickness` back from the forged blade to the shortest bars that feed it.
 * Closed form: every loss is a share, a skin or a slice, so each volume is linear in the one after it.
 *
 * Cropping takes off bad weld ends, so a solid bar has none, as it has no cleaning, dressing or welding scale.
 *
 * @param into - Overwritten and returned, so that a search over thousands of stacks makes no garbage.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const chain = makeSteelChain(ledgerBodies(knife), losses, limits, knife.forging, "value");
 * traceStack(chain, 3, 40, 6).length; // mm of each of three bars
 */
export function traceStack(
  chain: SteelChain,
  bars: number,
  width: number,
  thickness: number,
  into: StackTrace = emptyTrace(),
): StackTrace {
  const { losses } = chain;
  const stacked = bars > 1;
  const height = stackHeight(bars, thickness, losses.cleaning);
  const billetHeight = weldedHeight(bars, height, chain.weldReduction);
  const billetWidth = weldedWidth(bars, width, chain.weldReduction, chain.weldSpreadShare);
  const cleanWidth = dressedWidth(bars, billetWidth, losses.dressing);
  if (height <= 0 || cleanWidth <= 0) return noLength(into);

  const skin = losses.scaleModel === "skin";
  into.dressed = skin
    ? beforeSkinLoss(
        chain.forged,
        chain.forgedSurface,
        cleanWidth,
        billetHeight,
        losses.forgingScale,
        chain.heats,
      )
    : beforeFractionLoss(chain.forged, losses.forgingScale, chain.heats);
  into.dressedLength = into.dressed / (cleanWidth * billetHeight);
  into.crop = stacked ? 2 * losses.crop * cleanWidth * billetHeight : 0;
  // Both long sides over the whole length: a share of the welded billet's width.
  into.welded = ((into.dressed + into.crop) * billetWidth) / cleanWidth;
  into.dressing = into.welded - (into.dressed + into.crop);
  into.weldedLength = into.welded / (billetWidth * billetHeight);
  into.cleaned = !stacked
    ? into.welded
    : skin
      ? beforeSkinLoss(
          into.welded,
          flatSurface(billetWidth, billetHeight, into.weldedLength),
          width,
          height,
          losses.weldingScale,
          chain.weldingHeats,
        )
      : beforeFractionLoss(into.welded, losses.weldingScale, chain.weldingHeats);
  into.length = into.cleaned / (width * height);
  into.cleaning = 2 * losses.cleaning * (bars - 1) * width * into.length;
  return Number.isFinite(into.length) ? into : noLength(into);
}

function noLength(into: StackTrace): StackTrace {
  return Object.assign(into, emptyTrace(), { length: Number.POSITIVE_INFINITY });
}
