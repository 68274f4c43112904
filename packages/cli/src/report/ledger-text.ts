import { LEDGER_TOTALS, type LedgerRow, type LedgerRowName, type StockPlan } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { fineMassText, volumeText } from "./figures.js";
import { layOutTable } from "./layout.js";

/** How the rows are called in reports. */
export const ROW_WORDS: Readonly<Record<LedgerRowName, string>> = {
  "finished-blade": "finished blade",
  sharpening: "sharpening",
  "finish-grinding": "finish grinding",
  "heat-treatment-scale": "heat-treatment scale",
  "ready-to-harden": "ready to harden",
  drilling: "drilling",
  "bevel-grinding": "bevel grinding",
  "tang-grinding": "tang grinding",
  "face-grinding": "face grinding",
  "profile-trimming": "profile trimming",
  "forged-blade": "forged blade",
  "forging-scale": "forging scale",
  "dressed-billet": "dressed billet",
  cropping: "cropping",
  "weld-dressing": "weld dressing",
  "welding-scale": "welding scale",
  "bar-cleaning": "bar cleaning",
  spare: "spare",
  "bars-as-cut": "bars as cut",
};

/** Rows that a solid bar does not have. */
export const WELDED_ONLY: ReadonlySet<LedgerRowName> = new Set([
  "cropping",
  "weld-dressing",
  "welding-scale",
  "bar-cleaning",
]);

/**
 * The ledger of a plan: what the steel is at each state, and what each step takes, at usual losses, and at low and high
 * ones where that makes a difference.
 */
export function ledgerLines(
  plan: Pick<StockPlan, "bars" | "ledger" | "ledgerHigh"> & Partial<Pick<StockPlan, "ledgerLow">>,
  units: FileUnits,
  title = "Steel ledger of plan 1",
): string[] {
  const hasBand = (index: number): boolean =>
    massAt(plan.ledgerHigh, index) !== massAt(plan.ledger, index) ||
    (plan.ledgerLow !== undefined && massAt(plan.ledgerLow, index) !== massAt(plan.ledger, index));
  const side = (rows: readonly LedgerRow[], index: number): string =>
    hasBand(index) ? fineMassText(massAt(rows, index), units) : "";
  const shown = plan.ledger.map((row, index) => ({ row, index }));
  const rows = shown
    .filter(({ row }) => plan.bars > 1 || !WELDED_ONLY.has(row.row))
    .map(({ row, index }) => [
      LEDGER_TOTALS.includes(row.row) ? ROW_WORDS[row.row] : `  + ${ROW_WORDS[row.row]}`,
      fineMassText(row.mass, units),
      volumeText(row.volume, units),
      ...(plan.ledgerLow === undefined ? [] : [side(plan.ledgerLow, index)]),
      side(plan.ledgerHigh, index),
    ]);
  const sides = plan.ledgerLow === undefined ? ["high losses"] : ["low losses", "high losses"];
  return layOutTable(
    [[title, "usual", "", ...sides], ...rows],
    ["left", "right", "right", ...sides.map(() => "right" as const)],
  );
}

const massAt = (rows: readonly LedgerRow[], index: number): number => rows[index]?.mass ?? 0;

/** The five states of the steel alone, in the order of the work: for the summary. */
export function ledgerTotals(plan: Pick<StockPlan, "ledger">, units: FileUnits): string {
  return LEDGER_TOTALS.toReversed()
    .flatMap((name) => {
      const row = plan.ledger.find((each) => each.row === name);
      return row === undefined ? [] : [`${ROW_WORDS[name]} ${fineMassText(row.mass, units)}`];
    })
    .join(" → ");
}
