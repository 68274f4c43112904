import { type DrawingItem, lettering, strokes } from "./drawing.js";
import { LINE_PITCH, SMALL } from "./lettering-size.js";
import { textWidth } from "./text-metrics.js";

export interface TableContent {
  /** A line above the table that says what it holds. */
  readonly caption: string;
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Room for one line of any script, and the height of its base line in it, mm. */
const ROW = 2.25 * SMALL;
const BASE_LINE = 0.6 * SMALL;
const CAPTION = SMALL * LINE_PITCH + 1.5;
const BETWEEN_COLUMNS = 4;

const columnWidths = (table: TableContent): number[] =>
  table.header.map((head, column) =>
    Math.max(...[head, ...table.rows.map((row) => row[column] ?? "")].map((text) => textWidth(text, SMALL))),
  );

/** Size of a table as {@link tableItems} draws it, mm. */
export function tableSize(table: TableContent): { width: number; height: number } {
  const widths = columnWidths(table);
  const columns = widths.reduce((sum, width) => sum + width, 0) + BETWEEN_COLUMNS * (widths.length - 1);
  return {
    width: Math.max(columns, textWidth(table.caption, SMALL)),
    height: CAPTION + ROW * (table.rows.length + 1),
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
  const headTop = top - CAPTION;
  const ruled = headTop - ROW;
  const line = (texts: readonly string[], rowTop: number): DrawingItem[] =>
    texts.map((text, column) =>
      lettering(text, { x: starts[column] ?? left, y: rowTop - ROW + BASE_LINE }, { height: SMALL }),
    );
  return [
    lettering(table.caption, { x: left, y: top - SMALL }, { height: SMALL }),
    ...line(table.header, headTop),
    strokes("thin", [
      [
        { x: left, y: ruled },
        { x: left + tableSize(table).width, y: ruled },
      ],
    ]),
    ...table.rows.flatMap((row, index) => line(row, ruled - index * ROW)),
  ];
}
