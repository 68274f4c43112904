import type { DualText } from "../label-text.js";

/** A cell of a table: words, or a figure in one or both units. */
export type Cell = string | DualText;

/** A row of a table in two lines: the other units stand under the sheet's own, so that it is narrow. */
export function inTwoLines(cells: readonly Cell[]): string[][] {
  const main = cells.map((cell) => (typeof cell === "string" ? cell : cell.main));
  const other = cells.map((cell) => (typeof cell === "string" ? "" : (cell.other ?? "")));
  return other.some((text) => text !== "") ? [main, other] : [main];
}
