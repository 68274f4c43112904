import { cleanText } from "../../clean-text.js";
import { fitText } from "../../fit-text.js";
import { KEY, SMALL } from "../../lettering-size.js";
import type { CardModel, CardSide } from "../../models/card-model.js";
import { textWidth } from "../../text-metrics.js";
import { wordLines } from "./inline.js";
import { beside, gap, line, type Piece, type Placed, stack, widthOf, wordPiece } from "./placed.js";

/** Between head or foot and the panels, mm. */
const AIR = 1.5;
/** Between what stands at the left of the head and what stands at the right, mm. */
const HEAD_GAP = 4;

/** Height of the title; where it does not fit it is smaller, on two lines at the most, then shortened. */
const TITLE = 5;
const TITLE_LINES = 2;

/** Where warnings are told: on every page, or once, in a panel before all others. */
export type Told = "every-page" | "first-page";

/** Warnings that take more than this are told once, mm. */
const MOST_WARNING = 26;
const STOPS_ON_FIRST = "STOP: read page 1 first.";
const STOPS_BELOW = "STOP: read what stands first below.";

/** What is told of a page in its head. */
export interface PageWords {
  /** Parts of the work that are on it. */
  readonly sides: readonly string[];
  readonly page: number;
  readonly count: number;
  readonly told: Told;
}

/** Order and title, part of the work; steel and sizes, page and date; what cannot work as planned. */
export function cardHead(model: CardModel, width: number, { sides, page, count, told }: PageWords): Placed {
  const names = wordPiece(sidesLine(sides), KEY, true);
  const pageLine = (text: string): Piece[] => [wordPiece(text, SMALL), wordPiece("Date ____________", SMALL)];
  // The same for every page number, so that what is left of the page does not hang on it.
  const pageWidth = widthOf(pageLine("Page 99 of 99"));
  const warnings =
    told === "first-page"
      ? wordLines(page === 1 ? STOPS_BELOW : STOPS_ON_FIRST, width, KEY, true)
      : warningLines(model, width);
  return stack([
    beside(titleLines(model, width - names.width - HEAD_GAP), line([names]), width - names.width),
    beside(
      wordLines(model.about, width - pageWidth - HEAD_GAP, SMALL, false),
      line(pageLine(`Page ${page} of ${count}`)),
      width - pageWidth,
    ),
    ...(model.warnings.length === 0 ? [] : [gap(AIR / 2), warnings]),
    gap(AIR),
  ]);
}

/** `At the forge, bench`: what parts of the work are called alike is told once. */
export function sidesLine([first = "", ...more]: readonly string[]): string {
  const alike = first.slice(0, first.lastIndexOf(" ") + 1);
  return [first, ...more.map((name) => (name.startsWith(alike) ? name.slice(alike.length) : name))].join(
    ", ",
  );
}

/** Where warnings may be told, the best way first. */
export function waysToTell(model: CardModel, width: number): readonly Told[] {
  if (model.warnings.length === 0) return ["every-page"];
  return warningLines(model, width).height > MOST_WARNING ? ["first-page"] : ["every-page", "first-page"];
}

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

/** All that can hurt someone in the work of a page, each once. */
export function cardFoot({ rule }: CardModel, sides: readonly CardSide[], width: number): Placed {
  const all = [...new Set(sides.flatMap((side) => side.hazards))];
  // `hot steel` is told by `hot steel and scale`.
  const hazards = all.filter((one) => !all.some((other) => other !== one && other.startsWith(one)));
  const words = [...(hazards.length === 0 ? [] : [`Take care: ${hazards.join(", ")}.`]), rule].join(" ");
  return stack([gap(AIR), wordLines(words, width, SMALL, false)]);
}
