import type { DrawingItem } from "../../drawing.js";
import type { PatternModel } from "../../pattern-model.js";
import { type TableContent, tableItems, tableSize } from "../../table.js";
import { TITLE_BLOCK_WIDTH, type TitleField, titleBlock, titleBlockHeight } from "../../title-block.js";
import { holeTable } from "./hole-table.js";
import { PRINT_NOTE, printNote } from "./print-note.js";
import { patternFields } from "./words.js";

/** Clear space between the parts, mm. */
const GAP = 8;

/** One way to lay out what stands along the foot of the sheet. */
export interface Foot {
  /** Room it takes at least, mm. */
  readonly width: number;
  readonly height: number;
  /** Draws it between two x, standing on y; the title block is flush with the right end. */
  readonly items: (place: FootPlace) => DrawingItem[];
}

export interface FootPlace {
  /** Lower left corner of the print note; whole mm. */
  readonly note: { readonly x: number; readonly y: number };
  /** Lower right corner of the title block. */
  readonly right: number;
  readonly bottom: number;
}

/** The ways to lay out the foot: the hole table between print note and title block, or over the title block. */
export function footLayouts(model: PatternModel): Foot[] {
  const fields = patternFields(model);
  const table = holeTable(model);
  if (table === undefined) return [withoutTable(fields, TITLE_BLOCK_WIDTH)];
  return [inRow(fields, table), stacked(fields, table)];
}

function withoutTable(fields: TitleField[][], width: number): Foot {
  return {
    width: PRINT_NOTE.width + GAP + width,
    height: Math.max(PRINT_NOTE.height, titleBlockHeight(fields, width)),
    items: ({ note, right, bottom }) => [
      ...printNote(note),
      ...titleBlock(fields, { x: right, y: bottom }, width),
    ],
  };
}

function inRow(fields: TitleField[][], table: TableContent): Foot {
  const rest = withoutTable(fields, TITLE_BLOCK_WIDTH);
  const size = tableSize(table);
  const top = Math.max(titleBlockHeight(fields, TITLE_BLOCK_WIDTH), size.height + GAP);
  return {
    width: rest.width + GAP + size.width,
    height: Math.max(rest.height, top),
    items: (place) => {
      const from = place.note.x + PRINT_NOTE.width;
      const to = place.right - TITLE_BLOCK_WIDTH;
      const left = (from + to - size.width) / 2;
      return [...rest.items(place), ...tableItems(table, { left, top: place.bottom + top })];
    },
  };
}

function stacked(fields: TitleField[][], table: TableContent): Foot {
  const size = tableSize(table);
  const width = Math.max(TITLE_BLOCK_WIDTH, size.width + GAP / 2);
  const rest = withoutTable(fields, width);
  const top = titleBlockHeight(fields, width) + GAP / 2 + size.height;
  return {
    width: rest.width,
    height: Math.max(rest.height, top),
    items: (place) => [
      ...rest.items(place),
      ...tableItems(table, { left: place.right - width, top: place.bottom + top }),
    ],
  };
}
