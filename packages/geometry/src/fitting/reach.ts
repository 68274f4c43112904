import type { Approach } from "./approach.js";
import type { FitAsk, FitProblem, FitReach } from "./fit-problem.js";
import type { FitSearch } from "./fit-search.js";

/** A window narrower than this is a target: nobody asks where in it the knife can be. In scales. */
const WINDOW = 2.5;

/** What lies this near to a limit has reached it, in scales. */
const AT_LIMIT = 1e-4;

/** Of every ask with a window, how far to either end of it the knife can be brought while all asks hold. */
export function reachesOf(search: FitSearch, { asks }: FitProblem, near: Approach): readonly FitReach[] {
  return asks.flatMap((ask): FitReach[] => {
    const { atLeast, atMost, scale } = ask;
    if (atLeast === undefined || atMost === undefined || atMost - atLeast < WINDOW * scale) return [];
    return [
      {
        ask,
        low: Math.max(atLeast, toward(search, ask, near, atLeast, "low")),
        high: Math.min(atMost, toward(search, ask, near, atMost, "high")),
      },
    ];
  });
}

/** The figure nearest to a limit of its own window, from inside, that leaves all others as they are asked. */
function toward(search: FitSearch, ask: FitAsk, near: Approach, limit: number, end: "low" | "high"): number {
  const bands = search.bands(
    end === "low"
      ? { ask, low: Number.NEGATIVE_INFINITY, high: limit }
      : { ask, low: limit, high: Number.POSITIVE_INFINITY },
  );
  const figure = search.figureAt(search.onward(bands, near), ask);
  return Math.abs(figure - limit) <= AT_LIMIT * ask.scale ? limit : figure;
}
