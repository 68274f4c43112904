import { nearestFeasible } from "../numeric/nearest-feasible.js";
import { askRows, boxRows, clamped, halfSquares, type LocalProblem, missAt, stepped } from "./misses.js";

const MOST_STEPS = 80;
const FIRST_REACH = 1;
const LEAST_REACH = 1e-9;
/** A step shorter than this share of a range has arrived. */
const ARRIVED = 1e-10;
/** Share of the promised gain that a step has to keep. */
const KEPT = 0.1;
const KEPT_WELL = 0.75;
/** How much more than its multiplier a miss has to weigh, that no change is bought with one. */
const OVERWEIGHT = 2;
/** Asks are given this much way where slopes alone find none, as a share of the worst miss. */
const RELAXED = 1.0001;

/**
 * From a point that meets the asks, or all but, to the one that meets them with the least sum of squares of the changes: one
 * quadratic program after the other, with a second look at bent asks where the first step did not keep what it promised.
 *
 * @returns a point of the box; where it misses an ask, it does so by no more than rounding or than `from` did.
 */
export function leastChange(problem: LocalProblem, from: readonly number[]): readonly number[] {
  let point: readonly number[] = clamped(problem.box, from);
  let weight = 1;
  let reach = FIRST_REACH;
  const meritOf = (at: readonly number[]): number => halfSquares(at) + weight * missAt(problem, at);
  for (let steps = 0; steps < MOST_STEPS && reach > LEAST_REACH; steps++) {
    const first = nearest(problem, point, reach);
    if (first === undefined) break;
    weight = Math.max(weight, OVERWEIGHT * first.push);
    const promised = meritOf(point) - halfSquares(stepped(point, first.step)) - weight * first.slack;
    if (longest(first.step) < ARRIVED || promised <= 0) break;
    const keptBy = (step: readonly number[]): number =>
      (meritOf(point) - meritOf(clamped(problem.box, stepped(point, step)))) / promised;
    let { step } = first;
    let kept = keptBy(step);
    if (kept < KEPT_WELL) {
      const second = nearest(problem, point, reach, step);
      if (second !== undefined && keptBy(second.step) > kept) {
        step = second.step;
        kept = keptBy(step);
      }
    }
    if (kept > KEPT) point = clamped(problem.box, stepped(point, step));
    if (kept < KEPT) reach = Math.min(reach, longest(step)) / 4;
    else if (kept > KEPT_WELL) reach = Math.min(FIRST_REACH, 2 * reach);
  }
  return point;
}

const longest = (step: readonly number[]): number => Math.max(...step.map(Math.abs));

interface Nearest {
  readonly step: readonly number[];
  /** Sum of the multipliers of the asks. */
  readonly push: number;
  /** Common miss that had to be allowed. */
  readonly slack: number;
}

/**
 * The step to the least change among those that meet the asks as far as their slopes go.
 *
 * @param bentAt - a step at whose end the asks are taken as they are there, with the slopes of the point.
 */
function nearest(
  problem: LocalProblem,
  point: readonly number[],
  reach: number,
  bentAt?: readonly number[],
): Nearest | undefined {
  const asks = askRows(problem, point);
  const limits = bentAt === undefined ? asks.limits : bentLimits(problem, asks.rows, point, bentAt);
  const box = boxRows(problem, point, reach);
  const target = point.map((value) => -value);
  const missed = Math.max(0, ...asks.limits);
  for (const slack of [0, missed * RELAXED]) {
    const found = nearestFeasible(
      target,
      [...asks.rows, ...box.rows],
      [...limits.map((limit) => limit - slack), ...box.limits],
    );
    if (found === undefined) continue;
    const push = found.multipliers.slice(0, limits.length).reduce((sum, multiplier) => sum + multiplier, 0);
    return { step: found.point, push, slack };
  }
  return undefined;
}

/** Limits of the rows so that they are right at the end of a step instead of at its beginning. */
function bentLimits(
  problem: LocalProblem,
  rows: readonly (readonly number[])[],
  point: readonly number[],
  step: readonly number[],
): number[] {
  const end = askRows(problem, stepped(point, step)).limits;
  return end.map((limit, i) => limit + step.reduce((sum, by, k) => sum + by * (rows[i]?.[k] ?? 0), 0));
}
