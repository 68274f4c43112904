import type { CutStack } from "../ledger.js";
import { afterFractionLoss, flatSurface } from "../scale-loss.js";
import type { SteelChain } from "../steel-chain.js";
import { dressedFromBars } from "./billet-forward.js";

/** How long the steel lasts in the fire; masses g. */
export interface HeatsLeft {
  /** What one more heat takes off the dressed billet, and off the forged blade. */
  readonly perHeat: { readonly billet: number; readonly forged: number };
  /** Forging heats that are planned. */
  readonly planned: number;
  /** Whole heats more than planned before the steel runs short; below nothing where it does not last for those. */
  readonly more: number;
  /** What the forged blade has over after the planned heats. */
  readonly overForged: number;
}

/** A whole number of heats may come out this much below one from rounding alone. */
const HAIR = 1e-9;

/**
 * How many heats the bars bear beyond those planned, and what each costs, by the shop's own way of counting scale.
 *
 * @param density - g/mm³
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const chain = makeSteelChain(ledgerBodies(knife), losses, limits, knife.forging, "value");
 * const stack = { bars: 1, width: 30, thickness: 6, cutLength: 200 };
 * heatsLeft(chain, stack, knife.steelDensity).perHeat.billet; // g
 */
export function heatsLeft(chain: SteelChain, stack: CutStack, density: number): HeatsLeft {
  const billet = dressedFromBars(chain, stack);
  const { forged, forgedSurface, heats, losses } = chain;
  const loss = losses.forgingScale;
  if (losses.scaleModel === "fraction") {
    const after = afterFractionLoss(billet.volume, loss, heats);
    const bearable =
      loss > 0 ? Math.log(billet.volume / forged) / -Math.log1p(-loss) : endless(billet, forged);
    return {
      perHeat: { billet: loss * billet.volume * density, forged: loss * forged * density },
      planned: heats,
      more: whole(bearable - heats),
      overForged: (after - forged) * density,
    };
  }
  const surface = flatSurface(billet.width, billet.height, billet.length);
  // The surface goes evenly from the billet's to the forged blade's, so every heat takes the mean of both.
  const mean = (loss * (surface + forgedSurface)) / 2;
  const bearable = mean > 0 ? (billet.volume - forged) / mean : endless(billet, forged);
  return {
    perHeat: { billet: loss * surface * density, forged: loss * forgedSurface * density },
    planned: heats,
    more: whole(bearable - heats),
    overForged: (billet.volume - mean * heats - forged) * density,
  };
}

/** Without any scale the steel lasts for ever, or is short from the start. */
const endless = ({ volume }: { readonly volume: number }, forged: number): number =>
  volume >= forged ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;

const whole = (heats: number): number => Math.floor(heats + HAIR);
