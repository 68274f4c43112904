import type { ForgingSpec } from "../blade/spec.js";
import { isSameMaterial } from "../materials/materials.js";
import { dressedWidth, type Layers, stackHeight, weldedHeight, weldedWidth } from "./billet.js";
import type { LedgerBodies } from "./blade-states.js";
import { roundUpToStep } from "./ledger.js";
import { isTooMuchNarrowing, narrowingOnEdge } from "./narrowing.js";
import { piecesFromBars } from "./nesting.js";
import { groupRack, type RackGroup } from "./rack-groups.js";
import { makeReachStations, type ReachStations, worstShare } from "./reach.js";
import {
  makeRefusalTally,
  REFUSAL_REASONS,
  type Refusal,
  type RefusalReason,
  type Verdict,
} from "./refusal.js";
import type { RackBar, ShopSpec } from "./shop.js";
import { emptyTrace, makeSteelChain, type SteelChain, traceStack } from "./steel-chain.js";

/** Heats, and the knife's steel where bars of other steels are to be left alone. */
export interface StockForging extends ForgingSpec {
  readonly steel?: string;
}

/** A stack that can be made, with the five numbers by which stacks are compared. */
export interface FeasibleStack {
  /** The entry of the rack, the first of those that are one stock. */
  readonly barIndex: number;
  readonly bars: number;
  readonly layers: Layers;
  /** Proposed length: fed on the high side of every loss, long enough to hold, rounded up to the saw's step, mm. */
  readonly cutLength: number;
  /** g of bars as cut that do not end in the blade, to the microgram. */
  readonly waste: number;
  /** Price of what is sawn off the rack, kerf included; `Infinity` where the bar has no price. */
  readonly cost: number;
  readonly joints: number;
  readonly heats: number;
  /** Greatest reach share over the whole blade, tang included. */
  readonly reach: number;
  /** Share of its height to be driven in on edge although it buckles there; 0 where light blows do. */
  readonly narrowing: number;
}

/** What can be made of the rack, and what cannot. */
export interface StackSearch {
  readonly feasible: readonly FeasibleStack[];
  readonly rejected: readonly Refusal[];
  readonly considered: number;
}

/**
 * Width and thickness of a bar; one entered the other way round is the same bar.
 *
 * @example
 * flatSection({ name: "on edge", width: 6, thickness: 40 }); // { width: 40, thickness: 6 }
 */
export function flatSection(bar: RackBar): { readonly width: number; readonly thickness: number } {
  return { width: Math.max(bar.width, bar.thickness), thickness: Math.min(bar.width, bar.thickness) };
}

/**
 * How much longer a stack gets while its joints are squeezed.
 *
 * @example
 * weldedStretch(3, 0.3, 0.3); // 1.28
 */
export function weldedStretch(bars: number, reduction: number, spreadShare: number): number {
  return bars > 1 ? (1 - reduction) ** (spreadShare - 1) : 1;
}

/** Ten bars of 100 weigh what eight of 125 do: the last digits of a double must not decide between them. */
const onGrid = (value: number, grid: number): number => Math.round(value / grid) * grid;

const reasonAt = (reason: RefusalReason): number => REFUSAL_REASONS.indexOf(reason);
const TOO_SHORT = reasonAt("bar-too-short");

/**
 * Tries every stock of the rack (entries of one section, steel and price are one) as one solid bar and as stacks of two up to the limit, each stack with its layers flat
 * and on edge in the blade. Nothing is left out and nothing guessed; only what survives becomes an object. Sections have to
 * do wherever the losses lie in their bands; lengths are those of the high side, reach is that of the usual losses.
 *
 * @example
 * const rack = [{ name: "6 x 40", width: 40, thickness: 6 }];
 * searchStacks(ledgerBodies(knife), { ...DEFAULT_SHOP, rack }, knife.forging).feasible.length; // stacks that become this blade
 */
