import type { LedgerBodies } from "../blade-states.js";
import { groupRack } from "../rack-groups.js";
import type { RefusalReason } from "../refusal.js";
import type { ShopSpec } from "../shop.js";
import type { FlatPiece } from "./flat-step.js";
import type { ForgeStep } from "./forge-forward.js";
import type { SimulatedPlan } from "./simulate-plan.js";

/** Why bars cannot become the blade: `not-fed`, or one of the reasons for which stacks are refused. */
export type ForgeFailureCode =
  | "not-fed"
  | Extract<
      RefusalReason,
      | "lost-to-scale"
      | "too-tall-for-press"
      | "too-thin"
      | "out-of-reach"
      | "longer-than-forge"
      | "bar-too-short"
    >;

/** One reason, with the number that decides and what it may be at most or has to be at least. */
export interface ForgeFailure {
  readonly code: ForgeFailureCode;
  readonly value: number;
  readonly limit: number;
}

/** Relative, for numbers that the planner finds by another way. */
const ROUNDING = 1e-9;

/**
 * Everything that keeps a forged-forwards stack from becoming the blade, by the pieces that it goes through and the
 * sections that the blade asks for.
 *
 * @param whole - The steps of the whole bars, nothing set aside.
 */
export function findFailures(
  bodies: LedgerBodies,
  shop: ShopSpec,
  plan: SimulatedPlan,
  whole: readonly ForgeStep[],
  usedLength: number,
): ForgeFailure[] {
  const found: ForgeFailure[] = [];
  const atMost = (code: ForgeFailureCode, value: number, limit: number | undefined): void => {
    if (limit !== undefined && !(value <= limit + Math.abs(limit) * ROUNDING))
      found.push({ code, value, limit });
  };
  const flats = whole.flatMap(({ step, section }) => (section === undefined ? [] : [{ step, section }]));
  const pieces = flats.map(({ section }) => section);
  if (pieces.some(hasNothingLeft)) {
    return [{ code: "lost-to-scale", value: 0, limit: 0 }];
  }
  atMost("not-fed", usedLength, plan.cutLength);
  if (plan.bars > 1) {
    // Cleaned bars lie one on the other when they first go under the press.
    const stacked = flats.find(({ step }) => step === "bar-cleaning")?.section.height ?? 0;
    atMost("too-tall-for-press", stacked, shop.press.opening);
  }
  const billet = pieces[pieces.length - 1];
  if (billet !== undefined) {
    const [height, thickness] =
      plan.layers === "flat" ? [billet.width, billet.height] : [billet.height, billet.width];
    const thickest = Math.max(...bodies.stations.map((s) => s.thickness ?? s.area / s.height));
    if (!(thickness >= thickest * (1 - ROUNDING)))
      found.push({ code: "too-thin", value: thickness, limit: thickest });
    else atMost("out-of-reach", thinningIntoHeight(bodies, height, thickness), shop.limits.reach.fullers);
  }
  atMost("longer-than-forge", Math.max(...pieces.map(({ length }) => length)), shop.press.forgeLength);
  const inHand = piecesInHand(shop, plan);
  if (inHand < plan.bars) found.push({ code: "bar-too-short", value: plan.bars, limit: inHand });
  return found;
}

const hasNothingLeft = ({ width, height, length }: FlatPiece): boolean =>
  !(width > 0 && height > 0 && length > 0);

/** How many pieces of the plan's length come out of the bars in hand, bar by bar. */
function piecesInHand({ rack, kerf }: ShopSpec, { bar, cutLength }: SimulatedPlan): number {
  const lengths = groupRack(rack).find((group) => group.bar === bar)?.lengths ?? [bar];
  return lengths.reduce((pieces, { length: whole = Number.POSITIVE_INFINITY, count = 1 }) => {
    // The last piece needs no cut behind it.
    const each = Math.floor(((whole + kerf) / (cutLength + kerf)) * (1 + ROUNDING));
    return pieces + count * each;
  }, 0);
}

/** Greatest share of its thinning that a section has to give to height, over all stations. */
function thinningIntoHeight({ stations }: LedgerBodies, height: number, thickness: number): number {
  return stations.reduce((most, station) => {
    if (!(station.area > 0 && station.height > height)) return most;
    const thinned = (thickness * station.height) / station.area;
    return Math.max(
      most,
      thinned > 1 ? Math.log(station.height / height) / Math.log(thinned) : Number.POSITIVE_INFINITY,
    );
  }, 0);
}
