import { boxOfItems } from "../box.js";
import { type DrawingItem, lettering, moveItem } from "../drawing.js";
import type { Wish } from "../free-space.js";
import type { Part } from "../lay-out/part.js";
import { SMALL } from "../lettering-size.js";
import { textReach, textWidth } from "../text-metrics.js";

/** Items drawn in mm of their own as a part of a sheet; it is moved by whole mm only. */
export function partOf(name: string, items: readonly DrawingItem[], wish: Wish = "foot"): Part {
  const box = boxOfItems(items) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  const left = Math.floor(box.minX);
  const foot = Math.floor(box.minY);
  return {
    name,
    wish,
    width: Math.ceil(box.maxX) - left,
    height: Math.ceil(box.maxY) - foot,
    items: ({ x, y }) => items.map((item) => moveItem(item, x - left, y - foot)),
  };
}

/** One line of a block of lettering. */
export interface TextLine {
  readonly text: string;
  readonly height: number;
  readonly bold?: boolean;
}

/** Clear space between lines of a block, mm. */
const LEADING = 0.8;

/** A line of small lettering. */
export const small = (text: string): TextLine => ({ text, height: SMALL });

const lineRoom = ({ text, height }: TextLine): number => {
  const { over, under } = textReach(text, height);
  return over + under + LEADING;
};

/** Room that lines under one another take, mm. */
export const blockSize = (
  lines: readonly TextLine[],
): { readonly width: number; readonly height: number } => ({
  width: Math.max(0, ...lines.map(({ text, height, bold }) => textWidth(text, height, bold))),
  height: lines.reduce((sum, line) => sum + lineRoom(line), 0),
});

/** Lines under one another, flush left. */
export function textBlock(
  lines: readonly TextLine[],
  corner: { readonly left: number; readonly top: number },
): DrawingItem[] {
  let y = corner.top;
  return lines.map((line) => {
    const { over } = textReach(line.text, line.height);
    const at = { x: corner.left, y: y - over };
    y -= lineRoom(line);
    return lettering(line.text, at, { height: line.height, bold: line.bold === true });
  });
}
