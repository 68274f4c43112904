import { cleanText } from "../../clean-text.js";
import { strokes } from "../../drawing.js";
import { KEY } from "../../lettering-size.js";
import type { CardBlock, CardCell } from "../../models/card-model.js";
import { textReach, textWidth } from "../../text-metrics.js";
import { inline } from "./inline.js";
import type { CardLettering } from "./lettering.js";
import { fewestLines } from "./narrow-lines.js";
import { boxPiece, LEADING, line, linesPiece, type Piece, type Placed, stack, wordPiece } from "./placed.js";

type Table = Extract<CardBlock, { kind: "table" }>;

/** Least space between two columns, mm, and the most that they are drawn apart where there is room. */
const BETWEEN = 2.2;
const MOST_BETWEEN = 9;
/** Lines that heads, and large cells, may be broken into, the fewest first. */
const HEAD_LINES = [1, 2, 3] as const;
const LARGE_LINES = [1, 2, 3] as const;

/** How the columns of a table are set. */
interface Setting {
  readonly label: number;
  readonly heads: readonly (readonly string[])[];
  readonly rows: readonly (readonly Piece[])[];
  readonly widths: readonly number[];
}

/**
 * A table in the largest lettering in which its columns stand beside one another, heads broken into lines. The first
 * column is flush left, the others flush right. Columns that are read from afar keep their size: the others give way, then
 * long ones of them go on below. Where they find no room beside one another in any, each row is told in lines: nothing is
 * left out.
 */
export function cardTable(table: Table, width: number, letters: CardLettering): Placed {
  const { cell, heading, words, head } = letters;
  const sizes = [cell, heading, words, head].filter((size) => size <= cell).sort((a, b) => b - a);
  const across: number[] = [];
  const setting = firstFitting(table, sizes, letters, ({ widths }) => {
    across.push(acrossOf(widths, BETWEEN));
    return acrossOf(widths, BETWEEN) <= width;
  });
  if (setting === undefined) return tableInLines(table, width, letters, Math.min(...across));
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

/** The first setting that fits: large cells in as few lines and the rest in as large lettering as there is room for. */
function firstFitting(
  table: Table,
  sizes: readonly number[],
  letters: CardLettering,
  fits: (setting: Setting) => boolean,
): Setting | undefined {
  const parts = Math.max(
    1,
    ...(table.large ?? []).flatMap((column) =>
      table.rows.map((row) => afterPlus(typeof row[column] === "string" ? row[column] : "").length),
    ),
  );
  for (const largeLines of LARGE_LINES.filter((lines) => lines <= parts)) {
    const bodyAt = (size: number): Setting["rows"] => setBody(table, { ...letters, cell: size }, largeLines);
    const setAt = (body: Setting["rows"], lines: number): Setting =>
      setColumns(table, body, letters.head, lines);
    // What the smallest lettering has no room for no larger one has.
    if (!fits(setAt(bodyAt(sizes.at(-1) ?? letters.head), HEAD_LINES.at(-1) ?? 1))) continue;
    for (const size of sizes) {
      const body = bodyAt(size);
      for (const lines of HEAD_LINES) {
        const setting = setAt(body, lines);
        if (fits(setting)) return setting;
      }
    }
  }
  return undefined;
}

/** Each figure behind its head; large only what stands on one line. */
function tableInLines(
  table: Table,
  width: number,
  { head, large, box }: CardLettering,
  least: number,
): Placed {
  const sizeOf = (text: string, column: number): number =>
    isLarge(table, column) && textWidth(text, large, true) <= width ? large : head;
  const told = table.rows.map((row) =>
    inline(
      row.flatMap((cell, column) => [
        { text: table.heads[column] ?? "", height: head },
        typeof cell === "string"
          ? { text: cell, height: sizeOf(cell, column), bold: true }
          : boxPiece(cell.box, head, box),
      ]),
      width,
    ),
  );
  return { ...stack(told), least };
}

const isLarge = ({ large = [] }: Table, column: number): boolean => large.includes(column);

const acrossOf = (widths: readonly number[], between: number): number =>
  widths.reduce((sum, width) => sum + width, 0) + between * Math.max(0, widths.length - 1);

/** The rows in one lettering, large cells in so many lines at the most. */
function setBody(
  table: Table,
  { cell: figure, head, large, box }: CardLettering,
  largeLines: number,
): Setting["rows"] {
  // The first column names the row: it is not set larger than words.
  const nameSize = Math.min(figure, Math.max(head, KEY));
  const room = table.heads.map((_, column) =>
    isLarge(table, column)
      ? Math.max(0, ...table.rows.map((cells) => narrowest(cells[column] ?? "", large, largeLines)))
      : 0,
  );
  return table.rows.map((cells) =>
    cells.map((cell, column) =>
      typeof cell === "string" && isLarge(table, column)
        ? linesPiece(largeLinesOf(cell, large, room[column] ?? 0, largeLines), large, true)
        : typeof cell === "string"
          ? wordPiece(cleanText(cell), column === 0 ? nameSize : figure, column > 0)
          : boxPiece(cell.box, head, box),
    ),
  );
}

/** A large cell on as few lines as its column has room for. */
const largeLinesOf = (text: string, large: number, room: number, most: number): string[] =>
  fewestLines(afterPlus(cleanText(text)), "", large, room, most, true);

/** The least width that a large cell takes on so many lines, mm. */
const narrowest = (cell: CardCell, large: number, most: number): number =>
  typeof cell === "string"
    ? Math.max(...largeLinesOf(cell, large, 0, most).map((text) => textWidth(text, large, true)))
    : 0;

/** `8+0.5+2×0.2` where it may be parted: `8+`, `0.5+`, `2×0.2`; between two stops too. */
const afterPlus = (text: string): string[] => text.split(/(?<=\+|\bthen )/u);

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

/** A head broken into lines no wider than they must be for that many; a temperature keeps its unit. */
const headLinesOf = (head: string, label: number, least: number, most: number): string[] =>
  fewestLines(cleanText(head).split(/ (?!°)/u), " ", label, least, most);

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
