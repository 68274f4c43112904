import type { Knife } from "../../blade/knife.js";
import type { Finding } from "../../errors/issue.js";
import { findingLimit } from "../../limits/finding-limits.js";
import type { Layers } from "../billet.js";
import type { LedgerBodies } from "../blade-states.js";
import type { CutStack } from "../ledger.js";
import type { ShopSpec } from "../shop.js";
import { makeSteelChain, type SteelChain } from "../steel-chain.js";
import { dressedFromBars } from "./billet-forward.js";
import { type DrawnTang, drawnTang, sectionOf } from "./drawn-tang.js";
import { edgeSqueezeFindings } from "./edge-squeeze.js";
import type { Squeeze } from "./end-stop.js";
import { pointDrop } from "./flat-preform.js";
import { forgeLimits } from "./forge-limits.js";
import { forgedProfile } from "./forged-profile.js";
import { type HeatsLeft, heatsLeft } from "./heats-left.js";
import { type BilletMarks, billetMarks } from "./marks.js";
import { preCurve } from "./pre-curve.js";
import { makePreform, type PreformStation, preformPlaceOf } from "./preform.js";
import { type PressWork, pressWork } from "./press-defaults.js";
import { pressHeatFindings } from "./press-heat.js";
import { type PressPasses, type PressStop, pressPasses, pressStop } from "./press-steps.js";
import { planShoulder, type ShoulderPlan } from "./shoulder.js";
import { type ShoulderPressing, shoulderPressing } from "./shoulder-stops.js";
import { taperFindings } from "./taper-findings.js";
import { type WeldSqueezing, weldSqueeze } from "./weld-squeeze.js";

/** The stack that a card is for. */
export type CardStack = CutStack & {
  readonly layers: Layers;
  /** Length on the high side of all losses, of a bar that has been through the fire before; left out: the same, mm. */
  readonly highLength?: number;
};

/** Where to mark the billet, from its butt end, mm. */
export interface CardMarks {
  /** The mark: what the handle eats on the high side of every loss. */
  readonly at: number;
  readonly usual: BilletMarks;
  readonly high: BilletMarks;
}

/** A height of the distal taper to be pressed to, at a place. */
export interface TaperStop extends PressStop {
  /** mm ahead of the heel, with the bevels in. */
  readonly x: number;
  /** Distance along the preform from the shoulder before they are, mm. */
  readonly at: number;
}

/** The numbers for forging one plan, in the order of their use. mm, g, °C. */
export interface ForgeCard {
  readonly stack: CardStack;
  /** Steel at the last squeeze of a heat. */
  readonly temperature: number;
  /** Left out for a solid bar. */
  readonly weld?: WeldSqueezing;
  /** The dressed billet at usual losses, as it lies in the blade: squeezed as far as the stops in hand do. */
  readonly billet: { readonly height: number; readonly thickness: number; readonly length: number };
  readonly marks: CardMarks;
  readonly shoulder: ShoulderPlan;
  readonly tang: DrawnTang;
  /** From the billet's thickness to the handle's at the shoulder. */
  readonly handle: PressPasses;
  /** The same, shared out among the passes of the shoulder. */
  readonly shoulderPressing: readonly ShoulderPressing[];
  /** From the billet's thickness to the preform's at the heel. */
  readonly thickness: PressPasses;
  readonly spreadShare: number;
  /** Ahead of the shoulder; distances from there. */
  readonly preform: readonly PreformStation[];
  /** How far the spine side of the forged blade's front end lies below that of its heel; negative above. */
  readonly pointDrop: number;
  /** How far to bend the preform down at its point; left out where the shop has not measured a blade. */
  readonly preCurve?: number;
  readonly taper: readonly TaperStop[];
  readonly heats: { readonly usual: HeatsLeft; readonly high: HeatsLeft };
  readonly findings: readonly Finding[];
}

/**
 * Works out the forge card of a plan: marks, passes and stops, preform, shoulder, heats left.
 *
 * @param bodies - Of the same knife.
 * @param stack - Of a plan for it.
 *
 * @example
 * const shop = { ...DEFAULT_SHOP, rack: [{ name: "6 x 40", width: 40, thickness: 6 }] };
 * const [plan] = planStock(ledgerBodies(knife), shop, knife.forging).plans;
 * if (plan === undefined) throw new Error("no plan");
 * forgeCard(knife, ledgerBodies(knife), shop, plan).marks.at; // mm from the butt end
 */