export function searchStacks(bodies: LedgerBodies, shop: ShopSpec, forging: StockForging): StackSearch {
  const nominal = makeSteelChain(bodies, shop.losses, shop.limits, forging, "value");
  const high = makeSteelChain(bodies, shop.losses, shop.limits, forging, "high");
  // Little cleaning leaves the stack at its tallest, much dressing the billet at its narrowest: either may be met.
  const otherSides = [makeSteelChain(bodies, shop.losses, shop.limits, forging, "low"), high];
  const stations = makeReachStations(bodies.stations);
  const tally = makeRefusalTally();
  const feasible: FeasibleStack[] = [];
  const trace = emptyTrace();
  const verdict: Verdict = { reason: -1, value: 0, limit: 0 };
  const finishedMass = bodies.finished * bodies.density;
  let considered = 0;

  for (const group of groupRack(shop.rack)) {
    const { bar, barIndex } = group;
    const { width, thickness } = flatSection(bar);
    const wrongSteel =
      bar.steel !== undefined && forging.steel !== undefined && !isSameMaterial(bar.steel, forging.steel);
    for (let bars = 1; bars <= shop.limits.maxBars; bars++) {
      const shortest = wrongSteel ? 0 : traceStack(high, bars, width, thickness, trace).length;
      const cutLength = roundUpToStep(Math.max(shortest, shop.limits.minBilletLength), shop.cutStep);
      const section = bars * width * thickness;
      const waste = section * cutLength * bodies.density - finishedMass;
      const sawn = section * (cutLength + shop.kerf) * bodies.density;
      const cost = bar.pricePerKg === undefined ? Number.POSITIVE_INFINITY : (sawn / 1000) * bar.pricePerKg;
      for (let turned = 0; turned < (bars > 1 ? 2 : 1); turned++) {
        const layers: Layers = turned === 1 ? "on-edge" : "flat";
        considered++;
        verdict.reason = wrongSteel ? reasonAt("wrong-steel") : -1;
        verdict.value = 0;
        verdict.limit = 0;
        const reach = wrongSteel
          ? 0
          : judgeSection(nominal, shop, stations, width, thickness, bars, layers, verdict);
        // A solid bar is neither cleaned, welded nor dressed: its section is the same on every side.
        if (bars > 1) {
          for (const chain of otherSides) {
            if (verdict.reason < 0)
              judgeSection(chain, shop, stations, width, thickness, bars, layers, verdict);
          }
        }
        if (verdict.reason < 0) judgeLength(shop, group, bars, cutLength, verdict);
        const short = verdict.reason === TOO_SHORT;
        if (verdict.reason >= 0 && !short) {
          tally.add(verdict, bar, bars, layers);
          continue;
        }
        const heats = forging.heats + (bars > 1 ? forging.weldingHeats : 0);
        const stack: FeasibleStack = {
          barIndex,
          bars,
          layers,
          cutLength,
          waste: onGrid(waste, 1e-6),
          cost: onGrid(cost, 1e-6),
          joints: bars - 1,
          heats,
          reach: onGrid(reach, 1e-9),
          narrowing: onGrid(
            narrowingOnEdge(
              stations.greatestHeight,
              dressedSection(nominal, width, thickness, bars, layers),
              shop.limits,
            ),
            1e-9,
          ),
        };
        if (short) tally.addShort(verdict, bar, stack);
        else feasible.push(stack);
      }
    }
  }
  return { feasible, rejected: tally.list(shop.limits.reach), considered };
}

/**
 * Section of the dressed billet as it lies in the blade: `height` becomes blade height, `thickness` its thickness.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const chain = makeSteelChain(ledgerBodies(knife), losses, limits, knife.forging, "value");
 * dressedSection(chain, 40, 6, 1, "flat"); // { height: 40, thickness: 6 }
 */
