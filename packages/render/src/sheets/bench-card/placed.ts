import type { Vec2 } from "@scantling/geometry";
import { type DrawingItem, lettering, rectangle } from "../../drawing.js";
import { textReach, textWidth } from "../../text-metrics.js";

/** Something of known height that can be drawn at a place; mm. */
export interface Placed {
  readonly height: number;
  /** Width below which it does not go, where it would stand out of what it was set to. */
  readonly least?: number;
  /** Draws it below `corner`, its upper left corner. */
  readonly items: (corner: Vec2) => DrawingItem[];
}

/** Clear space between lines, mm. */
export const LEADING = 0.25;

/** One under the other. */
export function stack(parts: readonly Placed[]): Placed {
  return {
    height: parts.reduce((sum, { height }) => sum + height, 0),
    least: Math.max(0, ...parts.map(({ least = 0 }) => least)),
    items: ({ x, y }) => {
      let top = y;
      return parts.flatMap((part) => {
        const items = part.items({ x, y: top });
        top -= part.height;
        return items;
      });
    },
  };
}

/** One at the left, the other so far to the right; `x` in mm. */
export const beside = (left: Placed, right: Placed, x: number): Placed => ({
  height: Math.max(left.height, right.height),
  items: (corner) => [...left.items(corner), ...right.items({ x: corner.x + x, y: corner.y })],
});

/** Nothing, that high. */
export const gap = (height: number): Placed => ({ height, items: () => [] });

/** Something that stands on a base line beside others; mm. */
export interface Piece {
  readonly width: number;
  readonly over: number;
  readonly under: number;
  /** Draws it from a point of the base line to the right. */
  readonly draw: (at: Vec2) => DrawingItem[];
}

/** A word or figure. */
export const wordPiece = (text: string, height: number, bold = false): Piece => ({
  width: textWidth(text, height, bold),
  ...textReach(text, height),
  draw: (at) => [lettering(text, at, { height, bold })],
});

/** The same in lines under one another, flush right; the first stands on the base line. */
export function linesPiece(lines: readonly string[], height: number, bold = false): Piece {
  const pieces = lines.map((text) => wordPiece(text, height, bold));
  const width = Math.max(0, ...pieces.map((piece) => piece.width));
  const over = Math.max(0, ...pieces.map((piece) => piece.over));
  const under = Math.max(0, ...pieces.map((piece) => piece.under));
  // Lines that only just touch may overlap by the last digit of a double.
  const pitch = over + under + LEADING / 2;
  return {
    width,
    over,
    under: under + pitch * Math.max(0, pieces.length - 1),
    draw: ({ x, y }) =>
      pieces.flatMap((piece, index) => piece.draw({ x: x + width - piece.width, y: y - index * pitch })),
  };
}

/** Room for a pencil, mm; a quarter of its height lies below the base line. */
const BOX_WIDTH = 18;
/** Between a box and its unit, mm. */
const UNIT_GAP = 1;

/** An empty box with its unit behind it, `height` the lettering's, `side` the box's. */
export function boxPiece(unit: string, height: number, side: number): Piece {
  const { over, under } = textReach(unit, height);
  const foot = side / 4;
  return {
    width: BOX_WIDTH + (unit === "" ? 0 : UNIT_GAP + textWidth(unit, height)),
    over: Math.max(over, side - foot + LEADING / 2),
    under: Math.max(under, foot + LEADING / 2),
    draw: ({ x, y }) => [
      rectangle("thin", { x, y: y - foot }, { x: x + BOX_WIDTH, y: y - foot + side }),
      ...(unit === "" ? [] : [lettering(unit, { x: x + BOX_WIDTH + UNIT_GAP, y }, { height })]),
    ],
  };
}

/** Between two pieces of a line, mm. */
export const PIECE_GAP = 2;

/** Of pieces one after the other. */
export const widthOf = (pieces: readonly Piece[]): number =>
  pieces.reduce((sum, { width }) => sum + width, 0) + PIECE_GAP * (pieces.length - 1);

/** Pieces beside one another, `lefts` from the left each; one after the other where that is left out. */
export function line(pieces: readonly Piece[], lefts?: readonly number[]): Placed {
  const over = Math.max(0, ...pieces.map((piece) => piece.over));
  const under = Math.max(0, ...pieces.map((piece) => piece.under));
  return {
    height: over + under + LEADING,
    items: ({ x, y }) => {
      let next = 0;
      return pieces.flatMap((piece, index) => {
        const left = lefts?.[index] ?? next;
        next = left + piece.width + PIECE_GAP;
        return piece.draw({ x: x + left, y: y - over - LEADING / 2 });
      });
    },
  };
}
