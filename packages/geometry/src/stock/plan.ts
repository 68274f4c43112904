import { type Finding, length } from "../errors/issue.js";
import { dressedWidth, type Layers, stackHeight, weldedHeight, weldedWidth } from "./billet.js";
import type { LedgerBodies, LedgerRow } from "./blade-states.js";
import { makeLedger, roundUpToStep } from "./ledger.js";
import { ledgerWhatIf, type RowWhatIf } from "./ledger-what-if.js";
import { type CutFromBar, nestFromBars } from "./nesting.js";
import { planFindings } from "./plan-findings.js";
import { narrowingFindings, type PlanNarrowing, planNarrowing } from "./plan-narrowing.js";
import { type PlanReach, planReach } from "./plan-reach.js";
import { groupRack, type RackGroup } from "./rack-groups.js";
import { rankStacks } from "./ranking.js";
import { makeReachStations, type ReachStations } from "./reach.js";
import type { Refusal } from "./refusal.js";
import { type FeasibleStack, flatSection, type StockForging, searchStacks } from "./search.js";
import type { RackBar, ShopSpec } from "./shop.js";
import { makeSteelChain, type SteelChain, traceStack } from "./steel-chain.js";
import { explainRank, type PlanReason } from "./why.js";

/** The stack on its way to the dressed billet, at nominal losses and the least weld reduction, mm. */
export interface BilletStages {
  /** Cleaned bars, one on the other. */
  readonly stackHeight: number;
  readonly weldedHeight: number;
  readonly weldedWidth: number;
  readonly dressedWidth: number;
  /** Length of the dressed billet that the forged blade needs, spare not counted. */
  readonly dressedLength: number;
}

/** A way to make the blade's steel out of the rack. Lengths mm, masses g. */
export interface StockPlan {
  /** Number of bars in the stack; 1 is a solid bar. */
  readonly bars: number;
  /** The first entry of the rack of that stock: entries of one section, steel and price are one stock. */
  readonly bar: RackBar;
  readonly barIndex: number;
  readonly layers: Layers;
  readonly width: number;
  readonly thickness: number;
  /** Proposed length of each bar: feeds the blade on the high side of every loss, in the saw's step. */
  readonly cutLength: number;
  /** The same at nominal losses. */
  readonly cutLengthNominal: number;
  /** Before rounding up, at nominal losses and on the high side. */
  readonly shortestLength: { readonly nominal: number; readonly high: number };
  readonly volume: number;
  readonly mass: number;
  /** Mass as cut less finished mass. */
  readonly waste: number;
  readonly joints: number;
  /** Forging heats and, for a stack, welding heats. */
  readonly heats: number;
  /** Price of the steel sawn off the rack, kerf included. */
  readonly cost?: number;
  readonly billet: BilletStages;
  readonly reach: PlanReach;
  /** Left out where nothing has to be narrowed on edge that would buckle there. */
  readonly narrowing?: PlanNarrowing;
  /** How the pieces come out of the bars in hand; left out where no bar of that stock has a length. */
  readonly cuts?: readonly CutFromBar[];
  /** At nominal losses, for bars of the proposed length: `spare` holds the reserve for the high side too. */
  readonly ledger: readonly LedgerRow[];
  /** On the high side of every loss: `spare` is what rounding up leaves over. */
  readonly ledgerHigh: readonly LedgerRow[];
  /** On the low side of every loss, for the same bars. */
  readonly ledgerLow: readonly LedgerRow[];
  /** What the finished steel would weigh if one row of the ledger were wrong, those that matter most first. */
  readonly whatIf: readonly RowWhatIf[];
  readonly why: readonly PlanReason[];
  readonly findings: readonly Finding[];
}

/** Ranked plans, and what was refused and why. */
export interface StockReport {
  /** Best first; every plan is better than every other in something. */
  readonly plans: readonly StockPlan[];
  /** What could not be proposed, counted by reason, each with its nearest miss. */
  readonly rejected: readonly Refusal[];
  /** How many stacks were tried: plans, superfluous ones and refused ones together. */
  readonly considered: number;
  /** How many could be made and were better in nothing than another. */
  readonly superfluous: number;
}

/**
 * Plans the steel of a knife: every stock of the rack as one solid bar and as stacks of two up to the shop's limit,
 * each cut to the shortest length that feeds the ledger on the high side of every loss and that can be held.
 *
 * @param bodies - Volumes that the geometry measured, mm³.
 * @param shop - Rack, losses and limits; see `checkShop` for what has to hold.
 * @param forging - Heats; with `steel`, bars of another steel are refused.
 *
 * @remarks Entries of one section, steel and price are one stock in several lengths: the pieces of a stack may come from
 * any of them. Other entries are not combined. The handling bar is not counted.
 *
 * @example
 * const rack = [{ name: "6 x 40", width: 40, thickness: 6 }];
 * const { plans } = planStock(ledgerBodies(knife), { ...DEFAULT_SHOP, rack }, knife.forging);
 * plans[0]?.cutLength; // mm
 */
