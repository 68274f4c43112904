import type { Approach } from "./approach.js";
import type { FitAsk, FitConflict, FitOutOfReach, FitProblem, FitRelaxation } from "./fit-problem.js";
import type { FitSearch } from "./fit-search.js";
import { NO_MISS } from "./misses.js";

/**
 * What the asks that cannot all be met quarrel about, and what would settle it.
 *
 * @param isSettled - whether a knife that can be set is looked for, for each way to settle it.
 */
export function conflictOf(
  search: FitSearch,
  problem: FitProblem,
  near: Approach,
  isSettled = true,
): FitConflict {
  const { asks } = problem;
  const outOfReach = asks.flatMap((ask): FitOutOfReach[] => {
    const alone = search.anywhere(search.bands({ only: [ask] }), near);
    const isOut = alone.miss > NO_MISS && !search.isSpent;
    return isOut ? [{ ask, nearest: search.figureAt(alone, ask) }] : [];
  });
  const quarrel = outOfReach.length > 0 ? [] : smallestQuarrel(search, asks, near);
  const relaxations = asks.flatMap((ask) => relaxation(search, ask, near, isSettled) ?? []);
  return { outOfReach, asks: quarrel, relaxations, isWhole: !search.isSpent };
}

/** Whether some asks cannot be met by themselves; not where the search had to stop before it knew. */
function exclude(search: FitSearch, only: readonly FitAsk[], near: Approach): boolean {
  return search.anywhere(search.bands({ only }), near).miss > NO_MISS && !search.isSpent;
}

/**
 * The fewest asks that cannot hold together. Leaving out one after the other ends at a quarrel in which each has a part, which is
 * nearly always one of two; where it is larger, there may be a smaller one among other asks.
 */
function smallestQuarrel(search: FitSearch, asks: readonly FitAsk[], near: Approach): readonly FitAsk[] {
  const byName = [...asks].sort((a, b) => (a.name < b.name ? -1 : 1));
  let kept: readonly FitAsk[] = byName;
  for (const ask of byName) {
    const others = kept.filter((each) => each !== ask);
    if (others.length > 0 && exclude(search, others, near)) kept = others;
  }
  for (let size = 2; size < kept.length; size++) {
    const smaller = subsets(byName, size).find((some) => exclude(search, some, near));
    if (smaller !== undefined) kept = smaller;
  }
  return asks.filter((ask) => kept.includes(ask));
}

/** Every choice of so many, in order. */
function subsets<T>(items: readonly T[], size: number): readonly (readonly T[])[] {
  if (size === 0) return [[]];
  return items.flatMap((first, i) => subsets(items.slice(i + 1), size - 1).map((rest) => [first, ...rest]));
}

/** The least that an ask has to give way for all others to hold; undefined where they cannot. */
function relaxation(
  search: FitSearch,
  ask: FitAsk,
  near: Approach,
  isSettled: boolean,
): FitRelaxation | undefined {
  const { atLeast = Number.NEGATIVE_INFINITY, atMost = Number.POSITIVE_INFINITY } = ask;
  // To move one of two limits that exclude each other does not help the other.
  if (atLeast > atMost) return undefined;
  const bands = search.bands({ ask, low: atLeast, high: atMost });
  const found = search.anywhere(bands, near, (place) => isOnly(search, place, ask));
  if (search.isSpent || !isOnly(search, found, ask)) return undefined;
  const knife = isSettled ? search.settled(bands, found) : undefined;
  const isSet = knife !== undefined && search.missedBy(knife).every((missed) => missed === ask);
  const figure = isSet ? search.figureOf(knife, ask) : search.figureAt(found, ask);
  const isOver = figure > atMost;
  // What misses nothing gives way to nothing.
  const by = isOver ? figure - atMost : atLeast - figure;
  if (!(by > NO_MISS * ask.scale && Number.isFinite(by))) return undefined;
  return {
    ask,
    limit: isOver ? "atMost" : "atLeast",
    to: figure,
    by,
    ...(isSet ? { knife } : {}),
  };
}

/** Whether nothing but one ask is missed at a place. */
const isOnly = (search: FitSearch, place: Approach, ask: FitAsk): boolean =>
  search.missed(place).every((missed) => missed === ask);
