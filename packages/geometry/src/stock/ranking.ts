import { classifyReach } from "./reach.js";
import type { FeasibleStack } from "./search.js";
import type { StockLimits } from "./shop.js";

/** The numbers by which stacks are compared, all the smaller the better, in the order in which they are asked. */
export const RANKING_NUMBERS = ["waste", "cost", "joints", "heats", "reach"] as const;
/** A number that plans are ranked by; less is better. */
export type RankingNumber = (typeof RANKING_NUMBERS)[number];
/** The numbers that a plan is ranked by. */
export type RankedNumbers = Readonly<Record<RankingNumber, number>>;
type ReachLimits = StockLimits["reach"];

/**
 * Whether `a` has less of a number than `b`; a reach that is easy anyway is not better for being easier still.
 *
 * @example
 * const plan = { waste: 600, cost: 9, joints: 2, heats: 12, reach: 0.4 };
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
 * const plan = { waste: 600, cost: 9, joints: 2, heats: 12, reach: 0.4 };
 * isNoBetter({ ...plan, cost: 10 }, plan, DEFAULT_SHOP.limits.reach) ? 1 : 0; // 1
 */
export function isNoBetter(b: RankedNumbers, a: RankedNumbers, limits: ReachLimits): boolean {
  return !RANKING_NUMBERS.some((name) => hasLess(name, b, a, limits));
}

/**
 * The first number in which two stacks differ is what sets their order.
 *
 * @example
 * const plan = { waste: 600, cost: 9, joints: 2, heats: 12, reach: 0.4 };
 * decidingNumber(plan, { ...plan, joints: 3 }); // "joints"
 */
export function decidingNumber(a: RankedNumbers, b: RankedNumbers): RankingNumber | undefined {
  return RANKING_NUMBERS.find((name) => a[name] !== b[name]);
}

/**
 * 0 where ordinary tools do, 1 where only fullers laid along the bar bring the section to the blade's height.
 *
 * @example
 * effortTier(0.7, DEFAULT_SHOP.limits.reach); // 1, for it needs fullers
 */
export function effortTier(reach: number, limits: ReachLimits): number {
  const reachClass = classifyReach(reach, limits);
  return reachClass === "easy" || reachClass === "flat dies" ? 0 : 1;
}

function compareInOrder(a: RankedNumbers, b: RankedNumbers): number {
  const name = decidingNumber(a, b);
  return name === undefined ? 0 : a[name] < b[name] ? -1 : 1;
}

/**
 * Drops every stack that is better in nothing than another (of equals the first stays) and ranks the rest: those
 * within reach of flat dies before those that want fullers; then by steel wasted, cost, joints, heats and reach.
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
  return front.sort(
    (a, b) => effortTier(a.reach, limits) - effortTier(b.reach, limits) || compareInOrder(a, b),
  );
}
