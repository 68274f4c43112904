import { checkProblem } from "./check-problem.js";
import { conflictOf } from "./conflict.js";
import type { FitAnswer, FitConflict, FitProblem, SearchBounds } from "./fit-problem.js";
import { FitSearch } from "./fit-search.js";
import { halfSquares, NO_MISS } from "./misses.js";
import { reachesOf } from "./reach.js";

/**
 * Changes dimensions within their ranges until all asks are met, by the least sum of squares of the changes, each counted in
 * widths of its own range. Where they cannot all be met the worst miss is made least, then the change. The knife of the answer
 * can be set at the bench, and was weighed so.
 *
 * The order of dimensions and asks does not matter.
 *
 * @returns undefined where no knife can be built in the ranges.
 * @throws {RangeError} of a range without width, limits that are no numbers, or a scale that is nothing.
 *
 * @example
 * const sizes = [{ path: "blade.bevel.edgeThickness", drawn: 0.4, steps: [0.05] }];
 * const edge = { name: "bevel.edgeThickness", kind: "length", sizes, least: 0.2, most: 0.8 } as const;
 * const angle = { name: "angle", figure: { kind: "bevel-angle", side: "right" }, atMost: 0.046, scale: 0.001 } as const;
 * fitKnife({ spec, dimensions: [edge], asks: [angle] })?.knife.dimensions[0]?.sizes; // [0.65]
 */
export function fitKnife(problem: FitProblem): FitAnswer | undefined {
  checkProblem(problem);
  const search = new FitSearch(problem);
  const near = search.nearest(search.bands());
  const knife = near && search.settled(search.bands(), near);
  if (near === undefined || knife === undefined) return undefined;
  const isMet = knife.miss === 0;
  return {
    isMet,
    knife,
    ideal: { change: halfSquares(near.changes), miss: search.worstMiss(near.figures) },
    reaches: isMet ? reachesOf(search, problem, near) : [],
    ...(!isMet && near.miss > NO_MISS ? { conflict: conflictOf(search, problem, near) } : {}),
  };
}

/** Nothing can be said for sure: the search had to stop before it knew whether the asks can be met. */
const NOT_KNOWN: FitConflict = { outOfReach: [], asks: [], relaxations: [], isWhole: false };

/**
 * Finds asks that cannot hold together whatever the allowed changes, and what to relax. For an order before it is quoted.
 *
 * @param bounds - with them relaxations are told between the steps of the bench, without a knife to set: that takes longest.
 * @returns undefined where all asks can be met between the steps of the bench, or no knife can be built. Where the search had to
 *   stop before it knew, a conflict of no asks that is not whole.
 * @throws {RangeError} as {@link fitKnife}.
 *
 * @example
 * findConflict({ spec, dimensions: [], asks: [] }); // undefined
 */
export function findConflict(problem: FitProblem, bounds?: SearchBounds): FitConflict | undefined {
  checkProblem(problem);
  const search = new FitSearch(problem, bounds);
  const near = search.nearest(search.bands());
  if (near !== undefined && near.miss <= NO_MISS) return undefined;
  if (search.isSpent) return NOT_KNOWN;
  return near && conflictOf(search, problem, near, bounds === undefined);
}
