import { measureSurface } from "../../blade/body-surface.js";
import type { Knife } from "../../blade/knife.js";
import { measureBody } from "../../blade/measure-body.js";
import { VOLUME } from "../../blade/moments.js";
import { profileStrips } from "../../blade/profile-strips.js";
import type { SizeState } from "../../blade/size-states.js";
import type { ForgingSpec } from "../../blade/spec.js";
import type { LedgerBodies } from "../blade-states.js";
import type { LossSide } from "../loss-side.js";
import { makeMixedChain, traceMixed } from "../mixed/mixed-chain.js";
import type { MixedStackSpec } from "../mixed/spec.js";
import { stackDensity } from "../mixed/stack-steels.js";
import type { LossSpec, StockLimits } from "../shop.js";
import { makeSteelChain, traceStack } from "../steel-chain.js";

/**
 * Where the steel is weighed, in the order of the work.
 *
 * - `cut` the bars as they come from the saw
 * - `billet` welded, bead and seam ground off, ends cropped; a solid bar as cut; of two or more steels the last bar with
 *   its grooves ground
 * - `forged` shaped, brushed clean, before the outline is trimmed
 * - `ready` ground and drilled, before hardening
 * - `finished` blade and tang sharpened, nothing put on the tang
 */
export const GATE_STAGES = ["cut", "billet", "forged", "ready", "finished"] as const;
/** Name of a weighing gate. */
export type GateStage = (typeof GATE_STAGES)[number];

/** The bars of a plan: what skin losses and welding depend on. mm. */
export interface GateStack {
  readonly bars: number;
  readonly width: number;
  readonly thickness: number;
}

/** The stack of a blade of two or more steels, and the saw that cuts its billets for the next weld. */
export interface GateMixed {
  /** Checked by `checkMixedStack`. */
  readonly stack: MixedStackSpec;
  /** Width of the saw's cut, mm. */
  readonly kerf: number;
}

/** What a knife is to be made by: losses and heats, and the bars where they are known. */
export interface GateRoute {
  readonly losses: LossSpec;
  readonly limits: StockLimits;
  readonly forging: ForgingSpec;
  /** Left out, and no `mixed`: one solid bar of no known section. */
  readonly stack?: GateStack;
  /** Of a blade of two or more steels: in place of `stack`. */
  readonly mixed?: GateMixed;
}

