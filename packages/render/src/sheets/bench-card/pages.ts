import type { CardModel, CardPanel, CardSide } from "../../models/card-model.js";
import type { PaperSize } from "../../paper.js";
import { type Area, columnWidth, type FlowPanel, flowPanels, type PlacedPanel } from "./flow.js";
import { areLong, cardFoot, cardHead } from "./head.js";
import { CARD_LETTERINGS, type CardLettering, LEAST_FIGURES } from "./lettering.js";
import { cardPanel, panelParts } from "./panel.js";

/** White about the card, mm: what most printers need. */
export const CARD_MARGIN = 7;

/** A card that is longer than its two sides of paper is no card. */
const WANTED_PAGES = 2;

/** A page with its panels, and which parts of the work are on it. */
export interface CardPage {
  readonly sides: readonly CardSide[];
  readonly panels: readonly PlacedPanel[];
}

/** A panel with the part of the work that it belongs to, numbered. */
interface Numbered {
  readonly side: CardSide;
  readonly panel: CardPanel;
}

/**
 * The panels of a card over its pages. Each part of the work has a page of its own, in the largest lettering in which it
 * goes on one. Where one does not, or only with small figures, the parts follow one another without a break, in the
 * largest lettering that keeps them to two pages, or else gives the fewest.
 *
 * @returns undefined where a row or a figure alone is higher than a page.
 */
export function cardPages(model: CardModel, paper: PaperSize): CardPage[] | undefined {
  const area = panelArea(model, model.sides, paper);
  const panels = numberedPanels(model, area);
  const set = panelSetter(area);
  const page: Page = { area, set };
  const runs = model.sides
    .map((side) => panels.filter((one) => one.side === side))
    .filter((run) => run.length > 0);
  const parted = (letterings: readonly CardLettering[]): CardPage[] | undefined => {
    const each = runs.map((run) => {
      const own = panelArea(
        model,
        run.slice(0, 1).map(({ side }) => side),
        paper,
      );
      return first(letterings, (letters) => onePage(run, { area: own, set }, letters));
    });
    return each.every((pages) => pages !== undefined) && each.length <= WANTED_PAGES
      ? each.flat()
      : undefined;
  };
  const running = (letterings: readonly CardLettering[]): CardPage[] | undefined =>
    first(letterings, (letters) => {
      const pages = setRun(panels, page, letters);
      return pages !== undefined && pages.length <= WANTED_PAGES ? pages : undefined;
    });
  const clear = CARD_LETTERINGS.slice(0, LEAST_FIGURES);
  return (
    parted(clear) ??
    running(clear) ??
    parted(CARD_LETTERINGS) ??
    running(CARD_LETTERINGS) ??
    fewestPages(panels, page)
  );
}

function first<T, R>(all: readonly T[], of: (one: T) => R | undefined): R | undefined {
  for (const one of all) {
    const made = of(one);
    if (made !== undefined) return made;
  }
  return undefined;
}

/** Where no lettering keeps to two pages. */
function fewestPages(panels: readonly Numbered[], page: Page): CardPage[] | undefined {
  const all = CARD_LETTERINGS.flatMap((letters) => {
    const pages = setRun(panels, page, letters);
    return pages === undefined ? [] : [pages];
  });
  const least = Math.min(...all.map((pages) => pages.length));
  return all.find((pages) => pages.length === least);
}

function onePage(run: readonly Numbered[], page: Page, letters: CardLettering): CardPage[] | undefined {
  const pages = setRun(run, page, letters);
  return pages?.length === 1 ? pages : undefined;
}

/** All panels in the order of use, numbered; before them what cannot work, where that is long. */
function numberedPanels(model: CardModel, area: Area): Numbered[] {
  const [side] = model.sides;
  const stop: Numbered[] =
    side !== undefined && areLong(model, area.right - area.left)
      ? [{ side, panel: { title: "STOP", wide: true, blocks: model.warnings.map(loud) } }]
      : [];
  const panels = model.sides.flatMap((one) => one.panels.map((panel) => ({ side: one, panel })));
  return [
    ...stop,
    ...panels.map(({ side: own, panel }, index) => ({
      side: own,
      panel: { ...panel, title: `${index + 1}  ${panel.title}` },
    })),
  ];
}

const loud = (text: string) => ({ kind: "words", text, loud: true }) as const;

function setRun(run: readonly Numbered[], page: Page, letters: CardLettering): CardPage[] | undefined {
  const owners = new Map<FlowPanel, CardSide>();
  for (const { side, panel } of run) {
    const parts = flowParts(panel, page, letters);
    if (parts === undefined) return undefined;
    for (const part of parts) owners.set(part, side);
  }
  return flowPanels([...owners.keys()], page.area)?.map((panels) => {
    const sides = panels.flatMap(({ panel }) => owners.get(panel) ?? []);
    return { panels, sides: [...new Set(sides)] };
  });
}

type SetPanel = (panel: CardPanel, letters: CardLettering) => FlowPanel;

/** Room for panels, and how they are set for its width. */
interface Page {
  readonly area: Area;
  readonly set: SetPanel;
}

/** As narrow as a column where a panel's figures stand in one beside one another, else as wide as the page; each set once. */
function panelSetter(area: Area): SetPanel {
  const narrow = columnWidth(area);
  const known = new Map<CardLettering, Map<CardPanel, FlowPanel>>(
    CARD_LETTERINGS.map((letters) => [letters, new Map()]),
  );
  return (panel, letters) => {
    const before = known.get(letters)?.get(panel);
    if (before !== undefined) return before;
    const inColumn = panel.wide === true ? undefined : cardPanel(panel, narrow, letters);
    const fits = inColumn !== undefined && (inColumn.least ?? 0) <= narrow;
    const made = fits
      ? { placed: inColumn, wide: false }
      : { placed: cardPanel(panel, area.right - area.left, letters), wide: true };
    known.get(letters)?.set(panel, made);
    return made;
  };
}

/** A panel in several parts where it is higher than a page: as wide as it is, else as wide as the page. */
function flowParts(panel: CardPanel, { area, set }: Page, letters: CardLettering): FlowPanel[] | undefined {
  const full = area.top - area.bottom;
  const one = set(panel, letters);
  if (one.placed.height <= full) return [one];
  const partsAs = (wide: boolean): FlowPanel[] | undefined => {
    const width = wide ? area.right - area.left : columnWidth(area);
    const parts = panelParts(panel, full, width, letters);
    return parts?.map((part) => ({ placed: cardPanel(part, width, letters), wide }));
  };
  return partsAs(one.wide) ?? (one.wide ? undefined : partsAs(true));
}

/** What is left of a page between head and foot, whichever of the sides are on it. */
function panelArea(model: CardModel, sides: readonly CardSide[], paper: PaperSize): Area {
  const width = paper.width - 2 * CARD_MARGIN;
  const pages = [sides, ...sides.map((one) => [one])];
  const heads = pages.map((on) =>
    cardHead(model, width, { sides: on.map(({ name }) => name), page: 99, count: 99 }),
  );
  return {
    left: CARD_MARGIN,
    right: paper.width - CARD_MARGIN,
    top: paper.height - CARD_MARGIN - Math.max(...heads.map(({ height }) => height)),
    bottom: CARD_MARGIN + Math.max(...pages.map((on) => cardFoot(model, on, width).height)),
  };
}
