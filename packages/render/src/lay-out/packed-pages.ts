import { invariant, type Vec2 } from "@scantling/geometry";
import type { Drawing } from "../drawing.js";
import type { FreeSpace } from "../free-space.js";
import { bothWays, type PaperSize } from "../paper.js";
import { boxAt, emptyPage, GAP } from "./arrange.js";
import type { Part } from "./part.js";
import type { SheetContent } from "./sheet-content.js";
import { drawPage, partsOfEveryPage, titleSize } from "./sheet-page.js";

/**
 * A collection of parts over as many pages of one paper as it takes, in their order; on the way of laying the paper
 * that takes the fewest pages. The check bars and the words about printing stand on each of them.
 *
 * @param content - Its view is left out.
 * @returns undefined where a part is larger than the paper.
 */
export function onPackedPages(content: SheetContent, paper: PaperSize): Drawing[] | undefined {
  const ways = bothWays(paper).flatMap((turned) => {
    const pages = packPages(content, turned);
    return pages === undefined ? [] : [{ turned, pages }];
  });
  const best = ways.reduce<(typeof ways)[number] | undefined>(
    (a, b) => (a === undefined || b.pages.length < a.pages.length ? b : a),
    undefined,
  );
  return best?.pages.map((placed, index) =>
    drawPage(content, best.turned, {
      parts: placed.map(({ part }) => part),
      arrangement: { origin: { x: 0, y: 0 }, corners: placed.map(({ corner }) => corner) },
      info: { paper: best.turned.name, page: index + 1, pages: best.pages.length },
      withView: false,
    }),
  );
}

interface PlacedPart {
  readonly part: Part;
  readonly corner: Vec2;
}

/** First fit in order: a part goes on the last page if it has room there, else on a new one. */
function packPages(content: SheetContent, paper: PaperSize): PlacedPart[][] | undefined {
  const pages: { space: FreeSpace; placed: PlacedPart[] }[] = [];
  const newPage = (): { space: FreeSpace; placed: PlacedPart[] } | undefined => {
    const page = { space: emptyPage(paper, titleSize(content)), placed: [] };
    return partsOfEveryPage(content, paper).every((part) => putOn(page, part)) ? page : undefined;
  };
  for (const part of content.parts) {
    const last = pages.at(-1);
    if (last !== undefined && putOn(last, part)) continue;
    const page = newPage();
    if (page === undefined || !putOn(page, part)) return undefined;
    pages.push(page);
  }
  invariant(pages.length > 0, "a sheet has something on it");
  return pages.map(({ placed }) => placed);
}

function putOn(page: { space: FreeSpace; placed: PlacedPart[] }, part: Part): boolean {
  const corner = page.space.find(part.width, part.height, part.wish);
  if (corner === undefined) return false;
  page.space.take(boxAt(corner, part), GAP);
  page.placed.push({ part, corner });
  return true;
}
