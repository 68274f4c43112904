import { GeometryError } from "@scantling/geometry";
import { cleanText } from "../clean-text.js";
import type { Drawing, DrawingItem } from "../drawing.js";
import type { CardModel } from "../models/card-model.js";
import { bothWays, type PaperSize } from "../paper.js";
import { cardFoot, cardHead, cardTitle, type PageWords } from "./bench-card/head.js";
import { CARD_MARGIN, type CardPage, setCard } from "./bench-card/pages.js";

/**
 * The bench card: what is set on which tool, in the order of use, large and black, with boxes to write in. Each part of the
 * work has a page of its own, in the largest lettering in which it goes on one; where that would be small, the parts follow
 * one another without a break. No figure and no warning is ever shortened: a card that is too long has more pages.
 *
 * @param paper - The printer's paper; the card stands on it upright.
 * @throws {GeometryError} `sheet-too-large` where the paper is too small for a row of figures.
 *
 * @example
 * const card = { code: "K-1", title: "Petty", about: "1084", warnings: [], sides: [side], rule: "" };
 * benchCard(card, paperNamed("A4")).length; // 1
 */
export function benchCard(model: CardModel, paper: PaperSize): Drawing[] {
  const upright = bothWays(paper).at(-1) ?? paper;
  const set = setCard(model, upright);
  if (set === undefined) {
    throw new GeometryError(
      "sheet-too-large",
      `the bench card does not fit on paper of ${paper.width} × ${paper.height} mm`,
    );
  }
  const { pages, told } = set;
  return pages.map((page, index) =>
    drawCardPage(model, page, upright, { page: index + 1, count: pages.length, told }),
  );
}

function drawCardPage(
  model: CardModel,
  { sides, panels }: CardPage,
  paper: PaperSize,
  number: Omit<PageWords, "sides">,
): Drawing {
  const width = paper.width - 2 * CARD_MARGIN;
  const head = cardHead(model, width, { ...number, sides: sides.map(({ name }) => name) });
  const foot = cardFoot(model, sides, width);
  const group = (name: string, items: DrawingItem[]): DrawingItem => ({ kind: "group", name, items });
  return {
    width: paper.width,
    height: paper.height,
    ...(paper.name === undefined ? {} : { paper: paper.name }),
    ...(paper.correction === undefined ? {} : { correction: paper.correction }),
    origin: { x: 0, y: 0 },
    title: `${cardTitle(model) || "Knife"}: bench card, page ${number.page} of ${number.count}`,
    description: cleanText(
      sides
        .map(({ name, panels: all }) => `${name}: ${all.map((panel) => panel.title).join(", ")}.`)
        .join(" "),
    ),
    items: [
      group("head", head.items({ x: CARD_MARGIN, y: paper.height - CARD_MARGIN })),
      ...panels.map(({ panel, corner }, index) => group(`panel-${index + 1}`, panel.placed.items(corner))),
      group("foot", foot.items({ x: CARD_MARGIN, y: CARD_MARGIN + foot.height })),
    ],
  };
}
