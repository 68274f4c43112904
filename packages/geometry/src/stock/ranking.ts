import { classifyReach } from "./reach.js";
import type { FeasibleStack } from "./search.js";
import type { StockLimits } from "./shop.js";

/** The numbers by which stacks are compared, all the smaller the better, in the order in which they are asked. */
export const RANKING_NUMBERS = ["waste", "cost", "joints", "heats", "reach"] as const;
export type RankingNumber = (typeof RANKING_NUMBERS)[number];
export type RankedNumbers = Readonly<Record<RankingNumber, number>>;

/** Negative where `a` comes first; equal infinite costs are a tie. */
const compareNumbers = (a: number, b: number): number => (a === b ? 0 : a < b ? -1 : 1);

function compareInOrder(a: RankedNumbers, b: RankedNumbers): number {
  for (const name of RANKING_NUMBERS) {
    const order = compareNumbers(a[name], b[name]);
    if (order !== 0) return order;
  }
  return 0;
}

/** Whether `b` is better in nothing than `a`. */
export function isNoBetter(b: RankedNumbers, a: RankedNumbers): boolean {
  return RANKING_NUMBERS.every((name) => a[name] <= b[name]);
}

/** 0 where ordinary tools do, 1 where only fullers laid along the bar bring the section to the blade's height. */
export function effortTier(reach: number, limits: StockLimits["reach"]): number {
  const reachClass = classifyReach(reach, limits);
  return reachClass === "easy" || reachClass === "flat dies" ? 0 : 1;
}

/**
 * Drops every stack that is better in nothing than another (of equals the first stays) and ranks the rest: those
 * within reach of flat dies before those that want fullers; then by steel wasted, cost, joints, heats and reach.
 *
 * A bar without a price counts as the dearest: an unknown cost is never an advantage.
 */
export function rankStacks(stacks: readonly FeasibleStack[], limits: StockLimits["reach"]): FeasibleStack[] {
  const front: FeasibleStack[] = [];
  // In this order whatever makes a stack superfluous comes before it, so one pass against the front is enough.
  for (const stack of [...stacks].sort(compareInOrder))
    if (!front.some((kept) => isNoBetter(stack, kept))) front.push(stack);
  return front.sort(
    (a, b) => effortTier(a.reach, limits) - effortTier(b.reach, limits) || compareInOrder(a, b),
  );
}
