/** A variable of an integer program: at least 0, at most `most`. */
export interface IntegerColumn {
  /** What one of it adds to the sum that is made as small as can be. */
  readonly cost: number;
  /** `Infinity` where there is no limit. */
  readonly most: number;
}

/** A rule of an integer program: the sum of factor times variable lies from `least` to `most`. */
export interface IntegerRow {
  /** Index of the variable, and its factor; each variable once. */
  readonly terms: readonly (readonly [column: number, factor: number])[];
  /** `-Infinity` where there is no limit. */
  readonly least: number;
  /** `Infinity` where there is no limit. */
  readonly most: number;
}

/** An integer program: whole numbers for all variables that hold every rule at the least cost. */
export interface IntegerModel {
  readonly columns: readonly IntegerColumn[];
  readonly rows: readonly IntegerRow[];
  /** Two costs that differ are known to differ by at least this: a solver may stop when it is closer to the best. */
  readonly step?: number;
}

/**
 * What a solver answers. `optimal`: proven that nothing is better. `infeasible`: proven that nothing holds every rule.
 * `stopped`: neither, within the time it may take; with the best that it had found, if it had found any.
 */
export interface IntegerAnswer {
  readonly status: "optimal" | "infeasible" | "stopped";
  /** One for each variable; left out where none were found. */
  readonly values?: readonly number[];
  /** Cost of those values. */
  readonly objective?: number;
  /** Proven: nothing costs less than this. */
  readonly bound?: number;
}

/**
 * A solver of integer programs. The library has none of its own: whoever calls it brings one, so that it stays free of
 * files and of what a solver must load. The command brings HiGHS.
 */
export type IntegerSolver = (model: IntegerModel) => IntegerAnswer;