export function planStock(bodies: LedgerBodies, shop: ShopSpec, forging: StockForging): StockReport {
  const search = searchStacks(bodies, shop, forging);
  const ranked = rankStacks(search.feasible, shop.limits.reach);
  const nominal = makeSteelChain(bodies, shop.losses, shop.limits, forging, "value");
  const high = makeSteelChain(bodies, shop.losses, shop.limits, forging, "high");
  const stations = makeReachStations(bodies.stations);
  const groups = new Map(groupRack(shop.rack).map((group) => [group.barIndex, group]));
  const plans = ranked.flatMap((stack, rank) => {
    const group = groups.get(stack.barIndex);
    if (group === undefined) return [];
    const plan = makePlan(bodies, shop, forging, nominal, high, stations, stack, group);
    return [{ ...plan, why: [...explainRank(ranked, rank, shop.limits.reach, shop.currency), ...plan.why] }];
  });
  return {
    plans,
    rejected: search.rejected,
    considered: search.considered,
    superfluous: search.feasible.length - ranked.length,
  };
}

function makePlan(
  bodies: LedgerBodies,
  shop: ShopSpec,
  forging: StockForging,
  nominal: SteelChain,
  high: SteelChain,
  stations: ReachStations,
  stack: FeasibleStack,
  group: RackGroup,
): StockPlan {
  const { bar, lengths } = group;
  const { bars, cutLength } = stack;
  const low = makeSteelChain(bodies, shop.losses, shop.limits, forging, "low");
  const section = flatSection(bar);
  const cut = { bars, ...section, cutLength };
  const shortest = {
    nominal: traceStack(nominal, bars, section.width, section.thickness).length,
    high: traceStack(high, bars, section.width, section.thickness).length,
  };
  const volume = bars * section.width * section.thickness * cutLength;
  const reach = planReach(nominal, stations, shop.limits.reach, section, stack);
  const narrowing = planNarrowing({ low, nominal, high }, shop, stations, stack, group);
  const billet = billetStages(nominal, bars, section);
  const { minBilletLength, minWeldReduction } = shop.limits;
  const squeeze =
    stack.layers === "flat" ? 1 - stations.greatestThickness / billet.stackHeight : minWeldReduction;
  const cuts = lengths.some(({ length: inHand }) => inHand !== undefined)
    ? nestFromBars(lengths, bars, cutLength, shop.kerf)
    : undefined;
  return {
    bars,
    bar,
    barIndex: stack.barIndex,
    layers: stack.layers,
    ...section,
    cutLength,
    cutLengthNominal: roundUpToStep(Math.max(shortest.nominal, minBilletLength), shop.cutStep),
    shortestLength: shortest,
    volume,
    mass: volume * bodies.density,
    waste: (volume - bodies.finished) * bodies.density,
    joints: stack.joints,
    heats: stack.heats,
    ...(Number.isFinite(stack.cost) ? { cost: stack.cost } : {}),
    billet,
    reach,
    ...(narrowing === undefined ? {} : { narrowing }),
    ...(cuts === undefined ? {} : { cuts }),
    ledger: makeLedger(bodies, nominal, cut),
    ledgerHigh: makeLedger(bodies, high, cut),
    ledgerLow: makeLedger(bodies, low, cut),
    whatIf: ledgerWhatIf(bodies, shop, forging, cut),
    why: shortest.high < minBilletLength ? [longerToHold(shortest.high, minBilletLength)] : [],
    findings: [
      ...narrowingFindings(narrowing, bars, `rack[${stack.barIndex}]`, shop.limits),
      ...planFindings(stack, bar, reach, squeeze, shop.limits, forging),
    ],
  };
}

function billetStages(
  chain: SteelChain,
  bars: number,
  { width, thickness }: { readonly width: number; readonly thickness: number },
): BilletStages {
  const height = stackHeight(bars, thickness, chain.losses.cleaning);
  const welded = weldedWidth(bars, width, chain.weldReduction, chain.weldSpreadShare);
  return {
    stackHeight: height,
    weldedHeight: weldedHeight(bars, height, chain.weldReduction),
    weldedWidth: welded,
    dressedWidth: dressedWidth(bars, welded, chain.losses.dressing),
    dressedLength: traceStack(chain, bars, width, thickness).dressedLength,
  };
}

const longerToHold = (needed: number, shortestHeld: number): PlanReason => ({
  code: "longer-to-hold",
  text: "{needed} would feed the blade; cut longer because a billet under {held} is hard to hold.",
  values: { needed: length(needed), held: length(shortestHeld) },
});
