import type { CutFromBar, RowError, RowWhatIf, StockPlan } from "@scantling/geometry";
import { describeIssue } from "@scantling/geometry/units";
import type { Job } from "../load.js";
import type { Bars } from "../stock-report.js";
import { findingJson } from "./findings.js";
import { materialsJson } from "./materials.js";
import { mixedJson } from "./mixed-json.js";

/** The stock report for programs: `scantling/stock/1`. Plans stand best first; lengths mm, masses g. */
export function stockJson(report: Bars, job: Job): unknown {
  return {
    schema: "scantling/stock/1",
    plans: report.plans.map((plan) => stockPlanJson(plan, job)),
    ...(report.mixed === undefined ? {} : { stack: mixedJson(report.mixed, job) }),
    rejected: report.rejected.map(({ reason, count }) => ({ reason, count })),
    materials: materialsJson(job.spec),
  };
}

/** One plan of bars for programs. */
export function stockPlanJson(plan: StockPlan, job: Job): unknown {
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
    ...(plan.cuts === undefined ? {} : { cuts: plan.cuts.map((cut) => cutJson(cut, job)) }),
    why: plan.why.map((reason) => describeIssue(reason, "mm")),
    findings: plan.findings.map((finding) => findingJson(finding, job)),
    // Both for the cut length proposed: with usual losses `spare` holds the reserve for high ones as well as the rounding.
    ledger: ledgerJson(plan.ledger),
    ledgerHighLosses: ledgerJson(plan.ledgerHigh),
    ledgerLowLosses: ledgerJson(plan.ledgerLow),
    whatIf: plan.whatIf.map(whatIfJson),
  };
}

/** From which bar of the rack so many pieces come; no lengths where the rack does not say how long it is. */
const cutJson = ({ barIndex, length, pieces, remainder }: CutFromBar, { shop }: Job): unknown => ({
  bar: shop.rack[barIndex]?.name ?? "",
  ...finite("barLengthMm", length),
  pieces,
  ...finite("leftoverMm", remainder),
});

const ledgerJson = (rows: StockPlan["ledger"]): unknown =>
  rows.map(({ row, volume, mass }) => ({ row, volumeMm3: volume, massG: mass }));

/** What one row's error does to the finished steel out of the same bars, and to the length of each bar. */
const whatIfJson = ({ row, by, usual, more, less, perGram }: RowWhatIf): unknown => ({
  row,
  by,
  usualG: usual,
  more: errorJson(more),
  less: errorJson(less),
  perGram: { finishedG: perGram.finished, ...finite("barLengthMm", perGram.barLength) },
});

const errorJson = ({ row, finished, barLength }: RowError): unknown => ({
  rowG: row,
  finishedG: finished,
  ...finite("barLengthMm", barLength),
});

/** A key with its number; left out where there is none, for JSON has no infinity. */
function finite(key: string, value: number | undefined): Readonly<Record<string, number>> {
  return value !== undefined && Number.isFinite(value) ? { [key]: value } : {};
}
