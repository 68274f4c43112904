import { type CutGoal, cutColumns, cutModel, type Pattern } from "./cut-model.js";
import {
  type CutLayout,
  type CutProblem,
  isCheaper,
  type LaidBar,
  layoutCost,
  pieceLengths,
  takenAtLeast,
} from "./cut-problem.js";
import { trimLayout } from "./deal-pieces.js";
import type { IntegerAnswer, IntegerSolver } from "./integer-solver.js";
import { openableLengths } from "./openable-lengths.js";
import { cuttingPatterns } from "./patterns.js";
import { SAW_HAIR, sawBar } from "./saw-bar.js";

/** More patterns than this are not handed to a solver. */
const MOST_PATTERNS = 30_000;

/** What came of handing a problem to a solver. */
export interface ExactCuts {
  readonly status: IntegerAnswer["status"];
  /** The best found, holding exactly what is wanted; left out where none was. */
  readonly layout?: CutLayout;
  /** Proven lower limit of the length taken, mm. */
  readonly takenAtLeast?: number;
}

/**
 * Asks whether the pieces find a place at all.
 *
 * @returns `undefined` where there are too many patterns to hand over.
 */
export function solveFits(problem: CutProblem, solver: IntegerSolver): ExactCuts | undefined {
  const program = makeProgram(problem, solver);
  if (program === undefined) return undefined;
  if (!program.hasPlaces) return { status: "infeasible" };
  const { status, layout } = program.solve({});
  return { status, ...(layout === undefined ? {} : { layout }) };
}

/**
 * Solves a cutting problem over all its maximal patterns, in turn: the least length from bars that are as long as
 * needed; with that, the least length of bars opened; with that, the longest leftover in one bar, whose pieces are
 * free numbers of their own, for it need not be full.
 *
 * @param known - A layout to be bettered.
 * @returns `undefined` where there are too many patterns to hand over.
 */
export function solveCuts(
  problem: CutProblem,
  known: CutLayout,
  solver: IntegerSolver,
): ExactCuts | undefined {
  const program = makeProgram(problem, solver);
  if (program === undefined) return undefined;
  const cost = (layout: CutLayout) => layoutCost(problem, layout);
  let best = known;
  let endlessTo = 0;
  if (problem.endless) {
    const answer = program.solve({ endless: problem.lengths.map((length) => length + problem.kerf) });
    best = cheaper(problem, best, answer.layout);
    if (answer.status !== "optimal") return { status: "stopped", layout: best };
    endlessTo = cost(best).endless;
  }

  const knownLength = cost(best).opened;
  const from = problem.endless ? 0 : takenAtLeast(problem);
  // The layout known need not be one of the least from endless bars, so that it sets no limit where there are any.
  const openable = problem.endless ? undefined : openableLengths(problem, from, knownLength);
  const openedFrom = openable?.least ?? from;
  if (problem.endless || knownLength > openedFrom + SAW_HAIR) {
    const answer = program.solve({
      opened: true,
      endlessTo,
      openedFrom,
      ...(problem.endless ? {} : { openedTo: knownLength }),
      ...(openable === undefined ? {} : { step: openable.step }),
    });
    best = cheaper(problem, best, answer.layout);
    if (answer.status !== "optimal") {
      const bound = Math.max(openedFrom, answer.bound ?? 0);
      const next = problem.endless ? undefined : openableLengths(problem, bound, cost(best).opened);
      const atLeast = next?.least ?? bound;
      // Nothing lies between what is proven and what was found.
      if (atLeast < cost(best).opened - SAW_HAIR)
        return { status: "stopped", layout: best, takenAtLeast: endlessTo + atLeast };
    }
  }
  if (best.bars.length === 0) return { status: "optimal", layout: best };
  const openedTo = cost(best).opened;
  const last = program.solve({ leftover: true, endlessTo, openedTo });
  best = cheaper(problem, best, last.layout);
  return {
    status: last.status === "optimal" ? "optimal" : "stopped",
    layout: best,
    takenAtLeast: endlessTo + openedTo,
  };
}

/**
 * Which pieces of an order have to be left out, with the fewest mm missing, when those of the orders before it are cut.
 *
 * @param required - How many of each length belong to the orders before it.
 * @returns How many of each length; `undefined` where the solver did not get to the end.
 */
