import { classifyReach } from "./reach.js";
import type { FeasibleStack } from "./search.js";
import type { StockLimits } from "./shop.js";

/** The numbers by which stacks are compared, all the smaller the better, in the order in which they are asked. */
export const RANKING_NUMBERS = ["waste", "cost", "joints", "heats", "reach", "narrowing"] as const;
/** A number that plans are ranked by; less is better. */
export type RankingNumber = (typeof RANKING_NUMBERS)[number];
/** The numbers that a plan is ranked by. */
export type RankedNumbers = Readonly<Record<RankingNumber, number>>;
type ReachLimits = StockLimits["reach"];

/**
 * Whether `a` has less of a number than `b`; a reach that is easy anyway is not better for being easier still.
 *
 * @example
 * const plan = { waste: 600, cost: 9, joints: 2, heats: 12, reach: 0.4, narrowing: 0 };
 * hasLess("cost", plan, { ...plan, cost: 10 }, DEFAULT_SHOP.limits.reach) ? 1 : 0; // 1
 */
export function hasLess(
  name: RankingNumber,
  a: RankedNumbers,
  b: RankedNumbers,
  limits: ReachLimits,
): boolean {
  return name === "reach" ? a.reach < b.reach && b.reach > limits.easy : a[name] < b[name];
}

/**
 * Whether `b` is better in nothing than `a`.
 *
 * @example
 * const plan = { waste: 600, cost: 9, joints: 2, heats: 12, reach: 0.4, narrowing: 0 };
 * isNoBetter({ ...plan, cost: 10 }, plan, DEFAULT_SHOP.limits.reach) ? 1 : 0; // 1
 */
export function isNoBetter(b: RankedNumbers, a: RankedNumbers, limits: ReachLimits): boolean {
  return !RANKING_NUMBERS.some((name) => hasLess(name, b, a, limits));
}

/**
 * The first number in which two stacks differ is what sets their order.
 *
 * @example
 * const plan = { waste: 600, cost: 9, joints: 2, heats: 12, reach: 0.4, narrowing: 0 };
 * decidingNumber(plan, { ...plan, joints: 3 }); // "joints"
 */
export function decidingNumber(a: RankedNumbers, b: RankedNumbers): RankingNumber | undefined {
  return RANKING_NUMBERS.find((name) => a[name] !== b[name]);
}

/** How much care or labour a plan asks for beside others, least first; plans of one tier are ranked by their numbers. */
export const EFFORT_TIERS = [
  "plain",
  "narrowed",
  "welded-instead",
  "narrowed-and-welded",
  "fullers",
] as const;
/** The tier of a plan; plans of an earlier one go first. */
export type EffortTier = (typeof EFFORT_TIERS)[number];

const needsFullers = ({ reach }: RankedNumbers, limits: ReachLimits): boolean =>
  classifyReach(reach, limits) === "fullers" || classifyReach(reach, limits) === "refused";

/**
 * The plan without fullers that is drawn narrower on edge and welds the fewest bars; undefined where none has to be.
 *
 * @example
 * const plan = { waste: 100, cost: 9, joints: 0, heats: 9, reach: 0, narrowing: 0.2 };
 * plainestNarrowed([{ ...plan, joints: 1 }, plan], DEFAULT_SHOP.limits.reach)?.joints; // 0
 */
export function plainestNarrowed<Plan extends RankedNumbers>(
  plans: readonly Plan[],
  limits: ReachLimits,
): Plan | undefined {
  return plans
    .filter((plan) => plan.narrowing > 0 && !needsFullers(plan, limits))
    .reduce<Plan | undefined>((best, plan) => {
      const first = best === undefined ? -1 : plan.joints - best.joints || compareInOrder(plan, best);
      return first < 0 ? plan : best;
    }, undefined);
}

/**
 * `fullers`: only fullers laid along the bar bring the section to the blade's height. `narrowed`: it buckles on edge,
 * where it has to be drawn narrower. `welded-instead`: needs neither, but welds more bars than the plainest narrowed
 * one and wastes no less steel. All else is `plain`.
 *
 * @param narrowed - By {@link plainestNarrowed}.
 *
 * @example
 * const bar = { waste: 100, cost: 9, joints: 0, heats: 9, reach: 0, narrowing: 0.2 };
 * const stack = { waste: 480, cost: 20, joints: 4, heats: 12, reach: 0, narrowing: 0 };
 * effortTier(bar, DEFAULT_SHOP.limits.reach, bar); // "narrowed"
 * effortTier(stack, DEFAULT_SHOP.limits.reach, bar); // "welded-instead"
 */
export function effortTier(
  plan: RankedNumbers,
  limits: ReachLimits,
  narrowed: RankedNumbers | undefined,
): EffortTier {
  if (needsFullers(plan, limits)) return "fullers";
  const more = narrowed !== undefined && plan.joints > narrowed.joints && plan.waste >= narrowed.waste;
  if (plan.narrowing > 0) return more ? "narrowed-and-welded" : "narrowed";
  return more ? "welded-instead" : "plain";
}

function compareInOrder(a: RankedNumbers, b: RankedNumbers): number {
  const name = decidingNumber(a, b);
  return name === undefined ? 0 : a[name] < b[name] ? -1 : 1;
}

/**
 * Drops every stack that is better in nothing than another (of equals the first stays) and ranks the rest by
 * {@link effortTier}; then by steel wasted, cost, joints, heats, reach and narrowing.
 *
 * A bar without a price counts as the dearest: an unknown cost is never an advantage.
 *
 * @example
 * const rack = [{ name: "6 x 40", width: 40, thickness: 6 }];
 * const { feasible } = searchStacks(ledgerBodies(knife), { ...DEFAULT_SHOP, rack }, knife.forging);
 * rankStacks(feasible, DEFAULT_SHOP.limits.reach)[0]?.bars; // bars of the best stack
 */
export function rankStacks(stacks: readonly FeasibleStack[], limits: ReachLimits): FeasibleStack[] {
  const front: FeasibleStack[] = [];
  // In this order whatever makes a stack superfluous comes before it, so one pass against the front is enough.
  for (const stack of [...stacks].sort(compareInOrder))
    if (!front.some((kept) => isNoBetter(stack, kept, limits))) front.push(stack);
  const narrowed = plainestNarrowed(front, limits);
  const tierOf = (stack: FeasibleStack): number => EFFORT_TIERS.indexOf(effortTier(stack, limits, narrowed));
  return front.sort((a, b) => tierOf(a) - tierOf(b) || compareInOrder(a, b));
}
