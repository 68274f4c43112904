import type { Drawing } from "../drawing.js";
import { bothWays, type PaperSize } from "../paper.js";
import { onPackedPages } from "./packed-pages.js";
import type { Part } from "./part.js";
import type { SheetContent, SheetView } from "./sheet-content.js";
import { chooseGrid, compareRanks, type RankedGrid, tiledInk } from "./tiling/choose-grid.js";
import { type TileGrid, tilesOf } from "./tiling/grid.js";
import { joinWords } from "./tiling/join-words.js";
import { markPlaces } from "./tiling/marks.js";
import { MAP_WIDTHS, pageMap } from "./tiling/page-map.js";
import { slideFigures } from "./tiling/slide-figures.js";
import { type TileFrame, tileFrame } from "./tiling/tile-frame.js";
import { type TileOptions, tileMeasures } from "./tiling/tile-options.js";
import { tilePage } from "./tiling/tile-page.js";

/**
 * A sheet whose view is larger than the paper, on several pages: first what is not the view, with a map of the pages,
 * then the pages on which the view is drawn, row by row. Their windows overlap; what nothing is drawn in gets no page.
 * The paper lies or stands, whichever takes fewer pages, and the windows are shifted so that as few features and as
 * little lettering as possible come where two pages overlap, no page holds the last bit of the view alone, and joints go
 * between pieces that are cut out rather than through them. Figures are moved along their lines out of the overlaps.
 *
 * Every page keeps the view's own mm, so that the same point has the same coordinates on each.
 *
 * @returns undefined where the paper is too small for a window of 40 mm beside the check bars, or for another part.
 * @throws {GeometryError} `tile-limits` where margin or overlap are out of their limits.
 */
export const onTiles = (
  content: SheetContent,
  view: SheetView,
  paper: PaperSize,
  options: TileOptions = {},
): Drawing[] | undefined => tiledSheet(content, view, paper, options)?.pages;

/** A sheet on tiles, and what is not as it should be: features in overlaps, pages with a sliver of the view alone, joints through pieces. */
export interface TiledPages {
  readonly pages: Drawing[];
  readonly flaws: readonly number[];
}

/** The same as {@link onTiles}, with what another version of the sheet may do better. */
export function tiledSheet(
  content: SheetContent,
  view: SheetView,
  paper: PaperSize,
  options: TileOptions,
): TiledPages | undefined {
  const { margin, overlap } = tileMeasures(options);
  const drawn = tiledInk(view);
  const ways = bothWays(paper).flatMap((turned) => {
    const frame = tileFrame(turned, margin);
    if (frame === undefined) return [];
    const { minX, minY, maxX, maxY } = frame.window;
    return [
      { paper: turned, frame, ...chooseGrid(drawn, { width: maxX - minX, height: maxY - minY }, overlap) },
    ];
  });
  const best = bestWay(ways);
  if (best === undefined) return undefined;
  const { grid } = best;
  const tiles = tilesOf(grid);
  const cover = coverPages(content, view, paper, grid);
  if (cover === undefined) return undefined;
  const slid = { ...view, items: slideFigures(view.items, grid) };
  const redrawn = tiledInk(slid);
  const marks = markPlaces(grid, redrawn);
  const sheet = {
    content,
    view: slid,
    paper: best.paper,
    frame: best.frame,
    grid,
    texts: redrawn.texts,
    marks,
  };
  const pages = cover.length + tiles.length;
  return {
    pages: [
      ...cover,
      ...tiles.map((tile, index) =>
        tilePage(sheet, tile, { paper: paper.name, page: cover.length + index + 1, pages }),
      ),
    ],
    // Behind the number of pages: see `chooseGrid`.
    flaws: best.rank.slice(1, 5),
  };
}

interface Way extends RankedGrid {
  readonly paper: PaperSize;
  readonly frame: TileFrame;
}

/** Pages, features, slivers, pieces, cut lettering, ends and joints decide how the paper lies; where they are alike it lies. */
const DECISIVE = 8;

const bestWay = (ways: readonly Way[]): Way | undefined =>
  ways.reduce<Way | undefined>((a, b) => {
    if (a === undefined) return b;
    return compareRanks(b.rank.slice(0, DECISIVE), a.rank.slice(0, DECISIVE)) < 0 ? b : a;
  }, undefined);

/** The pages in front: title block, tables, and how the others are joined; as few as can be. */
function coverPages(
  content: SheetContent,
  view: SheetView,
  paper: PaperSize,
  grid: TileGrid,
): Drawing[] | undefined {
  // Where nothing on these pages is measured and the check bars leave no room on small paper, they go.
  const measured = content.parts.some((part) => part.trueSize === true);
  const ways = measured ? [true] : [true, false];
  for (const trueSize of content.trueSize ? ways : [false]) {
    let best: Drawing[] | undefined;
    for (const widest of MAP_WIDTHS) {
      const pages = coverWith({ ...content, trueSize }, paper, grid, pageMap(grid, view, widest));
      if (pages?.length === 1) return pages;
      if (pages !== undefined && (best === undefined || pages.length < best.length)) best = pages;
    }
    if (best !== undefined) return best;
  }
  return undefined;
}

function coverWith(
  content: SheetContent,
  paper: PaperSize,
  grid: TileGrid,
  map: Part,
): Drawing[] | undefined {
  const count = tilesOf(grid).length;
  const joined = count > 1 ? [map, joinWords(grid, content.units)] : [];
  const parts = [...joined, ...content.parts];
  const pagesOf = (inFront: number): Drawing[] | undefined => {
    const pages = inFront + count;
    return onPackedPages(
      {
        ...content,
        parts: parts.length > 0 ? parts : [map],
        describe: (info) => content.describe({ ...info, pages }),
        fields: (info) => content.fields({ ...info, pages }),
      },
      paper,
    );
  };
  // The number of pages stands on each of them, and is known only when they are laid out.
  const first = pagesOf(1);
  return first === undefined || first.length === 1 ? first : pagesOf(first.length);
}
