import {
  classifyReach,
  type ReachClass,
  type ReachStations,
  reachableHeight,
  worstShare,
  worstStation,
} from "./reach.js";
import { dressedSection, type FeasibleStack } from "./search.js";
import type { StockLimits } from "./shop.js";
import type { SteelChain } from "./steel-chain.js";

/** How far a plan's section has to be spread, mm and shares. */
export interface PlanReach {
  /** Share needed at the worst station ahead of the heel; 0 where none is needed. */
  readonly share: number;
  /** The same over ricasso and tang too. */
  readonly wholeShare: number;
  /** By the larger of the two. */
  readonly class: ReachClass;
  /** The dressed billet's dimensions that become height and thickness. */
  readonly w0: number;
  readonly t0: number;
  /** The station that asks most, the height it needs, and the height that the section can be brought to there. */
  readonly worst?: { readonly x: number; readonly height: number; readonly reachableHeight: number };
  /** Share of the whole blade with one bar fewer, `Infinity` where it cannot be reached; left out for a solid bar. */
  readonly oneFewer?: number;
  readonly oneMore: number;
}

/**
 * Measures the reach of a stack, with one bar fewer and one more beside it.
 *
 * @example
 * const rack = [{ name: "6 x 40", width: 40, thickness: 6 }];
 * planStock(ledgerBodies(knife), { ...DEFAULT_SHOP, rack }, knife.forging).plans[0]?.reach.class; // "easy"
 */
export function planReach(
  chain: SteelChain,
  stations: ReachStations,
  limits: StockLimits["reach"],
  section: { readonly width: number; readonly thickness: number },
  stack: FeasibleStack,
): PlanReach {
  const billetOf = (bars: number) =>
    dressedSection(chain, section.width, section.thickness, bars, stack.layers);
  const wholeShareOf = (bars: number): number => {
    const { height, thickness } = billetOf(bars);
    if (height <= 0 || thickness < stations.greatestThickness) return Number.POSITIVE_INFINITY;
    return worstShare(stations, height, thickness, Number.NEGATIVE_INFINITY);
  };
  const billet = billetOf(stack.bars);
  const i = worstStation(stations, billet.height, billet.thickness, Number.NEGATIVE_INFINITY);
  const worst =
    i < 0
      ? {}
      : {
          worst: {
            x: stations.x[i] ?? 0,
            height: stations.height[i] ?? 0,
            reachableHeight: reachableHeight(
              stations.meanThickness[i] ?? 0,
              billet.height,
              billet.thickness,
              limits.fullers,
            ),
          },
        };
  return {
    share: worstShare(stations, billet.height, billet.thickness, 0),
    wholeShare: worstShare(stations, billet.height, billet.thickness, Number.NEGATIVE_INFINITY),
    class: classifyReach(stack.reach, limits),
    w0: billet.height,
    t0: billet.thickness,
    ...worst,
    ...(stack.bars > 1 ? { oneFewer: wholeShareOf(stack.bars - 1) } : {}),
    oneMore: wholeShareOf(stack.bars + 1),
  };
}
