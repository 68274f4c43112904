import type { IntegerAnswer, IntegerModel, IntegerSolver } from "@scantling/geometry";
import highsModule from "highs";

// The package declares its types as those of a CommonJS module, whose default would be one level further down.
const loadHighs = highsModule as unknown as typeof highsModule.default;

/** Longest that one program may take, s; what is found by then is said to be a bound. */
const MOST_SECONDS = 10;

/** Below this a cost is the same, mm. */
const LEAST_GAP = 1e-6;

const OPTIONS = {
  output_flag: false,
  time_limit: MOST_SECONDS,
  // By default a solution within a ten-thousandth counts as optimal.
  mip_rel_gap: 0,
  // A bar is not a number that is nearly whole.
  mip_feasibility_tolerance: 1e-9,
};

/** HiGHS, compiled to WebAssembly: solves the integer programs of cut lists. */
export async function loadSolver(): Promise<IntegerSolver> {
  const highs = await loadHighs();
  const { modelStatus, objectiveSense, solutionStatus, variableType } = highs.constants;
  return (model) =>
    highs.withModel(sparse(model), (solver): IntegerAnswer => {
      solver.options.set({ ...OPTIONS, mip_abs_gap: gapOf(model) });
      solver.run();
      const status = solver.getModelStatus();
      if (status === modelStatus.infeasible) return { status: "infeasible" };
      const values =
        solver.info.get("primal_solution_status") === solutionStatus.feasible
          ? { values: [...solver.getSolution().colValue], objective: solver.getObjectiveValue() }
          : {};
      if (status === modelStatus.optimal)
        return { status: "optimal", ...values, bound: solver.getObjectiveValue() };
      const bound = Number(solver.info.get("mip_dual_bound"));
      return { status: "stopped", ...values, ...(Number.isFinite(bound) ? { bound } : {}) };
    });

  /** Closer to the best than two costs can be, or than counts. */
  function gapOf({ step = 0 }: IntegerModel): number {
    return Math.max(LEAST_GAP, 0.99 * step);
  }

  function sparse({ columns, rows }: IntegerModel) {
    const starts = [0];
    for (const { terms } of rows) starts.push((starts.at(-1) ?? 0) + terms.length);
    const entries = rows.flatMap(({ terms }) => terms);
    return {
      numCols: columns.length,
      numRows: rows.length,
      sense: objectiveSense.minimize,
      colCost: columns.map(({ cost }) => cost),
      colLower: columns.map(() => 0),
      colUpper: columns.map(({ most }) => most),
      rowLower: rows.map(({ least }) => least),
      rowUpper: rows.map(({ most }) => most),
      matrix: {
        format: "csr" as const,
        numRows: rows.length,
        numCols: columns.length,
        starts,
        indices: entries.map(([column]) => column),
        values: entries.map(([, factor]) => factor),
      },
      integrality: columns.map(() => variableType.integer),
    };
  }
}
