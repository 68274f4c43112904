import { rectangle } from "../../drawing.js";
import { fitText } from "../../fit-text.js";
import type { CardBlock, CardFigure } from "../../models/card-model.js";
import { textWidth } from "../../text-metrics.js";
import type { CardLettering } from "./lettering.js";
import { boxPiece, LEADING, line, PIECE_GAP, type Piece, type Placed, stack, wordPiece } from "./placed.js";
import { cardTable } from "./table.js";

/** Lines of words that a block may take; what is longer is cut off with dots. */
const MOST_LINES = 12;

/** A block of a panel, set to a width. */
export function cardBlock(block: CardBlock, width: number, letters: CardLettering): Placed {
  switch (block.kind) {
    case "words":
      return wordLines(block.text, width, letters.words, block.loud === true);
    case "figures":
      return stack(block.figures.map((figure) => figureLine(figure, width, letters)));
    case "table":
      return cardTable(block, width, letters);
    case "tally":
      return tally(block.count, width);
    case "steps":
      return stack(block.steps.map((step) => tickLine(step, width, letters)));
  }
}

/** Words broken into lines of a width. */
export const wordLines = (text: string, width: number, height: number, bold: boolean): Placed =>
  stack(
    fitText(text, height, width, MOST_LINES, bold).map((words) => line([wordPiece(words, height, bold)])),
  );

/** What it is, the figure, the same in the other unit, a box: on one line where they fit, else the label above. */
function figureLine(given: CardFigure, width: number, letters: CardLettering): Placed {
  const { label, figure, beside, box } = given;
  const fitted = (text: string, size: number, bold: boolean): Piece =>
    wordPiece(fitText(text, size, width, 1, bold).join(""), size, bold);
  const pieces = [
    ...(figure === undefined ? [] : [fitted(figure, figureHeight(figure, width, letters), true)]),
    ...(beside === undefined ? [] : [fitted(beside, letters.label, false)]),
    ...(box === undefined ? [] : [boxPiece(box, letters.label)]),
  ];
  const name = wordPiece(label, letters.label);
  if (widthOf([name, ...pieces]) <= width) return line([name, ...pieces]);
  return stack([
    wordLines(label, width, letters.label, false),
    ...rowsOf(pieces, width).map((row) => line(row)),
  ]);
}

/** The largest in which it stands on one line. */
function figureHeight(figure: string, width: number, letters: CardLettering): number {
  const heights = [letters.figure, letters.heading, letters.words];
  return heights.find((height) => textWidth(figure, height, true) <= width) ?? letters.label;
}

const widthOf = (pieces: readonly Piece[]): number =>
  pieces.reduce((sum, piece) => sum + piece.width, 0) + PIECE_GAP * (pieces.length - 1);

/** Pieces in as many lines as it takes. */
function rowsOf(pieces: readonly Piece[], width: number): Piece[][] {
  const rows: Piece[][] = [];
  for (const piece of pieces) {
    const row = rows.at(-1);
    if (row !== undefined && widthOf([...row, piece]) <= width) row.push(piece);
    else rows.push([piece]);
  }
  return rows;
}

/** A box to tick, and what to do. */
function tickLine(step: string, width: number, letters: CardLettering): Placed {
  const side = letters.words + 0.5;
  const indent = side + PIECE_GAP;
  const words = wordLines(step, width - indent, letters.words, false);
  return {
    height: words.height,
    items: ({ x, y }) => [
      rectangle("thin", { x, y: y - LEADING - side }, { x: x + side, y: y - LEADING }),
      ...words.items({ x: x + indent, y }),
    ],
  };
}

/** Side of a box that is struck off, and from one to the next, mm. */
const STRIKE = 5;
const STRIKE_PITCH = 7;
/** More are not drawn. */
const MOST_STRIKES = 40;

function tally(count: number, width: number): Placed {
  const inRow = Math.max(1, Math.floor((width + STRIKE_PITCH - STRIKE) / STRIKE_PITCH));
  const boxes = Array.from({ length: Math.min(count, MOST_STRIKES) }, (_, index) => ({
    left: (index % inRow) * STRIKE_PITCH,
    down: Math.floor(index / inRow) * STRIKE_PITCH,
  }));
  return {
    height: Math.ceil(boxes.length / inRow) * STRIKE_PITCH,
    items: ({ x, y }) =>
      boxes.map(({ left, down }) =>
        rectangle(
          "thin",
          { x: x + left, y: y - down - STRIKE - 0.5 },
          { x: x + left + STRIKE, y: y - down - 0.5 },
        ),
      ),
  };
}
