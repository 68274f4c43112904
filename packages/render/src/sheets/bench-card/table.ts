import { cleanText } from "../../clean-text.js";
import { strokes } from "../../drawing.js";
import { fitText } from "../../fit-text.js";
import { KEY } from "../../lettering-size.js";
import type { CardBlock, CardCell } from "../../models/card-model.js";
import { textReach, textWidth } from "../../text-metrics.js";
import { inline } from "./inline.js";
import type { CardLettering } from "./lettering.js";
import { boxPiece, LEADING, line, type Piece, type Placed, stack, wordPiece } from "./placed.js";

type Table = Extract<CardBlock, { kind: "table" }>;

/** Least space between two columns, mm, and the most that they are drawn apart where there is room. */
const BETWEEN = 2.2;
const MOST_BETWEEN = 9;
/** Lines that heads may be broken into, the fewest first. */
const HEAD_LINES = [1, 2, 3] as const;

/** How the columns of a table are set. */
interface Setting {
  readonly label: number;
  readonly heads: readonly (readonly string[])[];
  readonly rows: readonly (readonly Piece[])[];
  readonly widths: readonly number[];
}

/**
 * A table in the largest lettering in which its columns stand beside one another, heads broken into lines. The first
 * column is flush left, the others flush right. Where they find no room beside one another in any, each row is told in
 * lines: nothing is left out.
 */
export function cardTable(table: Table, width: number, letters: CardLettering): Placed {
  const { cell, heading, words, head } = letters;
  const sizes = [cell, heading, words, head].filter((size) => size <= cell).sort((a, b) => b - a);
  const across: number[] = [];
  const setting = firstFitting(table, sizes, head, ({ widths }) => {
    across.push(acrossOf(widths, BETWEEN));
    return acrossOf(widths, BETWEEN) <= width;
  });
  if (setting === undefined) return tableInLines(table, width, head, Math.min(...across));
  const { widths } = setting;
  const spare = (width - acrossOf(widths, 0)) / Math.max(1, widths.length - 1);
  const between = Math.max(BETWEEN, Math.min(spare, MOST_BETWEEN));
  const rights = widths.map((_, column) => acrossOf(widths.slice(0, column + 1), between));
  const rows = stack([
    headRow(setting, rights),
    ...setting.rows.map((row) =>
      line(
        row,
        row.map(({ width: own }, column) => (column === 0 ? 0 : (rights[column] ?? 0) - own)),
      ),
    ),
  ]);
  return { ...rows, least: acrossOf(widths, BETWEEN) };
}

/** The first setting that fits: in the largest lettering, heads in as few lines as there is room for. */
function firstFitting(
  table: Table,
  sizes: readonly number[],
  label: number,
  fits: (setting: Setting) => boolean,
): Setting | undefined {
  for (const size of sizes) {
    const body = setBody(table, size, label);
    for (const lines of HEAD_LINES) {
      const setting = setColumns(table, body, label, lines);
      if (fits(setting)) return setting;
    }
  }
  return undefined;
}

/** Each figure behind its head. */
function tableInLines({ heads, rows }: Table, width: number, label: number, least: number): Placed {
  const told = rows.map((row) =>
    inline(
      row.flatMap((cell, column) => [
        { text: heads[column] ?? "", height: label },
        typeof cell === "string" ? { text: cell, height: label, bold: true } : boxPiece(cell.box, label),
      ]),
      width,
    ),
  );
  return { ...stack(told), least };
}

const acrossOf = (widths: readonly number[], between: number): number =>
  widths.reduce((sum, width) => sum + width, 0) + between * Math.max(0, widths.length - 1);

/** The rows in one lettering. */
function setBody(table: Table, figure: number, label: number): Setting["rows"] {
  // The first column names the row: it is not set larger than words.
  const nameSize = Math.min(figure, Math.max(label, KEY));
  return table.rows.map((cells) =>
    cells.map((cell, column) => cellPiece(cell, column === 0 ? nameSize : figure, label, column > 0)),
  );
}

function setColumns(table: Table, rows: Setting["rows"], label: number, headLines: number): Setting {
  const body = table.heads.map((_, column) => Math.max(0, ...rows.map((row) => row[column]?.width ?? 0)));
  const heads = table.heads.map((head, column) =>
    head === "" ? [] : headLinesOf(head, label, body[column] ?? 0, headLines),
  );
  const widths = heads.map((lines, column) =>
    Math.max(body[column] ?? 0, ...lines.map((text) => textWidth(text, label))),
  );
  return { label, heads, rows, widths };
}

/** A head broken into lines no wider than they must be for that many. */
function headLinesOf(head: string, label: number, least: number, most: number): string[] {
  const pieces = cleanText(head).split(" ");
  const whole = pieces.join(" ");
  const linesAt = (width: number): string[] => fitText(whole, label, width, most);
  const fits = (width: number): boolean => linesAt(width).join(" ") === whole;
  if (fits(least)) return linesAt(least);
  const widths = pieces
    .flatMap((_, from) =>
      pieces.slice(from).map((__, count) => pieces.slice(from, from + count + 1).join(" ")),
    )
    .map((part) => textWidth(part, label))
    .filter((width) => width > least)
    .sort((one, other) => one - other);
  // The wider, the more fits: halving finds the narrowest.
  let [below, above] = [-1, widths.length - 1];
  while (above - below > 1) {
    const middle = (below + above) >> 1;
    if (fits(widths[middle] ?? 0)) above = middle;
    else below = middle;
  }
  return linesAt(widths[above] ?? least);
}

const cellPiece = (cell: CardCell, size: number, label: number, bold: boolean): Piece =>
  typeof cell === "string" ? wordPiece(cleanText(cell), size, bold) : boxPiece(cell.box, label);

/** From the last line of the heads to the rule, and from there to the first row, mm. */
const OVER_RULE = 0.4;
const UNDER_RULE = 0.6;

function headRow({ heads, label }: Setting, rights: readonly number[]): Placed {
  const lines = Math.max(0, ...heads.map((each) => each.length));
  if (lines === 0) return stack([]);
  const reaches = heads.flat().map((text) => textReach(text, label));
  const over = Math.max(...reaches.map((reach) => reach.over));
  const under = Math.max(...reaches.map((reach) => reach.under));
  const pitch = over + under + LEADING / 2;
  const height = lines * pitch + OVER_RULE + UNDER_RULE + LEADING;
  return {
    height,
    items: ({ x, y }) => [
      ...heads.flatMap((texts, column) =>
        texts.flatMap((text, index) => {
          // Heads of fewer lines stand on the rule.
          const base = y - (lines - texts.length + index) * pitch - over;
          const piece = wordPiece(text, label);
          return piece.draw({ x: x + (column === 0 ? 0 : (rights[column] ?? 0) - piece.width), y: base });
        }),
      ),
      strokes("thin", [
        [
          { x, y: y - lines * pitch - OVER_RULE },
          { x: x + (rights.at(-1) ?? 0), y: y - lines * pitch - OVER_RULE },
        ],
      ]),
    ],
  };
}