/** Mass that has to be there at a stage so that the blade can be finished, g: at low, usual and high losses still to come. */
export interface StageNeed {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

/**
 * Volume that has to be there at a stage, mm³; undefined where it depends on a section that is not known, or where no
 * amount of steel would do.
 *
 * @param side - Of the bands of all losses still to come.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const bodies = ledgerBodies(knife);
 * neededVolume(bodies, { losses, limits, forging: knife.forging }, "finished", "value") === bodies.finished; // true
 */
export function neededVolume(
  bodies: LedgerBodies,
  route: GateRoute,
  stage: GateStage,
  side: LossSide,
): number | undefined {
  const { losses, limits, forging, stack } = route;
  if (stage === "finished") return bodies.finished;
  const chain = makeSteelChain(bodies, losses, limits, forging, side);
  if (stage === "ready") return chain.ready;
  if (stage === "forged") return chain.forged;
  if (route.mixed !== undefined) return mixedVolume(bodies, route, route.mixed, stage, side);
  if (stack === undefined && losses.scaleModel === "skin") return undefined;
  // A solid bar loses the same share whatever its section.
  const { bars, width, thickness } = stack ?? { bars: 1, width: 1, thickness: 1 };
  const trace = traceStack(chain, bars, width, thickness);
  if (!Number.isFinite(trace.length)) return undefined;
  return stage === "billet" ? trace.dressed : bars * width * thickness * trace.length;
}

/** Of a stack of two or more steels: its bars, or its last bar with the grooves ground. */
function mixedVolume(
  bodies: LedgerBodies,
  { losses, limits, forging }: GateRoute,
  { stack, kerf }: GateMixed,
  stage: "cut" | "billet",
  side: LossSide,
): number | undefined {
  const trace = traceMixed(makeMixedChain(bodies, { losses, limits, kerf }, forging, stack, side));
  const volume = stage === "billet" ? trace.dressed : (trace.stages[0]?.in ?? Number.NaN);
  return Number.isFinite(volume) ? volume : undefined;
}

/**
 * Density that the piece is weighed with at a stage, g/mm³: bars of two or more steels each with their own, from the
 * welded billet on that of the knife.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const bodies = ledgerBodies(knife);
 * stageDensity(bodies, { losses, limits, forging: knife.forging }, "cut") === bodies.density; // true
 */
export function stageDensity(bodies: LedgerBodies, { mixed }: GateRoute, stage: GateStage): number {
  return mixed !== undefined && stage === "cut" ? stackDensity(mixed.stack) : bodies.density;
}

/**
 * Mass that has to be there at a stage, g, at low, usual and high losses still to come; undefined as in
 * {@link neededVolume}.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const route = { losses, limits, forging: knife.forging };
 * const { low = 0, high = 0 } = stageNeed(ledgerBodies(knife), route, "billet") ?? {};
 * low < high; // true
 */
export function stageNeed(bodies: LedgerBodies, route: GateRoute, stage: GateStage): StageNeed | undefined {
  const [low, value, high] = (["low", "value", "high"] as const).map((side) => {
    const volume = neededVolume(bodies, route, stage, side);
    return volume === undefined ? undefined : volume * stageDensity(bodies, route, stage);
  });
  return low === undefined || value === undefined || high === undefined ? undefined : { low, value, high };
}

/**
 * Steel at a stage for each gram of the finished blade, usual losses: what fire and saw take of it on the way. What is
 * ground off comes on top and does not grow with it. At least 1; 1 where it cannot be told.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const route = { losses, limits, forging: { heats: 1, weldingHeats: 0 } };
 * stageGrowth(ledgerBodies(knife), route, "ready"); // 1.00503, for 0.5 % is lost in heat treatment
 */
export function stageGrowth(bodies: LedgerBodies, route: GateRoute, stage: GateStage): number {
  const more = { ...bodies, finished: 2 * bodies.finished };
  const [one, two] = [bodies, more].map((each) => neededVolume(each, route, stage, "value"));
  // Every loss is a share, a skin or a slice: the volume is linear in the finished one.
  if (one === undefined || two === undefined) return 1;
  return (((two - one) / bodies.finished) * stageDensity(bodies, route, stage)) / bodies.density;
}

/** Relative error at which states are weighed, as for the ledger. */
const STATE_AIM = 1e-9;

/**
 * As much of the ledger's bodies as a stage's mass depends on, in a fraction of the time: what is ground between two
 * states is one difference, put into one row.
 *
 * @example
 * const quick = gateBodies(knife, "forged", "fraction");
 * const { losses, limits } = DEFAULT_SHOP;
 * const route = { losses, limits, forging: knife.forging };
 * const difference = (neededVolume(quick, route, "forged", "value") ?? 0) -
 *   (neededVolume(ledgerBodies(knife), route, "forged", "value") ?? 0);
 * Math.abs(difference) < 1e-3; // true
 */
export function gateBodies(knife: Knife, stage: GateStage, scaleModel: LossSpec["scaleModel"]): LedgerBodies {
  const volume = (state: SizeState): number =>
    measureBody(knife.body(state), STATE_AIM).value[VOLUME] as number;
  const nothing = {
    density: knife.steelDensity,
    readySurface: 0,
    sharpening: 0,
    finishGrinding: 0,
    drilling: 0,
    bevelGrinding: 0,
    tangGrinding: 0,
    faceGrinding: 0,
    profileTrimming: 0,
    forgedSurface: 0,
    stations: [],
  };
  if (stage === "finished") return { ...nothing, finished: volume("finished") };
  const skin = scaleModel === "skin";
  const ready = volume("ready");
  const readySurface = skin ? measureSurface(knife.body("ready")) : 0;
  if (stage === "ready") return { ...nothing, finished: ready, readySurface };
  const forged = knife.body("forged");
  const strips = profileStrips(forged, knife.outline, knife.allowances);
  return {
    ...nothing,
    finished: ready,
    readySurface,
    faceGrinding: volume("forged") - ready,
    profileTrimming: strips.value[VOLUME] as number,
    forgedSurface: skin && stage !== "forged" ? measureSurface(forged) + strips.surface : 0,
  };
}
