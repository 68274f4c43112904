import { ledgerRow, type RowWhatIf, type StockPlan } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { fineMassText, lengthText, signedText } from "./figures.js";
import { layOutTable, wrap } from "./layout.js";
import { ROW_WORDS, WELDED_ONLY } from "./ledger-text.js";

/** Rows that are shown, and the least that they have to do to the finished steel, g. */
const MOST_ROWS = 6;
const LEAST = 1;

/**
 * What the finished steel would weigh if one row alone took more than usual, and how much longer a bar would make up for
 * it; only the rows that matter, the worst first. Ends with a blank line; nothing where no row matters.
 */
export function whatIfLines(plan: Pick<StockPlan, "bars" | "ledger" | "whatIf">, units: FileUnits): string[] {
  const rows = plan.whatIf
    .filter(({ row, more }) => more.finished <= -LEAST && (plan.bars > 1 || !WELDED_ONLY.has(row)))
    .sort((a, b) => a.more.finished - b.more.finished)
    .slice(0, MOST_ROWS);
  if (rows.length === 0) return [];
  const finished = ledgerRow(plan.ledger, "finished-blade").mass;
  return [
    ...wrap(
      "If one row alone took more than usual, up to its high loss (or a tenth more where it has no band), bars with nothing to spare would end short, or each would have to be longer:",
    ),
    ...layOutTable(
      [["", "takes", "finished steel", "", "longer bars"], ...rows.map((row) => cells(row, finished, units))],
      ["left", "right", "right", "right", "right"],
    ),
    "",
  ];
}

function cells({ row, by, more }: RowWhatIf, finished: number, units: FileUnits): string[] {
  return [
    `  ${ROW_WORDS[row]}${by === "tenth" ? ", a tenth" : ""}`,
    signedText(fineMassText, more.row, units),
    signedText(fineMassText, more.finished, units),
    fineMassText(finished + more.finished, units),
    Number.isFinite(more.barLength) ? lengthText(more.barLength, units) : "none do",
  ];
}
