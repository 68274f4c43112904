import { SpecError } from "../../errors/errors.js";
import { checkCuts } from "./check-cuts.js";
import { type CutLayout, type CutProblem, layoutCost, makeCutProblem, takenAtLeast } from "./cut-problem.js";
import type { CutList, CutPiece, CutProof, CutRequest, LeftOutOrder } from "./cut-types.js";
import { dealPieces } from "./deal-pieces.js";
import { solveCuts, solveFits, solveMissing } from "./exact-cuts.js";
import { layFirstFit, missingByFirstFit } from "./first-fit.js";
import type { IntegerSolver } from "./integer-solver.js";
import { openableLengths } from "./openable-lengths.js";
import { SAW_HAIR } from "./saw-bar.js";

/**
 * Which pieces of several orders to cut from which bars of one section, steel and price.
 *
 * Orders are served as they come, each whole or not at all. Of all ways to cut those served it takes the one that,
 * asked in this order, takes the least length from bars that are as long as needed, opens the least length of bars,
 * and leaves the longest single piece. At one price the least length is the least cost of the bars opened.
 *
 * @param solver - With it the list is proven optimal, unless `proof` says otherwise. Without, pieces are laid by a
 *   rule of thumb, `proof.takenAtLeast` is a proven limit, and an order may be left out that could have been served.
 * @throws {SpecError} where lengths or counts are none; see `checkCuts`.
 *
 * @example
 * const pieces = [
 *   { order: "A-1", length: 240, count: 2 },
 *   { order: "B-2", length: 310, count: 1 },
 * ];
 * const bars = [{ name: "6 x 40", length: 1000 }, { name: "6 x 40", length: 320 }];
 * const list = planCutList({ pieces, bars, kerf: 1.5, minKeep: 75 });
 * list.bars.map(({ leftover }) => leftover); // [205.5]
 */
export function planCutList(request: CutRequest, solver?: IntegerSolver): CutList {
  const issues = checkCuts(request);
  if (issues.length > 0) throw new SpecError(issues);
  const orders = [...new Set(request.pieces.map(({ order }) => order))];
  const problemOf = (pieces: readonly CutPiece[]): CutProblem =>
    makeCutProblem(pieces, request.bars, request.kerf);

  let served: readonly CutPiece[] = request.pieces;
  let place = findPlace(problemOf(served), solver);
  let sure = true;
  const leftOut: LeftOutOrder[] = [];
  if (place.layout === undefined) {
    served = [];
    place = { layout: NOTHING, sure: true };
    for (const order of orders) {
      const own = request.pieces.filter((piece) => piece.order === order);
      const tried = [...served, ...own];
      const result = findPlace(problemOf(tried), solver);
      if (result.layout === undefined) {
        const missing = missingOf(problemOf(tried), served, solver);
        sure &&= result.sure && missing.sure;
        leftOut.push({ order, missing: missing.pieces });
      } else [served, place] = [tried, result];
    }
  }
  const laid = lay(problemOf(served), place.layout ?? NOTHING, solver);
  return makeCutList(request, served, laid, leftOut, sure && laid.sure);
}

/** A place for every piece, found by rule of thumb or, where that fails, by the solver. */
function findPlace(
  problem: CutProblem,
  solver: IntegerSolver | undefined,
): { readonly layout?: CutLayout; readonly sure: boolean } {
  const layout = layFirstFit(problem);
  if (layout !== undefined) return { layout, sure: true };
  const exact = solver === undefined ? undefined : solveFits(problem, solver);
  if (exact?.layout !== undefined) return { layout: exact.layout, sure: true };
  return { sure: exact?.status === "infeasible" };
}

interface Laid {
  readonly layout: CutLayout;
  /** Proven to be the best there is. */
  readonly sure: boolean;
  readonly method: CutProof["method"];
  /** Proven by the solver, where it was stopped. */
  readonly atLeast?: number;
}

const NOTHING: CutLayout = { bars: [], endless: [] };

function lay(problem: CutProblem, known: CutLayout, solver: IntegerSolver | undefined): Laid {
  const rough = { layout: known, sure: false, method: "first-fit" } as const;
  if (solver === undefined) return rough;
  if (problem.lengths.length === 0) return { ...rough, sure: true, method: "integer-program" };
  const exact = solveCuts(problem, known, solver);
  if (exact === undefined) return rough;
  const { layout = known, status, takenAtLeast: atLeast } = exact;
  return {
    layout,
    sure: status === "optimal",
    method: layout === known && status !== "optimal" ? "first-fit" : "integer-program",
    ...(atLeast === undefined ? {} : { atLeast }),
  };
}

function missingOf(
  problem: CutProblem,
  served: readonly CutPiece[],
  solver: IntegerSolver | undefined,
): { readonly pieces: LeftOutOrder["missing"]; readonly sure: boolean } {
  const required = problem.lengths.map((length) =>
    served.reduce((sum, piece) => sum + (Math.abs(piece.length - length) <= SAW_HAIR ? piece.count : 0), 0),
  );
  const exact = solver === undefined ? undefined : solveMissing(problem, required, solver);
  const counts = exact ?? missingByFirstFit(problem, required);
  return {
    pieces: problem.lengths.flatMap((length, i) => {
      const count = counts[i] ?? 0;
      return count === 0 ? [] : [{ length, count }];
    }),
    sure: exact !== undefined,
  };
}

function makeCutList(
  request: CutRequest,
  served: readonly CutPiece[],
  { layout, method, atLeast = 0 }: Laid,
  leftOut: readonly LeftOutOrder[],
  sure: boolean,
): CutList {
  const problem = makeCutProblem(served, request.bars, request.kerf);
  const bars = dealPieces(request, served, problem, layout);
  const cost = layoutCost(problem, layout);
  const taken = cost.endless + cost.opened;
  const limit = Math.min(taken, Math.max(takenAtLeast(problem), atLeast));
  // Whole bars do not add up to any length.
  const next = problem.endless ? undefined : openableLengths(problem, limit, taken);
  const leftovers = bars.flatMap(({ leftover = 0, kept }) => [{ leftover, kept }]);
  return {
    bars,
    leftOut,
    taken,
    longestLeftover: Math.max(0, ...leftovers.map(({ leftover, kept }) => (kept ? leftover : 0))),
    scrap: leftovers.reduce((sum, { leftover, kept }) => sum + (kept ? 0 : leftover), 0),
    proof: {
      optimal: sure,
      takenAtLeast: sure ? taken : (next?.least ?? limit),
      method,
    },
  };
}
