import highsModule from "highs";
import type { IntegerModel, IntegerSolver } from "../../../src/stock/cutting/integer-solver.js";

// The package declares its types as those of a CommonJS module, whose default would be one level further down.
const loadHighs = highsModule as unknown as typeof highsModule.default;

/** The program as the text that solvers have read since the 1980s: x0, x1, … for the variables. */
function lpText({ columns, rows }: IntegerModel): string {
  const sum = (terms: readonly (readonly [number, number])[]): string =>
    terms.map(([column, factor]) => `${factor < 0 ? "-" : "+"} ${Math.abs(factor)} x${column}`).join("\n ");
  const rules = rows.flatMap(({ terms, least, most }, i) => [
    ...(Number.isFinite(least) ? [`l${i}: ${sum(terms)} >= ${least}`] : []),
    ...(Number.isFinite(most) ? [`m${i}: ${sum(terms)} <= ${most}`] : []),
  ]);
  const limits = columns.map(({ most }, i) => `0 <= x${i}${Number.isFinite(most) ? ` <= ${most}` : ""}`);
  const names = columns.map((_, i) => `x${i}`);
  return [
    "Minimize",
    `cost: ${sum(columns.map(({ cost }, i) => [i, cost] as const))}`,
    "Subject To",
    ...rules,
    "Bounds",
    ...limits,
    "General",
    ...names,
    "End",
    "",
  ].join("\n");
}

const highs = await loadHighs();

/** HiGHS from its text, for tests: another way in than the command takes. */
export const highsFromText: IntegerSolver = (model) => {
  const { Status, ObjectiveValue, Columns } = highs.solve(lpText(model), {
    output_flag: false,
    mip_rel_gap: 0,
    mip_abs_gap: Math.max(1e-6, 0.99 * (model.step ?? 0)),
    mip_feasibility_tolerance: 1e-9,
  });
  if (Status === "Infeasible") return { status: "infeasible" };
  if (Status !== "Optimal") return { status: "stopped" };
  const values = model.columns.map((_, i) => {
    const column = Columns[`x${i}`];
    return column !== undefined && "Primal" in column ? column.Primal : 0;
  });
  return { status: "optimal", values, objective: ObjectiveValue, bound: ObjectiveValue };
};
