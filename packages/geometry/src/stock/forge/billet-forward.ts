import { dressedWidth, stackHeight, weldedHeight, weldedWidth } from "../billet.js";
import type { CutStack } from "../ledger.js";
import { afterFractionLoss, flatSurface } from "../scale-loss.js";
import type { SteelChain } from "../steel-chain.js";

/** A dressed billet, cropped at both ends; mm, mm³. `width` is the bars' width, `height` the height of the stack. */
export interface DressedBillet {
  readonly width: number;
  readonly height: number;
  readonly length: number;
  readonly volume: number;
}

/**
 * What bars of a given length become once they are cleaned, welded, dressed and cropped; undoes `traceStack`. A solid
 * bar is its own dressed billet.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const chain = makeSteelChain(ledgerBodies(knife), losses, limits, knife.forging, "value");
 * dressedFromBars(chain, { bars: 1, width: 40, thickness: 6, cutLength: 160 }).length; // 160
 */
export function dressedFromBars(chain: SteelChain, stack: CutStack): DressedBillet {
  const { losses, weldReduction, weldSpreadShare, weldingHeats } = chain;
  const { bars, width, thickness, cutLength } = stack;
  if (bars === 1) return billetOf(width, thickness, width * thickness * cutLength);
  const height = stackHeight(bars, thickness, losses.cleaning);
  const squeezed = weldedHeight(bars, height, weldReduction);
  const spread = weldedWidth(bars, width, weldReduction, weldSpreadShare);
  const clean = dressedWidth(bars, spread, losses.dressing);
  const cleaned = width * height * cutLength;
  const skin = losses.weldingScale * weldingHeats;
  const welded =
    losses.scaleModel === "skin"
      ? // The mean of both surfaces counts, and that of the welded billet grows with its volume.
        (cleaned - (skin / 2) * flatSurface(width, height, cutLength) - skin * spread * squeezed) /
        (1 + skin * (1 / spread + 1 / squeezed))
      : afterFractionLoss(cleaned, losses.weldingScale, weldingHeats);
  const dressed = (welded * clean) / spread - 2 * losses.crop * clean * squeezed;
  return billetOf(clean, squeezed, Math.max(0, dressed));
}

const billetOf = (width: number, height: number, volume: number): DressedBillet => ({
  width,
  height,
  length: volume / (width * height),
  volume,
});
