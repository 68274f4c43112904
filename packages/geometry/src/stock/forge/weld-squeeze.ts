import type { GivenLimits } from "../../limits/finding-limits.js";
import { dressedWidth, stackHeight, weldedHeight, weldedWidth } from "../billet.js";
import type { CutStack } from "../ledger.js";
import type { PressSpec } from "../shop.js";
import type { SteelChain } from "../steel-chain.js";
import { weldWork } from "./press-defaults.js";
import { type PressPasses, pressPasses } from "./press-steps.js";

/** How the weld of a stack is squeezed; mm, shares. */
export interface WeldSqueezing {
  /** What the joints have to lose at the least. */
  readonly least: number;
  /** What they lose with the stops that are laid in: not less. */
  readonly reduction: number;
  /** Width of the billet once squeezed, and once dressed. */
  readonly width: number;
  readonly dressedWidth: number;
  readonly passes: PressPasses;
}

/**
 * The squeeze of a stack at welding heat, down to its least reduction or to the stop in hand that is next below.
 *
 * @param chain - At usual losses.
 * @param stack - Of two bars or more.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const chain = makeSteelChain(ledgerBodies(knife), losses, limits, knife.forging, "value");
 * const stack = { bars: 4, width: 50, thickness: 6, cutLength: 160 };
 * weldSqueeze(chain, stack, {}).passes.to; // 15.96, of 22.8 cleaned
 * weldSqueeze(chain, stack, { stopBlocks: [16] }).reduction; // 0.3098, for 16 mm hot are 15.74 cold
 */
export function weldSqueeze(
  chain: SteelChain,
  { bars, width, thickness }: CutStack,
  press: PressSpec,
  given?: GivenLimits,
): WeldSqueezing {
  const { losses, weldReduction: least, weldSpreadShare } = chain;
  const from = stackHeight(bars, thickness, losses.cleaning);
  const to = weldedHeight(bars, from, least);
  const passes = pressPasses({ name: "weld", from, to, across: width }, press, weldWork(press, given));
  const reduction = passes.ends === to ? least : 1 - passes.ends / from;
  const spread = weldedWidth(bars, width, reduction, weldSpreadShare);
  return {
    least,
    reduction,
    width: spread,
    dressedWidth: dressedWidth(bars, spread, losses.dressing),
    passes,
  };
}
