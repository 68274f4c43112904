import { type Finding, length, mass } from "../../errors/issue.js";
import { findingLimit } from "../../limits/finding-limits.js";
import { DEFAULT_LOSSES, LOSS_DEFAULTS } from "../defaults.js";
import type { MixedStackSpec } from "../mixed/spec.js";
import type { LossSpec } from "../shop.js";
import type { GateRoute, GateStage } from "./stage-need.js";
import { STAGE_WORDS } from "./stage-words.js";
import type { WeighIn } from "./weigh-in.js";

/** What to do where the steel does not reach, by stage. */
const REMEDIES: Readonly<Record<GateStage, string>> = {
  cut: "Cut the bars longer, or take another plan, before a heat is spent.",
  billet: "Add a bar or start again now, or agree to one of the smaller knives, before it is drawn out.",
  forged: "Grind closer than the allowances, or make one of the smaller knives.",
  ready: "Compare thickness and outline with the drawing, and make what is there.",
  finished: "It is smaller than drawn: compare thickness and outline with the drawing.",
};
/** At the saw, of a stack of two or more steels: longer bars of one steel alone would be of no use. */
const STACK_REMEDY = "Cut all bars of the stack longer before a heat is spent.";

/**
 * What is to be said of steel that does not reach, or only just: stop up to the billet, where starting again costs
 * little, a warning later. Nothing where it is enough at high losses too.
 *
 * @param stack - Of a blade of two or more steels: what its welds lose may be its own.
 *
 * @example
 * const none = { plus: 0, minus: 0 };
 * const band = { sizes: none, density: none };
 * const short = weighIn("billet", 680, { low: 690, value: 702, high: 730 }, 1.1, band);
 * steelFindings(short, DEFAULT_SHOP.losses)[0]?.severity; // "stop"
 */
export function steelFindings(found: WeighIn, losses: LossSpec, stack?: MixedStackSpec): Finding[] {
  const { stage, need, verdict, spare, leastSpare } = found;
  if (verdict === "enough") return [];
  const early = stage === "cut" || stage === "billet";
  const remedy = stage === "cut" && stack !== undefined ? STACK_REMEDY : REMEDIES[stage];
  const basis =
    stage === "finished"
      ? "the drawing, and the knife's own band"
      : lossBasis(losses) + (stage === "cut" ? ownLosses(stack) : "");
  const values = {
    have: mass(found.mass),
    least: mass(found.least),
    stage: STAGE_WORDS[stage],
    usual: mass(need.value),
    high: mass(need.high),
    by: mass(verdict === "short" ? -spare : verdict === "not-sure" ? -leastSpare : need.high - found.least),
  };
  // Where no losses are left, as of a finished blade, there are no high ones either.
  const needed =
    need.high - need.value < SAME_MASS
      ? "{usual} is needed"
      : "{usual} is needed at the usual losses, {high} at high ones";
  if (verdict === "short")
    return [
      {
        code: "steel-short",
        severity: early ? "stop" : "warn",
        path: "",
        text: `${stage === "finished" ? "{have} of steel is {by} lighter than the {usual} of the drawing." : `{have} of steel, and ${needed} ({stage}): {by} short.`} ${remedy}`,
        values,
        basis,
      },
    ];
  if (verdict === "not-sure")
    return [
      {
        code: "steel-not-sure",
        severity: "warn",
        path: "",
        text: `Enough only if at least {usual} of it is steel: the mass rose, and if that is scale, {least} is left, {by} short; ${needed} ({stage}). Brush off scale and flux and weigh again before going on.`,
        values,
        basis: `${basis}; ${RISE_BASIS}`,
      },
    ];
  return [
    {
      code: "steel-only-just",
      severity: early ? "warn" : "note",
      path: "",
      text: "{have} of steel is enough at the usual losses; at high ones {high} is needed, {by} more ({stage}). Save heats and scale: short soaks, no more heats than planned.",
      values: { ...values, have: values.least },
      basis,
    },
  ];
}

/** Masses nearer than this are the same, g. */
const SAME_MASS = 1e-6;
const RISE_BASIS = "scale as wüstite, by its stoichiometry";

/** What a stack says of its own welds, in place of the shop. */
function ownLosses(stack: MixedStackSpec | undefined): string {
  if (stack?.yields !== undefined) return ", yields of the welds as the knife file has them";
  return stack?.cleaning === undefined ? "" : ", cleaning of the joints as the knife file has it";
}

/** Where the losses still to come are from. */
function lossBasis(losses: LossSpec): string {
  const keys = Object.keys(LOSS_DEFAULTS) as (keyof typeof LOSS_DEFAULTS)[];
  const own = keys.some((key) => {
    const [ours, theirs] = [DEFAULT_LOSSES[key], losses[key]];
    return ours.value !== theirs.value || ours.high !== theirs.high || ours.low !== theirs.low;
  });
  return own
    ? "the steel ledger with the shop's own losses"
    : "the steel ledger with default losses (common practice, no source)";
}

/** Most steel that the weld of a handling bar spoils, mm of billet. */
const HANDLING_WELD_MOST = 12;

/**
 * What is to be said of a handling bar that may be weighed along: no tare given while a stack is held by one, and a crop
 * that leaves its weld in the blade.
 *
 * @param tareGiven - Whether the bar's mass was told, even as nothing.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const stack = { bars: 5, width: 40, thickness: 6 };
 * const route = { losses, limits, forging: knife.forging, stack };
 * handlingBarFindings("billet", route, false).map(({ code }) => code); // ["tare-missing"]
 */
export function handlingBarFindings(stage: GateStage, route: GateRoute, tareGiven: boolean): Finding[] {
  if (stage !== "billet" && stage !== "forged") return [];
  const { stack, mixed, losses, limits } = route;
  const least = findingLimit("handlingWeld", limits.findings);
  const welded = mixed !== undefined || (stack !== undefined && stack.bars > 1);
  // A yield holds the ends, however much is cut off them.
  const byYield = mixed?.stack.yields !== undefined;
  const findings: Finding[] = [];
  if (!tareGiven)
    findings.push({
      code: "tare-missing",
      severity: welded ? "warn" : "note",
      path: "",
      text: welded
        ? "A stack is held by a welded-on bar, and no tare is given: its mass would count as steel. Weigh that bar before it is welded on and give it with --tare, or --tare 0g where it is cut off."
        : "No tare is given. If a bar for holding is welded on, give its mass with --tare; --tare 0g says that there is none.",
      basis: "a handling bar of 200 g is an error of 200 g",
    });
  if (stage === "billet" && welded && !byYield && losses.cropPerEnd.value < least.value)
    findings.push({
      code: "handling-weld-left-in",
      severity: losses.cropPerEnd.value === 0 ? "warn" : "note",
      path: "",
      text: "{crop} is cropped off each end, and the weld of a handling bar spoils {least} to {most}. Cut more off at the end where the bar was, and weigh after that.",
      values: {
        crop: length(losses.cropPerEnd.value),
        least: length(least.value),
        most: length(Math.max(least.value, HANDLING_WELD_MOST)),
      },
      basis: least.basis,
    });
  return findings;
}
