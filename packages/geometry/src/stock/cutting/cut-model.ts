import type { CutProblem, LaidBar } from "./cut-problem.js";
import type { IntegerColumn, IntegerModel, IntegerRow } from "./integer-solver.js";
import { SAW_HAIR } from "./saw-bar.js";

/** Patterns as columns of a program: of which stock, and how many pieces of each length. */
export type Pattern = LaidBar;

type Terms = IntegerRow["terms"];

/** Where the variables of a program stand among its columns: the patterns first. */
export interface CutColumns {
  /** Pieces of each length that come from no bar with a length. */
  readonly endless: number;
  /** Bars opened of each stock. */
  readonly stocks: number;
  /** Pieces of each length in the one bar that is singled out, and whether it is of each stock. */
  readonly special: number;
  readonly specialStock: number;
}

/** Places of the variables; those of the singled-out bar are there only where it is asked for. */
export function cutColumns({ lengths, stocks }: CutProblem, patterns: readonly Pattern[]): CutColumns {
  const endless = patterns.length;
  const opened = endless + lengths.length;
  const special = opened + stocks.length;
  return { endless, stocks: opened, special, specialStock: special + lengths.length };
}

/** What a program is to make small, and what it must hold beside the demand and the bars in hand. */
export interface CutGoal {
  /** Cost of a piece of each length that comes from no bar with a length. */
  readonly endless?: readonly number[];
  /** The most of them; left out: the demand where a bar is as long as needed, else none. */
  readonly endlessMost?: readonly number[];
  /** Whether the length of the bars opened is the cost. */
  readonly opened?: boolean;
  /** Limits of that length, mm. */
  readonly openedFrom?: number;
  readonly openedTo?: number;
  /** The most from bars that are as long as needed, cuts included, mm. */
  readonly endlessTo?: number;
  /** Singles out one bar and makes what it leaves long. */
  readonly leftover?: boolean;
  readonly step?: number;
}

const NO_LIMIT = Number.POSITIVE_INFINITY;

/**
 * The integer program of a cutting problem. Bars opened of a stock are variables of their own, for they are few and
 * decide most: a solver that branches on them is done sooner than on patterns.
 */
export function cutModel(problem: CutProblem, patterns: readonly Pattern[], goal: CutGoal): IntegerModel {
  const { lengths, demand, stocks, kerf } = problem;
  const at = cutColumns(problem, patterns);
  const endlessMost = goal.endlessMost ?? demand.map((count) => (problem.endless ? count : 0));
  const columns: IntegerColumn[] = [
    ...patterns.map(({ stock }) => ({ cost: 0, most: stocks[stock]?.count ?? 0 })),
    ...lengths.map((_, i) => ({ cost: goal.endless?.[i] ?? 0, most: endlessMost[i] ?? 0 })),
    ...stocks.map(({ length, count }) => ({ cost: goal.opened ? length : 0, most: count })),
    ...(goal.leftover
      ? [
          ...lengths.map((length, i) => ({ cost: length + kerf, most: demand[i] ?? 0 })),
          ...stocks.map(({ length }) => ({ cost: -length, most: 1 })),
        ]
      : []),
  ];
  const special = (terms: Terms): Terms => (goal.leftover ? terms : []);
  const rows: IntegerRow[] = [
    ...lengths.map((_, i) => ({
      terms: [
        ...patterns.flatMap(({ counts }, column) => {
          const count = counts[i] ?? 0;
          return count === 0 ? [] : [[column, count] as const];
        }),
        [at.endless + i, 1] as const,
        ...special([[at.special + i, 1]]),
      ],
      least: demand[i] ?? 0,
      most: NO_LIMIT,
    })),
    ...stocks.map((_, stock) => ({
      terms: [
        ...patterns.flatMap((pattern, column) => (pattern.stock === stock ? [[column, 1] as const] : [])),
        [at.stocks + stock, -1] as const,
        ...special([[at.specialStock + stock, 1]]),
      ],
      least: -NO_LIMIT,
      most: 0,
    })),
    {
      terms: stocks.map(({ length }, i) => [at.stocks + i, length] as const),
      least: goal.openedFrom === undefined ? -NO_LIMIT : goal.openedFrom - SAW_HAIR,
      most: goal.openedTo === undefined ? NO_LIMIT : goal.openedTo + SAW_HAIR,
    },
    {
      terms: lengths.map((length, i) => [at.endless + i, length + kerf] as const),
      least: -NO_LIMIT,
      most: goal.endlessTo === undefined ? NO_LIMIT : goal.endlessTo + SAW_HAIR,
    },
    ...(goal.leftover ? specialRows(problem, at) : []),
  ].filter(({ terms, least, most }) => terms.length > 0 && (least > -NO_LIMIT || most < NO_LIMIT));
  return { columns, rows, ...(goal.step === undefined ? {} : { step: goal.step }) };
}

/** One bar is singled out, and its pieces fit into it. */
function specialRows({ lengths, stocks, kerf }: CutProblem, at: CutColumns): IntegerRow[] {
  return [
    { terms: stocks.map((_, i) => [at.specialStock + i, 1] as const), least: 1, most: 1 },
    {
      terms: [
        ...lengths.map((length, i) => [at.special + i, length + kerf] as const),
        ...stocks.map(({ length }, i) => [at.specialStock + i, -(length + kerf)] as const),
      ],
      least: -NO_LIMIT,
      most: 0,
    },
  ];
}
