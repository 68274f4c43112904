import type { Vec2 } from "@scantling/geometry";
import { type DrawingItem, lettering, rectangle, strokes } from "./drawing.js";
import { fitText } from "./fit-text.js";
import { KEY, SMALL } from "./lettering-size.js";
import { textReach } from "./text-metrics.js";

/** One field of a title block: what it is, and what stands in it. */
export interface TitleField {
  readonly label: string;
  readonly value: string;
  /** Width as a share of the row. */
  readonly share: number;
  /** Lines that the value may take; 1 by default. */
  readonly lines?: number;
  readonly bold?: boolean;
}

type Row = readonly TitleField[];

/** Least width of a title block, mm. */
export const TITLE_BLOCK_WIDTH = 132;
const PADDING = 1.5;
/** Clear space between label and value and between lines, mm. */
const LEADING = 0.5;
/** From the top of a row to the base line of its labels, mm. */
const LABEL_BASE = PADDING + SMALL;

/**
 * A title block: rows of fields in a wide frame. Labels and values that do not fit
 * are wrapped or shortened, never set smaller.
 *
 * @param corner - lower right corner, mm.
 * @param width - mm, at least {@link TITLE_BLOCK_WIDTH}; the height follows, see {@link titleBlockHeight}.
 */
export function titleBlock(rows: readonly Row[], corner: Vec2, width: number): DrawingItem[] {
  const left = corner.x - width;
  let top = corner.y + titleBlockHeight(rows, width);
  const items: DrawingItem[] = [rectangle("frame", { x: left, y: corner.y }, { x: corner.x, y: top })];
  for (const [index, row] of rows.entries()) {
    const bottom = top - rowHeight(row, width);
    items.push(...rowItems(row, width, { x: left, y: top }, bottom));
    const isLast = index === rows.length - 1;
    if (!isLast) items.push(rule({ x: left, y: bottom }, { x: corner.x, y: bottom }));
    top = bottom;
  }
  return items;
}

/** Height of a title block with these rows, mm. */
export const titleBlockHeight = (rows: readonly Row[], width: number): number =>
  rows.reduce((sum, row) => sum + rowHeight(row, width), 0);

/**
 * Where a note of small lettering may end beside the label of a row's last field.
 *
 * @param row - counted from the top, from 0.
 */
export function titleNote(rows: readonly Row[], corner: Vec2, width: number, row: number): Vec2 {
  const height = titleBlockHeight(rows.slice(row), width);
  return { x: corner.x - PADDING, y: corner.y + height - LABEL_BASE };
}

const rule = (from: Vec2, to: Vec2): DrawingItem => strokes("thin", [[from, to]]);
const roomOf = ({ share }: TitleField, width: number): number => share * width - 2 * PADDING;
const linesOf = (field: TitleField, width: number): string[] =>
  fitText(field.value, KEY, roomOf(field, width), field.lines ?? 1, field.bold === true);

/** Lines of a row and how far its lettering reaches: one tall letter makes room in the whole row. */
function rowMeasure(row: Row, width: number): { lines: number; over: number; under: number } {
  const values = row.map((field) => linesOf(field, width));
  const reaches = values.flat().map((text) => textReach(text, KEY));
  return {
    lines: Math.max(...values.map((lines) => lines.length)),
    over: Math.max(...reaches.map((reach) => reach.over)),
    under: Math.max(...reaches.map((reach) => reach.under)),
  };
}

function rowHeight(row: Row, width: number): number {
  const { lines, over, under } = rowMeasure(row, width);
  return LABEL_BASE + textReach("", SMALL).under + lines * (LEADING + over + under) + PADDING / 2;
}

function rowItems(row: Row, width: number, corner: Vec2, bottom: number): DrawingItem[] {
  const { over, under } = rowMeasure(row, width);
  const items: DrawingItem[] = [];
  let x = corner.x;
  for (const [index, field] of row.entries()) {
    if (index > 0) items.push(rule({ x, y: corner.y }, { x, y: bottom }));
    let y = corner.y - LABEL_BASE;
    const label = fitText(field.label, SMALL, roomOf(field, width) + PADDING / 2, 1).join("");
    items.push(lettering(label, { x: x + PADDING, y }, { height: SMALL }));
    y -= textReach("", SMALL).under + LEADING + over;
    for (const text of linesOf(field, width)) {
      items.push(lettering(text, { x: x + PADDING, y }, { height: KEY, bold: field.bold === true }));
      y -= under + LEADING + over;
    }
    x += field.share * width;
  }
  return items;
}