export function forgeCard(knife: Knife, bodies: LedgerBodies, shop: ShopSpec, stack: CardStack): ForgeCard {
  const limits = forgeLimits(shop.limits.forge);
  const { press } = shop;
  const given = shop.limits.findings;
  const chainAt = (side: "value" | "high"): SteelChain =>
    makeSteelChain(bodies, shop.losses, shop.limits, knife.forging, side);
  const weld = stack.bars > 1 ? weldSqueeze(chainAt("value"), stack, press, given) : undefined;
  // Marks and sizes are those of the billet that the stops leave.
  const asSqueezed = (chain: SteelChain): SteelChain =>
    weld === undefined ? chain : { ...chain, weldReduction: weld.reduction };
  const [usual, high] = [asSqueezed(chainAt("value")), asSqueezed(chainAt("high"))];
  const profile = forgedProfile(knife);
  const work = pressWork(press, given);
  const made = dressedFromBars(usual, stack);
  const billet =
    stack.layers === "flat"
      ? { height: made.width, thickness: made.height, length: made.length }
      : { height: made.height, thickness: made.width, length: made.length };
  const { behind, ahead, shoulder } = profile;
  const plan = planShoulder(billet, sectionOf(behind), profile.steps, shop.fullers ?? [], limits);
  const down = { from: billet.thickness, across: billet.height };
  const thickness = pressPasses({ ...down, name: "blade", to: sectionOf(ahead).thickness }, press, work);
  const tang = drawnTang(knife, profile);
  const handle = pressHandle(thickness, { ...down, name: "handle", to: tang.front.thickness }, press, work);
  const preform = makePreform(
    profile.stations.filter(({ x }) => x >= shoulder),
    limits.bevelSpreadShare,
    shoulder,
  );
  const onHighSide: CutStack = { ...stack, cutLength: stack.highLength ?? stack.cutLength };
  const highMarks = billetMarks(high, profile, onHighSide);
  const end = profile.stations[profile.stations.length - 1]?.x ?? 0;
  const taper = taperPlaces(knife).map((x) => ({
    x,
    at: preformPlaceOf(preform, x),
    ...pressStop(knife.body("forged").slab.thicknessAt(x), work),
  }));
  return {
    stack,
    temperature: work.temperature,
    ...(weld === undefined ? {} : { weld }),
    billet,
    marks: { at: highMarks.tang, usual: billetMarks(usual, profile, stack), high: highMarks },
    shoulder: plan,
    tang,
    handle,
    shoulderPressing: shoulderPressing(plan.passes, handle.passes, billet.thickness),
    thickness,
    spreadShare: limits.bevelSpreadShare,
    preform,
    pointDrop: pointDrop(profile),
    ...(shop.preCurve === undefined ? {} : { preCurve: preCurve(shop.preCurve, end) }),
    taper,
    heats: {
      usual: heatsLeft(usual, stack, bodies.density),
      high: heatsLeft(high, onHighSide, bodies.density),
    },
    findings: once([
      ...pressHeatFindings(press, given),
      ...(weld?.passes.findings ?? []),
      ...plan.findings,
      ...handle.findings,
      ...thickness.findings,
      ...taperFindings(taper, work),
      ...onEdge(billet, preform, shop),
    ]),
  };
}

/** As the blade where it is as thick; what the load is has been said of the blade. */
function pressHandle(
  blade: PressPasses,
  squeeze: Squeeze,
  { die: _, ...press }: ShopSpec["press"],
  work: PressWork,
): PressPasses {
  return Math.abs(squeeze.to - blade.to) <= findingLimit("stopUnder", work.given).value
    ? { ...blade, findings: [] }
    : pressPasses(squeeze, press, work);
}

/** Every remark once, however many squeezes it is true of. */
function once(findings: readonly Finding[]): Finding[] {
  const said = new Set<string>();
  return findings.filter(({ code, text, values }) => {
    const key = JSON.stringify([code, text, values]);
    return !said.has(key) && said.add(key);
  });
}

/** Where the billet has to be driven back on edge by more than light blows do: it stands as tall as it is, as thin as it has got. */
function onEdge(billet: ForgeCard["billet"], preform: readonly PreformStation[], shop: ShopSpec): Finding[] {
  // Toward the point it is drawn narrow, not driven back: the first half is what stands on edge.
  const held = preform.slice(0, Math.ceil(preform.length / 2));
  const lowest = held.reduce<PreformStation | undefined>(
    (least, one) => (least === undefined || one.height < least.height ? one : least),
    undefined,
  );
  const free = findingLimit("freeNarrowing", shop.limits.findings).value;
  if (lowest === undefined || lowest.height >= billet.height * (1 - free)) return [];
  const piece = { width: billet.height, thickness: lowest.thickness };
  return edgeSqueezeFindings(piece, "press", shop.limits.maxSlenderness, shop.limits.findings);
}

/** Stops of the distal taper: no fewer and no more than these. */
const FEWEST = 3;
const MOST = 5;

/**
 * Where the distal taper is looked at: at the stations that the knife file gives, or in quarters where these are fewer
 * than three or more than five.
 *
 * @returns mm ahead of the heel, heel and tip among them.
 *
 * @example
 * taperPlaces(knife); // [0, 25, 50, 75, 100]
 */
export function taperPlaces(knife: Knife): readonly number[] {
  const { edgeLength } = knife.outline;
  const given = knife.laws.spine.points.map(({ at }) => at).filter((x) => x > 0 && x < edgeLength);
  const places = [0, ...new Set(given), edgeLength];
  if (places.length >= FEWEST && places.length <= MOST) return places;
  return [0, 0.25, 0.5, 0.75, 1].map((share) => share * edgeLength);
}
