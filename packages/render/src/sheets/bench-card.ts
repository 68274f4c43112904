import { GeometryError } from "@scantling/geometry";
import { cleanText } from "../clean-text.js";
import type { Drawing, DrawingItem } from "../drawing.js";
import { fitText } from "../fit-text.js";
import { KEY, SMALL } from "../lettering-size.js";
import type { CardModel, CardSide } from "../models/card-model.js";
import { bothWays, type PaperSize } from "../paper.js";
import { wordLines } from "./bench-card/block.js";
import { type Area, columnWidth, flowPanels, type PlacedPanel } from "./bench-card/flow.js";
import { CARD_LETTERINGS, type CardLettering } from "./bench-card/lettering.js";
import { cardPanel } from "./bench-card/panel.js";
import { gap, line, type Placed, stack, wordPiece } from "./bench-card/placed.js";

/** White about the card, mm: what most printers need. */
const MARGIN = 7;
const TITLE = 5;

/** A card that is longer than its two sides of paper is no card. */
const WANTED_PAGES = 2;

/**
 * The bench card: what is set on which tool, in the order of use, large and black, with boxes to write in. Each side of the
 * work begins a page of its own, in the largest lettering with which the card keeps to two pages. Where it does not, the
 * sides follow one another without a break, in the largest lettering that gives the fewest pages.
 *
 * @param paper - The printer's paper; the card stands on it upright.
 * @throws {GeometryError} `sheet-too-large` where a panel is larger than the paper.
 *
 * @example
 * const pages = benchCard(card, { name: "A4", width: 210, height: 297 });
 */
export function benchCard(model: CardModel, paper: PaperSize): Drawing[] {
  const upright = bothWays(paper).at(-1) ?? paper;
  const settings = [true, false].flatMap((parted) =>
    CARD_LETTERINGS.map((letters) => () => setCard(model, upright, letters, parted)),
  );
  let best: CardPage[] | undefined;
  for (const set of settings) {
    const pages = set();
    if (pages !== undefined && pages.length < (best?.length ?? Number.POSITIVE_INFINITY)) best = pages;
    if (best !== undefined && best.length <= WANTED_PAGES) break;
  }
  if (best === undefined) {
    throw new GeometryError(
      "sheet-too-large",
      `the bench card does not fit on paper of ${paper.width} × ${paper.height} mm`,
    );
  }
  const count = best.length;
  return best.map((page, index) => drawCardPage(model, page, upright, { page: index + 1, count }));
}

/** A page with its panels, and which side of the work is on it. */
interface CardPage {
  readonly sides: readonly CardSide[];
  readonly panels: readonly PlacedPanel[];
}

/** All sides in one lettering, panels numbered through; undefined where a panel finds no page. */
function setCard(
  model: CardModel,
  paper: PaperSize,
  letters: CardLettering,
  parted: boolean,
): CardPage[] | undefined {
  const area = panelArea(model, paper);
  const narrow = columnWidth(area);
  const width = area.right - area.left;
  const panels = model.sides
    .flatMap((side) => side.panels.map((panel) => ({ side, panel })))
    .map(({ side, panel }, index) => {
      const inColumn = cardPanel(panel, index + 1, narrow, letters);
      return {
        side,
        narrow: inColumn,
        whole: cardPanel(panel, index + 1, width, letters),
        wide: panel.wide === true || (inColumn.least ?? 0) > narrow,
      };
    });
  const runs = parted ? model.sides.map((one) => panels.filter(({ side }) => side === one)) : [panels];
  const pages: CardPage[] = [];
  for (const run of runs) {
    const placed = flowPanels(run, area);
    if (placed === undefined) return undefined;
    for (const page of placed) {
      const shown = new Set(page.map((one) => one.placed));
      const on = run.filter((one) => shown.has(one.narrow) || shown.has(one.whole));
      pages.push({ panels: page, sides: [...new Set(on.map(({ side }) => side))] });
    }
  }
  return pages;
}

/** What is left of a page between head and foot. */
function panelArea(model: CardModel, paper: PaperSize): Area {
  const width = paper.width - 2 * MARGIN;
  return {
    left: MARGIN,
    right: paper.width - MARGIN,
    top: paper.height - MARGIN - cardHead(model, "", width, { page: 9, count: 9 }).height,
    bottom: MARGIN + cardFoot(model, width).height,
  };
}

/** Between the pieces at the right of the head, mm. */
const HEAD_GAP = 4;

function cardHead(
  model: CardModel,
  side: string,
  width: number,
  { page, count }: { page: number; count: number },
): Placed {
  const title = cleanText(`${model.code}  ${model.title}`) || "Bench card";
  return stack([
    headLine(title, TITLE, ["Date ______________"], width),
    headLine(model.about, SMALL, [side, `Page ${page} of ${count}`], width),
    ...model.warnings.map((warning) => wordLines(warning, width, KEY, true)),
    gap(AIR),
  ]);
}

/** Words at the left, shortened where they must be, and others at the right. */
function headLine(left: string, height: number, right: readonly string[], width: number): Placed {
  const pieces = right.map((text) => wordPiece(text, SMALL));
  const starts = pieces.map((_, index) =>
    pieces.slice(index).reduce((start, piece, n) => start - piece.width - (n === 0 ? 0 : HEAD_GAP), width),
  );
  const bold = height > SMALL;
  const shown = fitText(left, height, (starts[0] ?? width) - HEAD_GAP, 1, bold).join("");
  return line([wordPiece(shown, height, bold), ...pieces], [0, ...starts]);
}

/** Between head or foot and the panels, mm. */
const AIR = 1.5;

const cardFoot = (model: CardModel, width: number): Placed =>
  stack([gap(AIR), wordLines(model.caution, width, SMALL, false)]);

function drawCardPage(
  model: CardModel,
  { sides, panels }: CardPage,
  paper: PaperSize,
  number: { page: number; count: number },
): Drawing {
  const width = paper.width - 2 * MARGIN;
  const foot = cardFoot(model, width);
  const names = sides.map(({ name }) => name).join(", ");
  const items: DrawingItem[] = [
    {
      kind: "group",
      name: "head",
      items: cardHead(model, names, width, number).items({ x: MARGIN, y: paper.height - MARGIN }),
    },
    ...panels.map(
      ({ placed, corner }, index): DrawingItem => ({
        kind: "group",
        name: `panel-${index + 1}`,
        items: placed.items(corner),
      }),
    ),
    { kind: "group", name: "foot", items: foot.items({ x: MARGIN, y: MARGIN + foot.height }) },
  ];
  const title = cleanText(`${model.code} ${model.title}`) || "Knife";
  return {
    width: paper.width,
    height: paper.height,
    ...(paper.name === undefined ? {} : { paper: paper.name }),
    ...(paper.correction === undefined ? {} : { correction: paper.correction }),
    origin: { x: 0, y: 0 },
    title: `${title}: bench card, page ${number.page} of ${number.count}`,
    description: cleanText(
      sides
        .map(({ name, panels: all }) => `${name}: ${all.map((panel) => panel.title).join(", ")}.`)
        .join(" "),
    ),
    items,
  };
}
