import { count, type Finding, length } from "../errors/issue.js";
import { findingLimit } from "../limits/finding-limits.js";
import { limitBasis } from "../limits/limit.js";
import { STOCK_LIMITS } from "../limits/shop-limits.js";
import { dressedWidth, weldedWidth } from "./billet.js";
import { roundUpToStep } from "./ledger.js";
import { piecesFromBars } from "./nesting.js";
import type { RackGroup } from "./rack-groups.js";
import { type ReachStations, worstShare } from "./reach.js";
import { dressedSection, type FeasibleStack, flatSection, weldedStretch } from "./search.js";
import type { ShopSpec, StockLimits } from "./shop.js";
import { type SteelChain, traceStack } from "./steel-chain.js";

/** A bar or billet that is higher than the blade and buckles in heavy blows on edge. Lengths mm. */
export interface PlanNarrowing {
  /** Share of its height that has to go, 0–1. */
  readonly share: number;
  /** As it lies in the blade, and the greatest height of the forged blade. */
  readonly from: number;
  readonly to: number;
  /** Height over thickness. */
  readonly slenderness: number;
  /**
   * The other way: bars sawn down until light blows do the rest, each longer by what that takes off. Left out for
   * layers on edge, whose height is not that of one bar, and where the bars in hand or the forge are too short for it.
   */
  readonly sawn?: { readonly width: number; readonly cutLength: number };
}

/** The steel back from the blade, at the losses of each side. */
export interface ChainSides {
  readonly low: SteelChain;
  readonly nominal: SteelChain;
  readonly high: SteelChain;
}

/** Bars are sawn down to this, mm: no saw holds less over a bar's length. */
const SAWN_STEP = 0.5;

/**
 * What has to be narrowed on edge for a plan; undefined where nothing has to be that light blows would not do.
 *
 * @example
 * const rack = [{ name: "5 x 40", width: 40, thickness: 5 }];
 * const [plan] = planStock(ledgerBodies(knife), { ...DEFAULT_SHOP, rack }, knife.forging).plans;
 * plan?.narrowing?.slenderness; // 8: height over thickness of a bar higher than the blade
 */
export function planNarrowing(
  chains: ChainSides,
  shop: ShopSpec,
  stations: ReachStations,
  stack: FeasibleStack,
  group: RackGroup,
): PlanNarrowing | undefined {
  if (stack.narrowing === 0) return undefined;
  const { width, thickness } = flatSection(group.bar);
  const billet = dressedSection(chains.nominal, width, thickness, stack.bars, stack.layers);
  const sawn = stack.layers === "flat" ? sawnDown(chains, shop, stations, stack, group) : undefined;
  return {
    share: stack.narrowing,
    from: billet.height,
    to: stations.greatestHeight,
    slenderness: billet.height / billet.thickness,
    ...(sawn === undefined ? {} : { sawn }),
  };
}

function sawnDown(
  { low, nominal, high }: ChainSides,
  { limits, press, cutStep, kerf }: ShopSpec,
  stations: ReachStations,
  { bars }: FeasibleStack,
  { bar, lengths }: RackGroup,
): PlanNarrowing["sawn"] {
  const { thickness } = flatSection(bar);
  const light = stations.greatestHeight / (1 - findingLimit("freeNarrowing", limits.findings).value);
  // Little dressing leaves the billet at its highest, and there too light blows have to do.
  const { weldReduction, weldSpreadShare, losses } = low;
  const stretch = weldedWidth(bars, 1, weldReduction, weldSpreadShare);
  const least = (light - dressedWidth(bars, 0, losses.dressing)) / stretch;
  const width = Math.floor(least / SAWN_STEP) * SAWN_STEP;
  const billet = dressedSection(nominal, width, thickness, bars, "flat");
  const shortest = traceStack(high, bars, width, thickness).length;
  const cutLength = roundUpToStep(Math.max(shortest, limits.minBilletLength), cutStep);
  const longest = cutLength * weldedStretch(bars, limits.minWeldReduction, limits.weldSpreadShare);
  const reaches =
    billet.height > 0 &&
    worstShare(stations, billet.height, billet.thickness, Number.NEGATIVE_INFINITY) <= limits.reach.flatDies;
  const inHand = Number.isFinite(cutLength) && piecesFromBars(lengths, cutLength, kerf) >= bars;
  return reaches && inHand && longest <= (press.forgeLength ?? Number.POSITIVE_INFINITY)
    ? { width, cutLength }
    : undefined;
}

/**
 * The warning that goes with a plan's narrowing: how to go about it, and how to get round it.
 *
 * @example
 * const narrowing = { share: 0.2, from: 45, to: 36, slenderness: 9 };
 * narrowingFindings(narrowing, 1, "rack[0]", DEFAULT_SHOP.limits).map(({ code }) => code); // ["narrowed-on-edge"]
 */
export function narrowingFindings(
  narrowing: PlanNarrowing | undefined,
  bars: number,
  path: string,
  limits: StockLimits,
): Finding[] {
  if (narrowing === undefined) return [];
  const { from, to, slenderness, sawn } = narrowing;
  const what = bars === 1 ? "bar" : "billet";
  const [it, each] = bars === 1 ? ["it", "it"] : ["the bars", "each"];
  const round =
    sawn === undefined
      ? ""
      : `, or saw or grind ${it} down to {sawn} first and then cut ${each} {length} long, which makes up for what comes off`;
  return [
    {
      code: "narrowed-on-edge",
      path,
      severity: "warn",
      text: `On edge the ${what} is {times} times as high as thick, {most} is the most: it buckles in heavy blows. It is {height} high, the blade {needed}: draw it narrower in light blows, from thick to thin${round}.`,
      values: {
        times: count(slenderness),
        most: count(limits.maxSlenderness),
        height: length(from),
        needed: length(to),
        ...(sawn === undefined ? {} : { sawn: length(sawn.width), length: length(sawn.cutLength) }),
      },
      basis: limitBasis(limits.maxSlenderness, STOCK_LIMITS.maxSlenderness),
    },
  ];
}