export function solveMissing(
  problem: CutProblem,
  required: readonly number[],
  solver: IntegerSolver,
): number[] | undefined {
  const patterns = patternsOf(problem);
  if (patterns === undefined) return undefined;
  // The pieces left out take the place of those from a bar that is as long as needed.
  const goal = {
    endless: problem.lengths,
    endlessMost: problem.demand.map((count, i) => count - (required[i] ?? 0)),
  };
  const { status, values } = solver(cutModel(problem, patterns, goal));
  if (status !== "optimal" || values === undefined) return undefined;
  const { endless } = cutColumns(problem, patterns);
  return problem.lengths.map((_, i) => Math.round(values[endless + i] ?? 0));
}

interface Program {
  /** Whether every length fits into some bar. */
  readonly hasPlaces: boolean;
  solve(goal: CutGoal): {
    readonly status: IntegerAnswer["status"];
    readonly layout?: CutLayout;
    readonly bound?: number;
  };
}

function makeProgram(problem: CutProblem, solver: IntegerSolver): Program | undefined {
  const patterns = patternsOf(problem);
  if (patterns === undefined) return undefined;
  const hasPlaces =
    problem.endless || problem.lengths.every((_, i) => patterns.some(({ counts }) => (counts[i] ?? 0) > 0));
  return {
    hasPlaces,
    solve(goal) {
      const { status, values, bound } = solver(cutModel(problem, patterns, goal));
      const layout =
        values === undefined ? undefined : readLayout(problem, patterns, values.map(Math.round), goal);
      return {
        // The solver holds its rules to a tolerance: what does not fit in whole numbers is no solution.
        status: status === "optimal" && layout === undefined ? "stopped" : status,
        ...(layout === undefined ? {} : { layout }),
        ...(bound === undefined ? {} : { bound }),
      };
    },
  };
}

function patternsOf({ stocks, lengths, demand, kerf }: CutProblem): Pattern[] | undefined {
  const patterns: Pattern[] = [];
  for (const [stock, { length }] of stocks.entries()) {
    const found = cuttingPatterns(length, lengths, demand, kerf, MOST_PATTERNS - patterns.length);
    if (found === undefined) return undefined;
    for (const counts of found) patterns.push({ stock, counts });
  }
  return patterns;
}

/** The layout of a program's numbers, without what it holds too much; `undefined` where it is none. */
function readLayout(
  problem: CutProblem,
  patterns: readonly Pattern[],
  values: readonly number[],
  goal: CutGoal,
): CutLayout | undefined {
  const { lengths, demand, stocks, kerf } = problem;
  const at = cutColumns(problem, patterns);
  const bars = patterns.flatMap((pattern, column) =>
    Array.from({ length: values[column] ?? 0 }, (): LaidBar => pattern),
  );
  const stock = stocks.findIndex((_, i) => values[at.specialStock + i] === 1);
  // The singled-out bar first: what the others hold too much is taken off them, not off it.
  if (goal.leftover && stock >= 0)
    bars.unshift({ stock, counts: lengths.map((_, i) => values[at.special + i] ?? 0) });
  const endless = lengths.map((_, i) => values[at.endless + i] ?? 0);
  const layout = trimLayout(problem, { bars, endless });
  const holdsAll = demand.every(
    (count, i) =>
      layout.bars.reduce((sum, { counts }) => sum + (counts[i] ?? 0), layout.endless[i] ?? 0) === count,
  );
  const hasBars = stocks.every(
    ({ count }, i) => layout.bars.filter((bar) => bar.stock === i).length <= count,
  );
  const fits = layout.bars.every(
    (bar) => sawBar(stocks[bar.stock]?.length ?? 0, pieceLengths(lengths, bar.counts), kerf) !== undefined,
  );
  return holdsAll && hasBars && fits ? layout : undefined;
}

function cheaper(problem: CutProblem, best: CutLayout, other: CutLayout | undefined): CutLayout {
  if (other === undefined) return best;
  return isCheaper(layoutCost(problem, other), layoutCost(problem, best)) ? other : best;
}
