import type { StockPlan, StockReport } from "@scantling/geometry";
import { describeIssue } from "@scantling/geometry/units";
import type { Job } from "../load.js";
import { findingJson } from "./findings.js";
import { materialsJson } from "./materials.js";

/** The stock report for programs: `scantling/stock/1`. Plans stand best first; lengths mm, masses g. */
export function stockJson(report: StockReport, job: Job): unknown {
  return {
    schema: "scantling/stock/1",
    plans: report.plans.map((plan) => planJson(plan, job)),
    rejected: report.rejected.map(({ reason, count }) => ({ reason, count })),
    materials: materialsJson(job.spec),
  };
}

function planJson(plan: StockPlan, job: Job): unknown {
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
    ...finite("reachOneFewer", plan.reach.oneFewer),
    ...finite("reachOneMore", plan.reach.oneMore),
    ...(plan.cost === undefined ? {} : { cost: plan.cost }),
    why: plan.why.map((reason) => describeIssue({ ...reason, path: "" }, "mm")),
    findings: plan.findings.map((finding) => findingJson(finding, job)),
    // Both for the cut length proposed: with usual losses `spare` holds the reserve for high ones as well as the rounding.
    ledger: ledgerJson(plan.ledger),
    ledgerHighLosses: ledgerJson(plan.ledgerHigh),
  };
}

const ledgerJson = (rows: StockPlan["ledger"]): unknown =>
  rows.map(({ row, volume, mass }) => ({ row, volumeMm3: volume, massG: mass }));

/** A key with its number; left out where there is none, for JSON has no infinity. */
function finite(key: string, value: number | undefined): Readonly<Record<string, number>> {
  return value !== undefined && Number.isFinite(value) ? { [key]: value } : {};
}
