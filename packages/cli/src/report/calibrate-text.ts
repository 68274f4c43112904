import { formatNumber, mmToInches } from "@scantling/geometry/units";
import type { BarReading } from "@scantling/render";
import { type Calibration, isInOrder, nameOf } from "../calibration.js";
import { layOutTable, wrap } from "./layout.js";

/** What became of the correction. */
export type StoreOutcome =
  /** Both bars are in order: nothing was to be stored. */
  | { readonly kind: "not-needed" }
  | { readonly kind: "stored"; readonly file: string }
  /** The lines that are to be added by hand, or by the command under `--force`. */
  | { readonly kind: "not-stored"; readonly file: string; readonly lines: readonly string[] };

/** The readings in plain words, and what was done or is to be done. */
export function calibrateText(found: Calibration, outcome: StoreOutcome): string[] {
  const { short, long, line } = found;
  const rows = [
    ["short, across", ...barCells(short, found), `× ${line.shortSide}`],
    ["long, up", ...barCells(long, found), `× ${line.longSide}`],
  ];
  return [
    `Print check on ${nameOf(found.paper)}${found.corrected ? ", printed with the stored correction" : ""}`,
    "",
    ...layOutTable(isInOrder(found) ? rows.map((row) => row.slice(0, -1)) : rows, [
      "left",
      "left",
      "left",
      "left",
    ]),
    "",
    ...(found.scaled ? [...wrap(SCALED), ""] : []),
    ...outcomeLines(found, outcome),
  ];
}

/** Said where a print is farther off than printers are by themselves. */
export const SCALED =
  "warning: this is farther off than a printer is by itself. Most likely the print dialog scaled the page: look there first (100 %, no fit to page), print again and measure again.";

const barCells = ({ bar, measured, scale, inOrder }: BarReading, { units }: Calibration): string[] => {
  const show = (mm: number): string =>
    units === "mm" ? `${formatNumber(mm, 0.01)} mm` : `${formatNumber(mmToInches(mm), 0.001)} in`;
  return [`${show(bar)} bar measures ${show(measured)}`, offWords(scale) + (inOrder ? ", in order" : "")];
};

/** `prints 0.22 % small`. */
function offWords(scale: number): string {
  const off = formatNumber(Math.abs(scale - 1) * 100, 0.01);
  if (off === "0") return "prints true";
  return `prints ${off} % ${scale < 1 ? "small" : "large"}`;
}

function outcomeLines(found: Calibration, outcome: StoreOutcome): string[] {
  const name = nameOf(found.paper);
  const again = `scantling calibrate --paper ${found.line.paper}${found.shop === undefined ? "" : ` --shop ${found.shop}`}`;
  switch (outcome.kind) {
    case "not-needed":
      return wrap(inOrderWords(found, name));
    case "stored":
      return [
        ...wrap(`Stored in ${outcome.file}: sheets on ${name} are corrected from now on, and say so.`),
        ...wrap(`Prove it: ${again} --corrected`),
      ];
    case "not-stored":
      return [
        ...wrap(
          `Not stored yet. Lines for ${outcome.file}${found.stored ? `, in place of those for ${name}` : ""}:`,
        ),
        "",
        ...outcome.lines,
      ];
  }
}

function inOrderWords(found: Calibration, name: string): string {
  if (found.corrected) return "Both within 0.2 %: the stored correction is proven.";
  if (!found.stored) return "Both within 0.2 %: no correction needed.";
  return (
    `Both within 0.2 %. If the sheet was printed with --corrected, that proves the stored correction. If not, ${name} needs none ` +
    "any more: take it out of the shop file."
  );
}
