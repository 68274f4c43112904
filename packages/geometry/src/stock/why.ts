import { count, mass, type QuantityValue, share } from "../errors/issue.js";
import {
  decidingNumber,
  effortTier,
  hasLess,
  RANKING_NUMBERS,
  type RankedNumbers,
  type RankingNumber,
} from "./ranking.js";
import type { StockLimits } from "./shop.js";

/** One reason for a plan's place: a sentence with `{name}` where a number from `values` belongs. */
export interface PlanReason {
  readonly code: string;
  readonly text: string;
  readonly values?: Readonly<Record<string, QuantityValue | string>>;
}

/** How each number is named and shown in a comparison. */
const WORDS: Readonly<Record<RankingNumber, { readonly less: string; readonly least: string }>> = {
  waste: { less: "wastes less steel", least: "wastes the least steel" },
  cost: { less: "costs less", least: "costs least" },
  joints: { less: "has fewer joints", least: "has the fewest joints" },
  heats: { less: "takes fewer heats", least: "takes the fewest heats" },
  reach: { less: "asks for less spreading", least: "asks for the least spreading" },
};

function shown(name: RankingNumber, value: number, currency: string | undefined): QuantityValue | string {
  if (name === "waste") return mass(value);
  if (name === "reach") return share(value);
  if (name !== "cost") return count(value);
  if (!Number.isFinite(value)) return "unknown";
  return `${value.toFixed(2)}${currency === undefined ? "" : ` ${currency}`}`;
}

function comparison(
  code: string,
  before: string,
  names: readonly RankingNumber[],
  mine: RankedNumbers,
  other: RankedNumbers,
  currency: string | undefined,
): PlanReason {
  const values: Record<string, QuantityValue | string> = {};
  const parts = names.map((name) => {
    values[`${name}Here`] = shown(name, mine[name], currency);
    values[`${name}There`] = shown(name, other[name], currency);
    return `${WORDS[name].less} ({${name}Here} against {${name}There})`;
  });
  return { code, text: `${before} ${parts.join(", ")}.`, values };
}

/**
 * Why the plan at `index` stands where it stands, and what the next one is better in.
 *
 * @param ranked - The front in its order.
 *
 * @example
 * const plan = { waste: 600, cost: 9, joints: 2, heats: 12, reach: 0.4 };
 * explainRank([plan, { ...plan, waste: 700 }], 0, DEFAULT_SHOP.limits.reach, "EUR").length; // sentences that say why it stands there
 */
export function explainRank(
  ranked: readonly RankedNumbers[],
  index: number,
  limits: StockLimits["reach"],
  currency: string | undefined,
): PlanReason[] {
  const plan = ranked[index];
  if (plan === undefined) return [];
  const reasons: PlanReason[] = [];
  const gainsOf = (a: RankedNumbers, b: RankedNumbers): RankingNumber[] =>
    RANKING_NUMBERS.filter((name) => hasLess(name, a, b, limits));
  const tier = effortTier(plan.reach, limits);
  const before = ranked[index - 1];
  const next = ranked[index + 1];
  if (before === undefined) {
    const sameTier = ranked.filter((other) => effortTier(other.reach, limits) === tier).length;
    const which = tier === 0 ? "the plans that need no fullers" : "the plans, all of which need fullers,";
    reasons.push(
      ranked.length === 1
        ? { code: "only-one", text: "No other plan is better than this one in anything." }
        : sameTier === 1
          ? { code: "only-one-without-fullers", text: "The only plan that needs no fullers." }
          : {
              code: "first",
              text: `Of ${which} it ${WORDS.waste.least} ({waste}).`,
              values: { waste: mass(plan.waste) },
            },
    );
  } else {
    if (tier > effortTier(before.reach, limits))
      reasons.push({
        code: "needs-fullers",
        text: "Stands behind every plan that needs no fullers: {reach} of the thinning has to go into height.",
        values: { reach: share(plan.reach) },
      });
    else {
      const by = decidingNumber(before, plan);
      if (by !== undefined)
        reasons.push(
          comparison("behind", "Stands behind the plan before it, which", [by], before, plan, currency),
        );
    }
    const gains = gainsOf(plan, before);
    if (gains.length > 0)
      reasons.push(
        comparison("better-than-before", "Against the plan before it, it", gains, plan, before, currency),
      );
  }
  if (next !== undefined) {
    const gains = gainsOf(next, plan);
    if (gains.length > 0)
      reasons.push(comparison("next-is-better-in", "The next plan", gains, next, plan, currency));
  }
  return reasons;
}
