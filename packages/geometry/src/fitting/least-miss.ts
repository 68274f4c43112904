import { nearestFeasible } from "../numeric/nearest-feasible.js";
import { askRows, boxRows, clamped, HARD, type LocalProblem, missAt, stepped } from "./misses.js";

/** How much a common miss weighs against half the square of a step: a step is never saved for it. */
const MISS_WEIGHT = 1e5;
const MOST_STEPS = 60;
/** Steps along each axis, as shares of a range. */
const FIRST_REACH = 0.5;
const LEAST_REACH = 1e-7;
/** A miss that a step would make smaller by less than this share is as small as it gets. */
const NO_BETTER = 1e-9;
/** Digits that a miss which cannot be less is given, so that it can be kept. */
const ROUNDING = 1e-10;
/** Share of the promised gain that a step has to keep. */
const KEPT = 0.1;
/** From this share on the next step may go twice as far. */
const KEPT_WELL = 0.75;

/**
 * From a point down to where the worst miss of all asks is least, or to where none is missed: one linear program after the
 * other, each no farther than the model has proved right.
 *
 * @returns a point of the box.
 */
export function leastMiss(problem: LocalProblem, from: readonly number[]): readonly number[] {
  let point: readonly number[] = clamped(problem.box, from);
  let miss = missAt(problem, point);
  let reach = FIRST_REACH;
  for (let steps = 0; steps < MOST_STEPS && miss > 0 && reach > LEAST_REACH; steps++) {
    const found = linearStep(problem, point, reach);
    if (found === undefined || miss - found.miss < NO_BETTER * Math.max(1, miss)) break;
    const next = clamped(problem.box, stepped(point, found.step));
    const after = missAt(problem, next);
    const kept = (miss - after) / (miss - found.miss);
    if (kept > KEPT) [point, miss] = [next, after];
    if (kept < KEPT) reach = Math.min(reach, longest(found.step)) / 4;
    else if (kept > KEPT_WELL) reach *= 2;
  }
  return point;
}

const longest = (step: readonly number[]): number => Math.max(...step.map(Math.abs));

interface LinearStep {
  readonly step: readonly number[];
  /** What is missed after it if slopes stay as they are. */
  readonly miss: number;
}

/** What has to hold holds, and the others share the least miss; where that cannot be, what has to hold is missed by as little. */
function linearStep(problem: LocalProblem, point: readonly number[], reach: number): LinearStep | undefined {
  const { rows, limits, isHard } = askRows(problem, point);
  const box = boxRows(problem, point, reach);
  const noMiss = [...point.map(() => 0), 1];
  const least = (asked: readonly number[], canMiss: (row: number) => boolean, slack: number) =>
    nearestFeasible(
      [...point.map(() => 0), -MISS_WEIGHT],
      [
        ...asked.map((row) => [...(rows[row] ?? []), canMiss(row) ? 1 : 0]),
        ...box.rows.map((row) => [...row, 0]),
        noMiss,
      ],
      [...asked.map((row) => (limits[row] ?? 0) - (canMiss(row) ? 0 : slack)), ...box.limits, 0],
    )?.point;
  const all = [...rows.keys()];
  const hard = all.filter((row) => isHard[row]);
  const missed = hard.length === 0 ? 0 : (least(hard, () => true, 0)?.at(-1) ?? 0);
  const found = least(
    all,
    (row) => isHard[row] !== true,
    missed * (1 + ROUNDING) + (missed > 0 ? ROUNDING : 0),
  );
  return found && { step: found.slice(0, -1), miss: (found.at(-1) ?? 0) + HARD * missed };
}
