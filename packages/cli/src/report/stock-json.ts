import type { StockPlan, StockReport } from "@scantling/geometry";
import { describeIssue } from "@scantling/geometry/units";
import { findingJson } from "./findings.js";

/** The stock report for programs: `scantling/stock/1`. Plans stand best first; lengths mm, masses g. */
export function stockJson(report: StockReport): unknown {
  return {
    schema: "scantling/stock/1",
    plans: report.plans.map(planJson),
    rejected: report.rejected.map(({ reason, count }) => ({ reason, count })),
  };
}

function planJson(plan: StockPlan): unknown {
  return {
    bar: plan.bar.name,
    bars: plan.bars,
    widthMm: plan.width,
    thicknessMm: plan.thickness,
    layers: plan.layers,
    cutLengthMm: plan.cutLength,
    cutLengthNominalMm: plan.cutLengthNominal,
    massG: plan.mass,
    wasteG: plan.waste,
    joints: plan.joints,
    reach: plan.reach.wholeShare,
    reachClass: plan.reach.class,
    reachOneFewer: plan.reach.oneFewer ?? null,
    reachOneMore: plan.reach.oneMore,
    ...(plan.cost === undefined ? {} : { cost: plan.cost }),
    why: plan.why.map((reason) => describeIssue({ ...reason, path: "" }, "mm")),
    findings: plan.findings.map(findingJson),
    ledger: plan.ledger.map(({ row, volume, mass }) => ({ row, volumeMm3: volume, massG: mass })),
  };
}
