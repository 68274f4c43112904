import { rectangle } from "../../drawing.js";
import type { CardBlock, CardFigure } from "../../models/card-model.js";
import { textWidth } from "../../text-metrics.js";
import { inline, wordLines } from "./inline.js";
import type { CardLettering } from "./lettering.js";
import { boxPiece, LEADING, type Piece, type Placed, stack } from "./placed.js";
import { cardTable } from "./table.js";

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
  }
}

/** Boxes to tick, what it is, the figure, the same in the other unit, a box to fill. */
function figureLine(given: CardFigure, width: number, letters: CardLettering): Placed {
  const { ticks = 0, label, figure, beside, boxes = [] } = given;
  const small = letters.label;
  return inline(
    [
      ...Array.from({ length: Math.min(ticks, MOST_TICKS) }, () => tickPiece(letters.words)),
      { text: label, height: small },
      ...(figure === undefined
        ? []
        : [{ text: figure, height: figureHeight(figure, width, letters), bold: true, whole: true }]),
      ...(beside === undefined ? [] : [{ text: beside, height: small }]),
      ...boxes.map((unit) => boxPiece(unit, letters.head, letters.box)),
    ],
    width,
  );
}

/** The largest in which it stands on one line. */
function figureHeight(figure: string, width: number, letters: CardLettering): number {
  const heights = [letters.figure, letters.heading, letters.words];
  return heights.find((height) => textWidth(figure, height, true) <= width) ?? letters.label;
}

/** More are not drawn before a figure. */
const MOST_TICKS = 6;

/** A small box on the base line. */
function tickPiece(height: number): Piece {
  const side = height + 0.5;
  return {
    width: side,
    over: side + LEADING / 2,
    under: LEADING / 2,
    draw: ({ x, y }) => [rectangle("thin", { x, y }, { x: x + side, y: y + side })],
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
