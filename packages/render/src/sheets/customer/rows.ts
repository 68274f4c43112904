import type { Vec2 } from "@scantling/geometry";
import { cleanText } from "../../clean-text.js";
import { type DrawingItem, lettering, strokes } from "../../drawing.js";
import { textReach, textWidth } from "../../text-metrics.js";
import { wordLines } from "../bench-card/inline.js";
import { gap, LEADING, type Placed, stack } from "../bench-card/placed.js";

/** Between two columns, and over and under a rule, mm. */
const BETWEEN = 4;
const RULE_AIR = 0.7;

/** A cell: its words, and whether they are bold. */
export interface Cell {
  readonly text: string;
  readonly bold?: boolean;
}

/** Rows of cells side by side, long words broken inside their column; columns as wide as shares of the width say. */
export function columns(
  rows: readonly (readonly Cell[])[],
  shares: readonly number[],
  width: number,
  height: number,
): Placed[] {
  const room = width - BETWEEN * (shares.length - 1);
  const lefts = shares.map(
    (_, index) => shares.slice(0, index).reduce((sum, share) => sum + share * room, 0) + BETWEEN * index,
  );
  return rows.map((cells): Placed => {
    // One letter of some scripts is a whole phrase: where it is wider than its column the cells stand under one another.
    const fits = cells.every(({ text }, index) => widestLetter(text, height) <= (shares[index] ?? 0) * room);
    if (!fits) return stack(cells.map(({ text, bold = false }) => wordLines(text, width, height, bold)));
    const placed = cells.map(({ text, bold = false }, index) =>
      wordLines(text, (shares[index] ?? 0) * room, height, bold),
    );
    return {
      height: Math.max(...placed.map((cell) => cell.height)),
      items: ({ x, y }) => placed.flatMap((cell, index) => cell.items({ x: x + (lefts[index] ?? 0), y })),
    };
  });
}

const widestLetter = (text: string, height: number): number =>
  Math.max(0, ...[...cleanText(text)].map((letter) => textWidth(letter, height, true)));

/** Names at the left, amounts flush right. */
export function amounts(
  rows: readonly { readonly what: string; readonly amount: string; readonly strong?: boolean }[],
  width: number,
  height: number,
): Placed[] {
  return rows.map(({ what, amount, strong = false }): Placed => {
    const name = wordLines(what, width - textWidth(amount, height, strong) - BETWEEN, height, strong);
    const { over, under } = textReach(amount, height);
    const figure = (at: Vec2): DrawingItem => lettering(amount, at, { height, bold: strong, anchor: "end" });
    const body: Placed = {
      height: Math.max(name.height, over + under + LEADING),
      items: ({ x, y }) => [...name.items({ x, y }), figure({ x: x + width, y: y - over - LEADING / 2 })],
    };
    return strong ? stack([rule(width), body]) : body;
  });
}

/** A thin line across. */
export const rule = (width: number, from = 0): Placed =>
  stack([
    gap(RULE_AIR),
    {
      height: 0,
      items: ({ x, y }) => [
        strokes("thin", [
          [
            { x: x + from, y },
            { x: x + width, y },
          ],
        ]),
      ],
    },
    gap(RULE_AIR),
  ]);
