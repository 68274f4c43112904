import { type DrawingItem, lettering, moveItem, type TextAnchor, type TextItem } from "../drawing.js";
import { fitText } from "../fit-text.js";
import { SMALL } from "../lettering-size.js";
import { textReach, textWidth } from "../text-metrics.js";

/** Something as wide as a plot that stands under what is above it; mm, with 0, 0 at its upper left corner and y up. */
export interface Block {
  readonly height: number;
  readonly items: readonly DrawingItem[];
}

/** Clear space between lines of lettering, mm. */
const LEADING = 0.4;
/** Most lines of one paragraph. */
const MOST_LINES = 6;

/** Blocks one under the other as one. */
export function stackBlocks(blocks: readonly Block[]): Block {
  let height = 0;
  const items: DrawingItem[] = [];
  for (const block of blocks) {
    for (const item of block.items) items.push(moveItem(item, 0, -height));
    height += block.height;
  }
  return { height, items };
}

/** Clear space, mm. */
export const gap = (height: number): Block => ({ height, items: [] });

/** A paragraph, flush left, broken into lines as wide as the plot. */
export function paragraph(text: string, width: number, height = SMALL): Block {
  return stackBlocks(
    fitText(text, height, width, MOST_LINES).map((line) => lineBlock([line], width, height)),
  );
}

/** Clear space between what stands left and what stands right, mm. */
const BETWEEN = 2;

/** A line of lettering: what stands left, and what stands right; on two lines where one has no room for both. */
export function lineBlock(
  [left, right]: readonly [left: string, right?: string],
  width: number,
  height = SMALL,
): Block {
  if (right === undefined) return oneLine(left, { x: 0, anchor: "start" }, height);
  const end = oneLine(right, { x: width, anchor: "end" }, height);
  if (left === "") return end;
  const start = oneLine(left, { x: 0, anchor: "start" }, height);
  if (textWidth(left, height) + BETWEEN + textWidth(right, height) > width) return stackBlocks([start, end]);
  // Both on one base line: that of the taller lettering.
  const base = Math.max(start.base, end.base);
  return {
    height: base + Math.max(start.height - start.base, end.height - end.base),
    items: [...start.items, ...end.items].map((item) => ({ ...item, at: { ...item.at, y: -base } })),
  };
}

/** @returns with how far the base line lies under the top, mm. */
function oneLine(
  text: string,
  place: { readonly x: number; readonly anchor: TextAnchor },
  height: number,
): Block & { readonly base: number; readonly items: readonly TextItem[] } {
  const { over, under } = textReach(text, height);
  const base = over + LEADING / 2;
  return {
    height: base + under + LEADING / 2,
    base,
    items: [lettering(text, { x: place.x, y: -base }, { height, anchor: place.anchor })],
  };
}
