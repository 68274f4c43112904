import { type Finding, mass, share } from "../../errors/issue.js";
import { scaleThatGains } from "./fire-scale.js";
import { type GateLimits, gateLimitBasis } from "./limits.js";
import { GATE_STAGES, type GateStage } from "./stage-need.js";
import { STAGE_WORDS } from "./stage-words.js";

/** Steel weighed at a stage, handling bar off, g. */
export interface StageMass {
  readonly stage: GateStage;
  readonly mass: number;
}

/** What is to be thought of a mass after those that were weighed before it. */
export interface RiseAnswer {
  /**
   * Steel that can be counted on, g: the mass itself, or the least that was weighed before where it rose a little.
   * Left out where it rose so much that none of the weighings can be trusted.
   */
  readonly usable?: number;
  /**
   * Steel that is left if every rise is the oxygen of scale that is still on, g: as much as `usable` where nothing rose. Left
   * out with it.
   */
  readonly least?: number;
  readonly findings: readonly Finding[];
}

/**
 * Steel only gets less on its way from the saw to the finished blade. A mass that rose is scale, flux, a handling bar that
 * was not taken off or a scale that was read wrongly: it is questioned and not used.
 *
 * @param before - Weighed at earlier stages, in any order.
 *
 * @example
 * const before = [{ stage: "billet", mass: 700 }] as const;
 * questionRises({ stage: "forged", mass: 640 }, before, gateLimits()).usable; // 640
 * questionRises({ stage: "forged", mass: 705 }, before, gateLimits()).usable; // 700
 * // 5 g of oxygen hold 17.5 g of iron
 * questionRises({ stage: "forged", mass: 705 }, before, gateLimits()).least; // 682.5
 */
export function questionRises(now: StageMass, before: readonly StageMass[], limits: GateLimits): RiseAnswer {
  const order = (one: StageMass): number => GATE_STAGES.indexOf(one.stage);
  const all = [...before].sort((a, b) => order(a) - order(b)).concat(now);
  const findings: Finding[] = [];
  let least: StageMass | undefined;
  let underScale = Number.POSITIVE_INFINITY;
  for (const one of all) {
    if (least !== undefined && one.mass > least.mass) {
      findings.push(riseFinding(least, one, limits));
      underScale = Math.min(underScale, one.mass - scaleThatGains(one.mass - least.mass));
    }
    if (least === undefined || one.mass < least.mass) least = one;
  }
  if (findings.some(({ severity }) => severity === "warn")) return { findings };
  const usable = least?.mass ?? now.mass;
  // Later weighings may be less than what is under the scale of an earlier one.
  return { usable, least: Math.max(0, Math.min(usable, underScale)), findings };
}

function riseFinding(least: StageMass, now: StageMass, limits: GateLimits): Finding {
  const rise = now.mass / least.mass - 1;
  // A rise of exactly the limit carries the last digits of a double.
  const great = rise > limits.massRise + 1e-9;
  const scale = scaleThatGains(now.mass - least.mass);
  const known = now.stage === "billet" || now.stage === "forged" ? ", or the handling bar still on" : "";
  return {
    code: "mass-rose",
    severity: great ? "warn" : "note",
    path: "",
    text: great
      ? `The mass rose by {by} ({share}) from {was} ({before}) to {is} ({now}): that is no steel, but scale or flux${known}, or one weighing misread. Neither is used. Brush clean, check the tare and weigh again.`
      : `The mass rose by {by} ({share}) from {was} ({before}) to {is} ({now}): that is no steel. As the oxygen of fire scale it would be {scale} of it, with {under} of steel beneath; the lower mass is the most that it can be. Brush off scale and flux and weigh again.`,
    values: {
      by: mass(now.mass - least.mass),
      ...(great ? {} : { scale: mass(scale), under: mass(now.mass - scale) }),
      share: share(rise),
      was: mass(least.mass),
      is: mass(now.mass),
      before: STAGE_WORDS[least.stage],
      now: STAGE_WORDS[now.stage],
    },
    basis: `steel does not grow; more than ${Math.round(limits.massRise * 1000) / 10} % is no slip of the scale (${gateLimitBasis("massRise", limits)})`,
  };
}