export function dressedSection(
  chain: SteelChain,
  width: number,
  thickness: number,
  bars: number,
  layers: Layers,
): { readonly height: number; readonly thickness: number } {
  const across = dressedWidth(
    bars,
    weldedWidth(bars, width, chain.weldReduction, chain.weldSpreadShare),
    chain.losses.dressing,
  );
  const stacked = weldedHeight(
    bars,
    stackHeight(bars, thickness, chain.losses.cleaning),
    chain.weldReduction,
  );
  return layers === "flat" ? { height: across, thickness: stacked } : { height: stacked, thickness: across };
}

function refuse(verdict: Verdict, reason: RefusalReason, value: number, limit: number): void {
  verdict.reason = reasonAt(reason);
  verdict.value = value;
  verdict.limit = limit;
}

/** Asks what depends on the section alone; returns the reach share of the whole blade. */
function judgeSection(
  chain: SteelChain,
  shop: ShopSpec,
  stations: ReachStations,
  width: number,
  thickness: number,
  bars: number,
  layers: Layers,
  verdict: Verdict,
): number {
  const { limits, press } = shop;
  const stacked = stackHeight(bars, thickness, chain.losses.cleaning);
  const billet = dressedSection(chain, width, thickness, bars, layers);
  const needed = stations.greatestThickness;
  if (press.opening !== undefined && stacked > press.opening) {
    refuse(verdict, "too-tall-for-press", stacked, press.opening);
    return 0;
  }
  if (billet.height <= 0 || billet.thickness <= 0) {
    refuse(verdict, "lost-to-scale", 0, 0);
    return 0;
  }
  // Lying flat, the joints can be squeezed only until the stack is as thin as the forged blade at its thickest.
  const squeeze = 1 - needed / stacked;
  if (bars > 1 && layers === "flat" && squeeze < limits.minWeldReduction) {
    refuse(verdict, "weld-reduction-too-small", squeeze, limits.minWeldReduction);
    return 0;
  }
  if (billet.thickness < needed) {
    refuse(verdict, "too-thin", billet.thickness, needed);
    return 0;
  }
  const reach = worstShare(stations, billet.height, billet.thickness, Number.NEGATIVE_INFINITY);
  if (reach === Number.POSITIVE_INFINITY) {
    refuse(verdict, "too-thin", billet.thickness, needed);
    return reach;
  }
  if (reach > limits.reach.fullers) {
    refuse(verdict, "out-of-reach", reach, limits.reach.fullers);
    return reach;
  }
  // A stack stands on its width while it is squeezed; the billet stands on its height while it is thinned.
  const standing = Math.max(bars > 1 ? stacked / width : 0, billet.thickness / billet.height);
  if (standing > limits.maxSlenderness) {
    refuse(verdict, "too-slender", standing, limits.maxSlenderness);
    return reach;
  }
  // A section much higher than the blade anywhere has to be driven back on edge over its whole length.
  const narrowing = narrowingOnEdge(stations.greatestHeight, billet, limits);
  if (isTooMuchNarrowing(narrowing, limits)) refuse(verdict, "too-high", narrowing, limits.mostNarrowing);
  return reach;
}

/** Asks what depends on the length. */
function judgeLength(
  shop: ShopSpec,
  group: RackGroup,
  bars: number,
  cutLength: number,
  verdict: Verdict,
): void {
  const { limits, press, kerf } = shop;
  if (!Number.isFinite(cutLength)) {
    refuse(verdict, "lost-to-scale", 0, 0);
    return;
  }
  const longest = cutLength * weldedStretch(bars, limits.minWeldReduction, limits.weldSpreadShare);
  if (press.forgeLength !== undefined && longest > press.forgeLength) {
    refuse(verdict, "longer-than-forge", longest, press.forgeLength);
    return;
  }
  const pieces = piecesFromBars(group.lengths, cutLength, kerf);
  if (pieces < bars) refuse(verdict, "bar-too-short", bars, pieces);
}
