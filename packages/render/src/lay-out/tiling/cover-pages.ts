import type { PaperSize } from "../../paper.js";
import { type CountedPages, packedPages } from "../packed-pages.js";
import type { Part } from "../part.js";
import type { SheetContent, SheetView } from "../sheet-content.js";
import { type TileGrid, tilesOf } from "./grid.js";
import { joinWords } from "./join-words.js";
import { MAP_WIDTHS, pageMap } from "./page-map.js";

/** The pages in front: title block, tables, and how the others are joined; as few as can be. */
export function coverPages(
  content: SheetContent,
  view: SheetView,
  paper: PaperSize,
  grid: TileGrid,
): CountedPages | undefined {
  // Where nothing on these pages is measured and the check bars leave no room on small paper, they go.
  const measured = content.parts.some((part) => part.trueSize === true);
  const ways = measured ? [true] : [true, false];
  for (const trueSize of content.trueSize ? ways : [false]) {
    let best: CountedPages | undefined;
    for (const widest of MAP_WIDTHS) {
      const pages = coverWith({ ...content, trueSize }, paper, grid, pageMap(grid, view, widest));
      if (pages?.count === 1) return pages;
      if (pages !== undefined && (best === undefined || pages.count < best.count)) best = pages;
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
): CountedPages | undefined {
  const count = tilesOf(grid).length;
  const joined = count > 1 ? [map, joinWords(grid, content.units)] : [];
  const parts = [...joined, ...content.parts];
  const pagesOf = (inFront: number): CountedPages | undefined => {
    const pages = inFront + count;
    return packedPages(
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
  return first === undefined || first.count === 1 ? first : pagesOf(first.count);
}
