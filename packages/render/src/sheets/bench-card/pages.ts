import type { CardModel, CardSide } from "../../models/card-model.js";
import type { PaperSize } from "../../paper.js";
import { type Area, type FlowPanel, flowPanels, type PlacedPanel } from "./flow.js";
import { cardFoot, cardHead, type Told, waysToTell } from "./head.js";
import { CARD_LETTERINGS, type CardLettering, LEAST_FIGURES } from "./lettering.js";
import { type Numbered, panelSetter, type SetPanel } from "./set-panel.js";

/** White about the card, mm: what most printers need. */
export const CARD_MARGIN = 7;

/** A card that is longer than its two sides of paper is no card. */
const WANTED_PAGES = 2;

/** A page with its panels, and which parts of the work are on it. */
export interface CardPage {
  readonly sides: readonly CardSide[];
  readonly panels: readonly PlacedPanel[];
}

/** A card on its pages. */
export interface SetCard {
  readonly told: Told;
  readonly pages: readonly CardPage[];
}

/**
 * The panels of a card over its pages. Each part of the work has a page of its own, in the largest lettering in which it
 * goes on one. Where one does not, or only with small figures, the parts follow one another without a break, in the
 * largest lettering that keeps them to two pages: panels whole where they can be, else going on in the next column. What
 * cannot work is told on every page, unless that takes a third one.
 *
 * @returns undefined where a row or a figure alone is higher than a page.
 */
export function setCard(model: CardModel, paper: PaperSize): SetCard | undefined {
  let best: SetCard | undefined;
  for (const told of waysToTell(model, paper.width - 2 * CARD_MARGIN)) {
    const pages = cardPages(model, paper, told);
    if (pages === undefined) continue;
    if (best === undefined || pages.length < best.pages.length) best = { told, pages };
    if (best.pages.length <= WANTED_PAGES) break;
  }
  return best;
}

function cardPages(model: CardModel, paper: PaperSize, told: Told): CardPage[] | undefined {
  const area = panelArea(model, model.sides, paper, told);
  const panels = numberedPanels(model, told);
  const set = panelSetter(area);
  const run = runSetter(panels, { area, set });
  // What takes far more pages in the smallest lettering is not tried in every other; one more may be ill luck in parting.
  const [smallest] = CARD_LETTERINGS.slice(-1);
  const least = smallest === undefined ? undefined : run(smallest, true)?.length;
  if (least === undefined) return undefined;
  const largest = (mayPart: boolean, most: number, letterings = CARD_LETTERINGS): CardPage[] | undefined =>
    first(letterings, (letters) => {
      const pages = run(letters, mayPart);
      return pages !== undefined && pages.length <= most ? pages : undefined;
    });
  const clear = CARD_LETTERINGS.slice(0, LEAST_FIGURES);
  // Where a third page is taken there is room for panels that are whole.
  const longer = (): CardPage[] | undefined => largest(false, least, clear) ?? largest(true, least);
  if (least > WANTED_PAGES + 1) return longer();
  const sides = model.sides.flatMap((side) => {
    const own = panels.filter((one) => one.side === side);
    return own.length === 0 ? [] : [runSetter(own, { area: panelArea(model, [side], paper, told), set })];
  });
  const apart = (letterings: readonly CardLettering[]): CardPage[] | undefined => {
    const each = sides.map((side) =>
      first(letterings, (letters) => {
        const pages = side(letters, false);
        return pages?.length === 1 ? pages : undefined;
      }),
    );
    return each.length <= WANTED_PAGES && each.every((pages) => pages !== undefined)
      ? each.flat()
      : undefined;
  };
  // Smaller figures only where no way of setting the larger ones will do.
  const counts = CARD_LETTERINGS.map((_, index) => index + 1).filter((count) => count >= LEAST_FIGURES);
  const wanted = first(counts, (count) => {
    const letterings = CARD_LETTERINGS.slice(0, count);
    return (
      apart(letterings) ?? largest(false, WANTED_PAGES, letterings) ?? largest(true, WANTED_PAGES, letterings)
    );
  });
  return wanted ?? longer();
}

function first<T, R>(all: readonly T[], of: (one: T) => R | undefined): R | undefined {
  for (const one of all) {
    const made = of(one);
    if (made !== undefined) return made;
  }
  return undefined;
}

/** All panels in the order of use, numbered; before them what cannot work, where that is told once. */
function numberedPanels(model: CardModel, told: Told): Numbered[] {
  const [side] = model.sides;
  const stop: Numbered[] =
    side !== undefined && told === "first-page"
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

/** Panels over pages, in a lettering; undefined where one goes on none. */
type SetRun = (letters: CardLettering, mayPart: boolean) => CardPage[] | undefined;

/** Room for panels, and how they are set for its width. */
interface Page {
  readonly area: Area;
  readonly set: SetPanel;
}

/** The same panels in any lettering, each set once. */
function runSetter(panels: readonly Numbered[], { area, set }: Page): SetRun {
  const known = new Map<string, CardPage[] | undefined>();
  return (letters, mayPart) => {
    const key = `${CARD_LETTERINGS.indexOf(letters)} ${mayPart}`;
    if (!known.has(key))
      known.set(
        key,
        setRun(
          panels.map((one) => set(one, letters)),
          area,
          mayPart,
        ),
      );
    return known.get(key);
  };
}

const setRun = (panels: readonly FlowPanel[], area: Area, mayPart: boolean): CardPage[] | undefined =>
  flowPanels(panels, area, mayPart)?.map((placed) => ({
    panels: placed,
    sides: [...new Set(placed.map(({ panel }) => panel.side))],
  }));

/** What is left of a page between head and foot, whichever of the sides are on it. */
function panelArea(model: CardModel, sides: readonly CardSide[], paper: PaperSize, told: Told): Area {
  const width = paper.width - 2 * CARD_MARGIN;
  const pages = [sides, ...sides.map((one) => [one])];
  const heads = pages.map((on) =>
    cardHead(model, width, { sides: on.map(({ name }) => name), page: 99, count: 99, told }),
  );
  return {
    left: CARD_MARGIN,
    right: paper.width - CARD_MARGIN,
    top: paper.height - CARD_MARGIN - Math.max(...heads.map(({ height }) => height)),
    bottom: CARD_MARGIN + Math.max(...pages.map((on) => cardFoot(model, on, width).height)),
  };
}
