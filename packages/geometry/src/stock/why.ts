import { count, mass, type QuantityValue, share } from "../errors/issue.js";
import {
  decidingNumber,
  EFFORT_TIERS,
  type EffortTier,
  effortTier,
  hasLess,
  plainestNarrowed,
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
  narrowing: { less: "is narrowed less on edge", least: "is narrowed least on edge" },
};

/** Among which plans the first one wastes the least steel. */
const FIRST_OF: Readonly<Record<EffortTier, string>> = {
  plain: "the plans that need no fullers",
  narrowed: "the plans that are drawn narrower on edge",
  "welded-instead": "the plans that need no fullers",
  "narrowed-and-welded": "the plans that need no fullers",
  fullers: "the plans, all of which need fullers,",
};

/** Why a plan stands behind those of an earlier tier. */
const BEHIND: Readonly<Record<EffortTier, { readonly code: string; readonly text: string }>> = {
  // The first tier stands behind nothing.
  plain: { code: "behind", text: "" },
  narrowed: {
    code: "needs-narrowing",
    text: "{narrowing} of its height has to be driven in on edge, so it stands behind plans that need not be and that weld no more bars or waste less steel.",
  },
  "welded-instead": {
    code: "welded-instead",
    text: "Stands behind a plan that has to be drawn narrower on edge, but that welds fewer bars and wastes no more steel.",
  },
  "narrowed-and-welded": {
    code: "narrowed-and-welded",
    text: "{narrowing} of its height has to be driven in on edge, and it welds more bars than another of which the same is true.",
  },
  fullers: {
    code: "needs-fullers",
    text: "Stands behind every plan that needs no fullers: {reach} of the thinning has to go into height.",
  },
};

function shown(name: RankingNumber, value: number, currency: string | undefined): QuantityValue | string {
  if (name === "waste") return mass(value);
  if (name === "reach" || name === "narrowing") return share(value);
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
 * const plan = { waste: 600, cost: 9, joints: 2, heats: 12, reach: 0.4, narrowing: 0 };
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
  const narrowed = plainestNarrowed(ranked, limits);
  const tierOf = (other: RankedNumbers): EffortTier => effortTier(other, limits, narrowed);
  const tier = tierOf(plan);
  const before = ranked[index - 1];
  const next = ranked[index + 1];
  if (before === undefined) reasons.push(whyFirst(ranked, plan, tierOf));
  else {
    if (EFFORT_TIERS.indexOf(tier) > EFFORT_TIERS.indexOf(tierOf(before))) {
      const values = { reach: share(plan.reach), narrowing: share(plan.narrowing) };
      reasons.push({ ...BEHIND[tier], values });
    } else {
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

function whyFirst(
  ranked: readonly RankedNumbers[],
  plan: RankedNumbers,
  tierOf: (plan: RankedNumbers) => EffortTier,
): PlanReason {
  if (ranked.length === 1)
    return { code: "only-one", text: "No other plan is better than this one in anything." };
  const tier = tierOf(plan);
  const others = ranked.filter((other) => other !== plan).map(tierOf);
  if (others.includes(tier)) {
    // Where others are drawn narrower, some that need no fullers stand behind those.
    const all = tier !== "plain" || others.every((other) => other === "plain" || other === "fullers");
    return {
      code: "first",
      text: `Of ${all ? FIRST_OF[tier] : "the plans before those that are drawn narrower on edge"} it ${WORDS.waste.least} ({waste}).`,
      values: { waste: mass(plan.waste) },
    };
  }
  if (others.every((other) => other === "fullers"))
    return { code: "only-one-without-fullers", text: "The only plan that needs no fullers." };
  return tier === "narrowed"
    ? {
        code: "fewest-welds",
        text: "Every plan that need not be drawn narrower on edge welds more bars and wastes no less steel, or needs fullers.",
      }
    : {
        code: "least-care",
        text: "Every other plan has to be drawn narrower on edge, saves that by more welds, or needs fullers.",
      };
}
