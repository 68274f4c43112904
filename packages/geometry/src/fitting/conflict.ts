import type { Approach } from "./approach.js";
import type { FitAsk, FitConflict, FitOutOfReach, FitProblem, FitRelaxation } from "./fit-problem.js";
import type { FitSearch } from "./fit-search.js";
import { NO_MISS } from "./misses.js";

/** What the asks that cannot all be met quarrel about, and what would settle it. */
export function conflictOf(search: FitSearch, problem: FitProblem, near: Approach): FitConflict {
  const outOfReach = problem.asks.flatMap((ask): FitOutOfReach[] => {
    const alone = search.anywhere(search.bands({ only: [ask] }), near);
    return alone.miss > NO_MISS ? [{ ask, nearest: search.figureAt(alone, ask) }] : [];
  });
  return {
    outOfReach,
    asks: outOfReach.length > 0 ? [] : quarrelling(search, problem, near),
    relaxations: problem.asks.flatMap((ask) => relaxation(search, ask, near) ?? []),
  };
}

/** Asks of which none can be left out: each in turn is left out for good where the rest cannot be met even so. */
function quarrelling(search: FitSearch, { asks }: FitProblem, near: Approach): readonly FitAsk[] {
  const byName = [...asks].sort((a, b) => (a.name < b.name ? -1 : 1));
  let kept: readonly FitAsk[] = byName;
  for (const ask of byName) {
    const others = kept.filter((each) => each !== ask);
    if (others.length === 0) break;
    if (search.anywhere(search.bands({ only: others }), near).miss > NO_MISS) kept = others;
  }
  return asks.filter((ask) => kept.includes(ask));
}

/** The least that an ask has to give way for all others to hold; undefined where they cannot. */
function relaxation(search: FitSearch, ask: FitAsk, near: Approach): FitRelaxation | undefined {
  const { atLeast = Number.NEGATIVE_INFINITY, atMost = Number.POSITIVE_INFINITY } = ask;
  // To move one of two limits that exclude each other does not help the other.
  if (atLeast > atMost) return undefined;
  const bands = search.bands({ ask, low: atLeast, high: atMost });
  const found = search.anywhere(bands, near, (place) => isOnly(search, place, ask));
  if (!isOnly(search, found, ask)) return undefined;
  const knife = search.settled(bands, found);
  const isSet = knife !== undefined && search.missedBy(knife).every((missed) => missed === ask);
  const figure = isSet ? search.figureOf(knife, ask) : search.figureAt(found, ask);
  const isOver = figure > atMost;
  return {
    ask,
    limit: isOver ? "atMost" : "atLeast",
    to: figure,
    by: isOver ? figure - atMost : atLeast - figure,
    ...(isSet ? { knife } : {}),
  };
}

/** Whether nothing but one ask is missed at a place. */
const isOnly = (search: FitSearch, place: Approach, ask: FitAsk): boolean =>
  search.missed(place).every((missed) => missed === ask);
