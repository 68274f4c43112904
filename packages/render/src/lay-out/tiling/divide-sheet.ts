import type { Bounds } from "@scantling/geometry";
import type { Drawing } from "../../drawing.js";
import type { PaperSize } from "../../paper.js";
import type { SheetContent, SheetView } from "../sheet-content.js";
import { type BesidePlace, besidePart, besideTitle, gridsBeside, placeBeside } from "./beside-view.js";
import { type RankedGrid, tiledInk } from "./choose-grid.js";
import { coverPages } from "./cover-pages.js";
import { type TileGrid, tilesOf } from "./grid.js";
import { joinWords } from "./join-words.js";
import { markPlaces } from "./marks.js";
import { pageMap } from "./page-map.js";
import { slideFigures } from "./slide-figures.js";
import type { TileFrame } from "./tile-frame.js";
import type { TiledSheet } from "./tile-page.js";

/** How a view is divided, and how the paper lies for that. */
export interface Way extends RankedGrid {
  readonly paper: PaperSize;
  readonly frame: TileFrame;
}

/** How a view is best divided, the same for every sheet that shows it. */
export interface Division {
  readonly way: Way;
  /** The box about all that is drawn, view mm. */
  readonly zone: Bounds;
  /** The view on windows like those of the way, or shifted. */
  readonly viewOn: (grid: TileGrid) => TiledView;
}

type TiledView = Omit<TiledSheet, "content">;

/** Divides a view that way; on the same windows it is drawn once. */
export function divisionIn(view: SheetView, way: Way, zone: Bounds): Division {
  const known = new Map<string, TiledView>();
  return {
    way,
    zone,
    viewOn: (grid) => {
      const key = `${grid.left} ${grid.top}`;
      const before = known.get(key);
      if (before !== undefined) return before;
      const made = viewOn(view, way, grid);
      known.set(key, made);
      return made;
    },
  };
}

/** A sheet on its pages: the pages in front, and what stands beside the view on each of the others. */
export interface DividedSheet {
  readonly sheet: TiledSheet;
  readonly cover: readonly Drawing[];
  readonly beside: readonly (readonly BesidePlace[])[];
}

/** Widths of the map beside the view, mm: there it is at hand, and need show no more than which page lies where. */
const MAPS = [100, 70] as const;

/**
 * Title block, map, steps of joining and all parts on the pages of the view: no page is cut, laid and kept for words alone.
 *
 * @returns undefined where something finds no room.
 */
export function allBeside(
  content: SheetContent,
  view: SheetView,
  { way, zone, viewOn }: Division,
): DividedSheet | undefined {
  const parts = content.parts.map(besidePart);
  for (const grid of gridsBeside(way.grid, zone)) {
    const sheet = { content, ...viewOn(grid) };
    const isJoined = tilesOf(grid).length > 1;
    for (const widest of isJoined ? MAPS : MAPS.slice(0, 1)) {
      const joined = isJoined ? [joinWords(grid, content.units), pageMap(grid, view, widest)] : [];
      const beside = placeBeside(sheet, [besideTitle(content), ...joined.map(besidePart), ...parts]);
      if (beside !== undefined) return { sheet, cover: [], beside };
    }
  }
  return undefined;
}

/**
 * Title block, map and steps of joining on a page in front, with the parts; where that would take more than one page, as
 * many of the parts as have room stand beside the view.
 *
 * @returns undefined where a part is larger than the paper.
 */
export function withCover(
  content: SheetContent,
  view: SheetView,
  { way, zone, viewOn }: Division,
): DividedSheet | undefined {
  const { paper, grid } = way;
  const cover = coverPages(content, view, paper, grid);
  const plain = (): DividedSheet | undefined =>
    cover && { sheet: { content, ...viewOn(grid) }, cover: cover.draw(), beside: [] };
  if (cover?.count === 1) return plain();
  for (const shifted of gridsBeside(grid, zone)) {
    const sheet = { content, ...viewOn(shifted) };
    const chosen = partsBeside(sheet);
    if (chosen === undefined) continue;
    const inFront = coverPages({ ...content, parts: chosen.rest }, view, paper, shifted);
    if (inFront !== undefined && (cover === undefined || inFront.count < cover.count))
      return { sheet, cover: inFront.draw(), beside: chosen.beside };
  }
  return plain();
}

/** As many of the parts as have room beside the view, looked for in their order, and those that have none. */
function partsBeside(
  sheet: TiledSheet,
): { readonly beside: BesidePlace[][]; readonly rest: SheetContent["parts"] } | undefined {
  const taken: SheetContent["parts"][number][] = [];
  let beside: BesidePlace[][] | undefined;
  for (const part of sheet.content.parts) {
    const more = placeBeside(sheet, [...taken, part].map(besidePart));
    if (more === undefined) continue;
    beside = more;
    taken.push(part);
  }
  return beside && { beside, rest: sheet.content.parts.filter((part) => !taken.includes(part)) };
}

/** A view with its figures and crossing marks as these windows want them. */
function viewOn(view: SheetView, { paper, frame }: Way, grid: TileGrid): TiledView {
  const slid = { ...view, items: slideFigures(view.items, grid) };
  const drawn = tiledInk(slid);
  return { view: slid, paper, frame, grid, texts: drawn.texts, marks: markPlaces(grid, drawn) };
}
