import type { FitProblem } from "./fit-problem.js";

/**
 * Refuses a problem that no search can make sense of. Whoever reads files and options asks the smith before it comes to this.
 *
 * @throws {RangeError} of a range without width, limits that are no numbers, or a scale that is nothing.
 */
export function checkProblem({ dimensions, asks }: FitProblem): void {
  for (const { name, least, most } of dimensions)
    if (!(least < most && Number.isFinite(most - least)))
      throw new RangeError(`${name}: nothing lies between ${least} and ${most}`);
  for (const { name, atLeast = Number.NEGATIVE_INFINITY, atMost = Number.POSITIVE_INFINITY, scale } of asks) {
    // Limits that exclude each other are no mistake: a window can be narrower than the band that has to lie in it.
    if (Number.isNaN(atLeast) || Number.isNaN(atMost))
      throw new RangeError(`${name}: at least ${atLeast} and at most ${atMost}`);
    if (!(scale > 0 && Number.isFinite(scale))) throw new RangeError(`${name}: misses counted in ${scale}`);
  }
}
