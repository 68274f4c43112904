import { cleanText } from "../../clean-text.js";
import { fitText } from "../../fit-text.js";
import { KEY, SMALL } from "../../lettering-size.js";
import type { CardModel } from "../../models/card-model.js";
import { textWidth } from "../../text-metrics.js";
import { wordLines } from "./inline.js";
import { beside, gap, line, type Placed, stack, wordPiece } from "./placed.js";

/** Between head or foot and the panels, mm. */
const AIR = 1.5;
/** Between what stands at the left of the head and what stands at the right, mm. */
const HEAD_GAP = 4;

/** Height of the title; where it does not fit it is smaller, on two lines at the most, then shortened. */
const TITLE = 5;
const TITLE_LINES = 2;

/** Warnings that take more than this are told once, in a panel before all others, mm. */
const MOST_WARNING = 26;
const STOPS_ON_FIRST = "STOP: read page 1 first.";

/** What is told of a page in its head. */
export interface PageWords {
  /** Part of the work that is on it. */
  readonly side: string;
  readonly page: number;
  readonly count: number;
}

/** Order and title, steel and sizes; part of the work, page, date; what cannot work as planned. */
export function cardHead(model: CardModel, width: number, { side, page, count }: PageWords): Placed {
  const right = [
    ...(side === "" ? [] : [wordPiece(side, KEY, true)]),
    wordPiece(`Page ${page} of ${count}   Date ____________`, SMALL),
  ];
  const rightWidth = Math.max(...right.map((piece) => piece.width));
  const left = width - rightWidth - HEAD_GAP;
  const warnings = areLong(model, width)
    ? wordLines(STOPS_ON_FIRST, width, KEY, true)
    : warningLines(model, width);
  return stack([
    beside(
      stack([titleLines(model, left), wordLines(model.about, left, SMALL, false)]),
      stack(right.map((piece) => line([piece]))),
      left + HEAD_GAP,
    ),
    warnings,
    gap(AIR),
  ]);
}

/** Whether the warnings are too long to stand on every page. */
export const areLong = (model: CardModel, width: number): boolean =>
  warningLines(model, width).height > MOST_WARNING;

const warningLines = ({ warnings }: CardModel, width: number): Placed =>
  stack(warnings.map((warning) => wordLines(warning, width, KEY, true)));

/** What an order is called: its code and title. */
export const cardTitle = ({ code, title }: CardModel): string => cleanText(`${code} ${title}`);

function titleLines(model: CardModel, width: number): Placed {
  const title = cardTitle(model) || "Bench card";
  const large = textWidth(title, TITLE, true) <= width;
  const texts = large ? [title] : fitText(title, KEY, width, TITLE_LINES, true);
  return stack(texts.map((text) => line([wordPiece(text, large ? TITLE : KEY, true)])));
}

/** Where the work can hurt someone. */
export const cardFoot = (caution: string, width: number): Placed =>
  stack([gap(AIR), wordLines(caution, width, SMALL, false)]);
