import type { Bounds } from "@scantling/geometry";
import type { Drawing } from "../drawing.js";
import { bothWays, type PaperSize } from "../paper.js";
import { arrange, CONTENT_MARGIN, type Contents } from "./arrange.js";
import { onPackedPage } from "./packed-pages.js";
import type { SheetContent } from "./sheet-content.js";
import { drawPage, partsOfEveryPage, titleSize } from "./sheet-page.js";

/**
 * The sheet as one page of this paper, lying before standing, in the first of the versions for which there is room;
 * undefined where there is none.
 */
export function onOnePaper(versions: readonly SheetContent[], paper: PaperSize): Drawing | undefined {
  for (const turned of bothWays(paper)) {
    const drawing = onPage(versions, turned);
    if (drawing !== undefined) return drawing;
  }
  return undefined;
}

/** The sheet on the first of the papers that holds it; only where none is large enough on a page of its own. */
export function onSmallestPaper(versions: readonly SheetContent[], papers: readonly PaperSize[]): Drawing {
  for (const paper of papers) {
    const drawing = onOnePaper(versions, paper);
    if (drawing !== undefined) return drawing;
  }
  return onOwnPage(versions);
}

/** No printer's own paper, so without a correction. */
const OWN_PAGE: PaperSize = { width: 0, height: 0 };

/** Steps in which a page of its own grows upward, mm. */
const GROWTH = 50;
const STEP = 5;

/** A page just wide enough for the widest part, and as high as it must be. */
export function onOwnPage(versions: readonly SheetContent[]): Drawing {
  const across = ({ minX, maxX }: Bounds): number => maxX - minX;
  const needed = versions.flatMap((content) => [
    // One mm more than the view needs: it is moved by whole mm.
    ...(content.view === undefined ? [] : [across(content.view.zone) + 1]),
    ...[...partsOfEveryPage(content, OWN_PAGE), ...content.parts].map(
      (part) => part.width + titleSize(content).width,
    ),
  ]);
  const width = Math.ceil(Math.max(...needed)) + 2 * CONTENT_MARGIN + GROWTH;
  for (let height = GROWTH; ; height += STEP) {
    const drawing = onPage(versions, { width, height });
    if (drawing !== undefined) return drawing;
  }
}

/** The sheet as one page of this paper as it lies; undefined where no version has room on it. */
export function onPage(versions: readonly SheetContent[], paper: PaperSize): Drawing | undefined {
  for (const content of versions) {
    if (content.view === undefined) {
      const page = onPackedPage(content, paper);
      if (page !== undefined) return page;
      continue;
    }
    const parts = [...partsOfEveryPage(content, paper), ...content.parts];
    const arrangement = arrange(paper, { ...viewSpace(content), title: titleSize(content), parts });
    if (arrangement === undefined) continue;
    const info = { paper: paper.name, page: 1, pages: 1 };
    return drawPage(content, paper, { parts, arrangement, info, withView: true });
  }
  return undefined;
}

const NOTHING: Bounds = { minX: 0, minY: 0, maxX: 0, maxY: 0 };

/** The paper that a sheet's view takes. */
export const viewSpace = ({ view }: SheetContent): Pick<Contents, "knife" | "zone"> => ({
  knife: view?.boxes ?? [],
  zone: view?.zone ?? NOTHING,
});
