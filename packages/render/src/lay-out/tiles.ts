import type { Drawing } from "../drawing.js";
import { bothWays, type PaperSize } from "../paper.js";
import type { SheetContent, SheetView } from "./sheet-content.js";
import { chooseGrid, compareRanks, tiledInk } from "./tiling/choose-grid.js";
import { allBeside, type Division, divisionIn, type Way, withCover } from "./tiling/divide-sheet.js";
import { tilesOf } from "./tiling/grid.js";
import { tileFrame } from "./tiling/tile-frame.js";
import { type TileOptions, tileMeasures } from "./tiling/tile-options.js";
import { tilePage } from "./tiling/tile-page.js";

/**
 * A sheet whose view is larger than the paper, on several pages, row by row. What is not the view, with a map of the pages,
 * stands beside it on these where all of that has room, else on pages in front. The windows overlap; what nothing is drawn in gets no page.
 * The paper lies or stands, whichever takes fewer pages, and the windows are shifted so that as few features and as
 * little lettering as possible come where two pages overlap, no page holds the last bit of the view alone, and joints go
 * between pieces that are cut out rather than through them. Figures are moved along their lines out of the overlaps.
 *
 * Every page keeps the view's own mm, so that the same point has the same coordinates on each.
 *
 * @returns undefined where the paper is too small for a window of 40 mm beside the check bars, or for another part.
 * @throws {GeometryError} `tile-limits` where margin or overlap are out of their limits.
 */
export function onTiles(
  content: SheetContent,
  view: SheetView,
  paper: PaperSize,
  options: TileOptions = {},
): Drawing[] | undefined {
  const division = divisionOf(view, paper, options);
  return division && tiledSheet(content, view, division)?.pages;
}

/** A sheet on tiles, and what is not as it should be: features in overlaps, pages with a sliver of the view alone, joints through pieces. */
export interface TiledPages {
  readonly pages: Drawing[];
  readonly flaws: readonly number[];
}

/**
 * How a view is divided on a paper, the same for every sheet that shows it.
 *
 * @returns undefined where the paper is too small for a window.
 */
export function divisionOf(view: SheetView, paper: PaperSize, options: TileOptions): Division | undefined {
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
  const way = bestWay(ways);
  return way && divisionIn(view, way, drawn.zone);
}

/** The same as {@link onTiles} on windows that are chosen, with what another version of the sheet may do better. */
export function tiledSheet(
  content: SheetContent,
  view: SheetView,
  division: Division,
): TiledPages | undefined {
  const divided = allBeside(content, view, division) ?? withCover(content, view, division);
  if (divided === undefined) return undefined;
  const { sheet, cover, beside } = divided;
  const tiles = tilesOf(sheet.grid);
  const pages = cover.length + tiles.length;
  return {
    pages: [
      ...cover,
      ...tiles.map((tile, index) =>
        tilePage(
          sheet,
          tile,
          { paper: sheet.paper.name, page: cover.length + index + 1, pages },
          beside[index] ?? [],
        ),
      ),
    ],
    // Behind the number of pages: see `chooseGrid`.
    flaws: division.way.rank.slice(1, 5),
  };
}

/** Pages, features, slivers, pieces, cut lettering, ends and joints decide how the paper lies; where they are alike it lies. */
const DECISIVE = 8;

const bestWay = (ways: readonly Way[]): Way | undefined =>
  ways.reduce<Way | undefined>((a, b) => {
    if (a === undefined) return b;
    return compareRanks(b.rank.slice(0, DECISIVE), a.rank.slice(0, DECISIVE)) < 0 ? b : a;
  }, undefined);
