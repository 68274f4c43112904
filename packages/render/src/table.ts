import { type DrawingItem, lettering, strokes } from "./drawing.js";
import { LINE_PITCH, SMALL } from "./lettering-size.js";
import { textReach, textWidth } from "./text-metrics.js";

export interface TableContent {
  /** A line above the table that says what it holds. */
  readonly caption: string;
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Clear space over and under a line of a table, mm. */
const LEADING = 0.5;
/** Between the line under the header and the first row, besides that, mm. */
const UNDER_RULE = 0.8;
const CAPTION = SMALL * LINE_PITCH + 0.5;
const BETWEEN_COLUMNS = 4;

const columnWidths = (table: TableContent): number[] =>
  table.header.map((head, column) =>
    Math.max(...[head, ...table.rows.map((row) => row[column] ?? "")].map((text) => textWidth(text, SMALL))),
  );

/** Height of each line, header first, and of its base line in it, mm: tall scripts get more room. */
function lineHeights(table: TableContent): { row: number; base: number }[] {
  return [table.header, ...table.rows].map((texts) => {
    const reaches = texts.map((text) => textReach(text, SMALL));
    const over = Math.max(...reaches.map((reach) => reach.over));
    const under = Math.max(...reaches.map((reach) => reach.under));
    return { row: over + under + 2 * LEADING, base: under + LEADING };
  });
}

/** Size of a table as {@link tableItems} draws it, mm. */
export function tableSize(table: TableContent): { width: number; height: number } {
  const widths = columnWidths(table);
  const columns = widths.reduce((sum, width) => sum + width, 0) + BETWEEN_COLUMNS * (widths.length - 1);
  return {
    width: Math.max(columns, textWidth(table.caption, SMALL)),
    height: lineHeights(table).reduce((sum, { row }) => sum + row, CAPTION + UNDER_RULE),
  };
}

/** A table with a caption, a line under its header, and columns set flush left. */
export function tableItems(
  table: TableContent,
  corner: { readonly left: number; readonly top: number },
): DrawingItem[] {
  const { left, top } = corner;
  const widths = columnWidths(table);
  const starts = widths.map((_, column) =>
    widths.slice(0, column).reduce((x, width) => x + width + BETWEEN_COLUMNS, left),
  );
  const items: DrawingItem[] = [lettering(table.caption, { x: left, y: top - SMALL }, { height: SMALL })];
  const texts = [table.header, ...table.rows];
  let y = top - CAPTION;
  for (const [index, { row, base }] of lineHeights(table).entries()) {
    y -= index === 1 ? row + UNDER_RULE : row;
    for (const [column, text] of (texts[index] ?? []).entries()) {
      items.push(lettering(text, { x: starts[column] ?? left, y: y + base }, { height: SMALL }));
    }
    const isHeader = index === 0;
    if (!isHeader) continue;
    const right = left + tableSize(table).width;
    items.push(
      strokes("thin", [
        [
          { x: left, y },
          { x: right, y },
        ],
      ]),
    );
  }
  return items;
}
