import type { Drawing } from "../drawing.js";
import { bothWays, type PaperSize } from "../paper.js";
import { type Arrangement, arrange } from "./arrange.js";
import { viewSpace } from "./one-page.js";
import { onPackedPages } from "./packed-pages.js";
import type { Part } from "./part.js";
import type { PageInfo, SheetContent } from "./sheet-content.js";
import { drawPage, partsOfEveryPage, titleSize } from "./sheet-page.js";

/**
 * A sheet whose view has room on one page and its tables not all: the view whole, with the check bars and as many parts as
 * go beside it, then pages with the other parts. Nothing is joined.
 *
 * Of all versions and both ways of laying the paper the one on the fewest pages, and of those the one with the most of the
 * parts that come first beside the view; the first of these.
 *
 * @returns undefined where the view of no version has room, or another part is larger than the paper.
 */
export function onViewPage(versions: readonly SheetContent[], paper: PaperSize): Drawing[] | undefined {
  let best: Found | undefined;
  for (const turned of bothWays(paper)) {
    for (const content of versions) {
      const found = pagesOf(content, turned);
      if (found !== undefined && (best === undefined || isBetter(found, best))) best = found;
    }
  }
  return best?.pages;
}

interface Found {
  readonly pages: Drawing[];
  /** How many parts stand beside the view before the first that does not: those needed most come first. */
  readonly inOrder: number;
}

/** Fewer pages, then more of what is needed most beside the view. */
const isBetter = (a: Found, b: Found): boolean =>
  a.pages.length < b.pages.length || (a.pages.length === b.pages.length && a.inOrder > b.inOrder);

interface ViewPage {
  readonly parts: readonly Part[];
  readonly arrangement: Arrangement;
}

function pagesOf(content: SheetContent, paper: PaperSize): Found | undefined {
  const space = { ...viewSpace(content), title: titleSize(content) };
  const withParts = (parts: readonly Part[]): ViewPage | undefined => {
    const arrangement = arrange(paper, { ...space, parts });
    return arrangement && { parts, arrangement };
  };
  let page = withParts(partsOfEveryPage(content, paper));
  if (page === undefined) return undefined;
  const rest: Part[] = [];
  for (const part of content.parts) {
    const more = withParts([...page.parts, part]);
    if (more === undefined) rest.push(part);
    else page = more;
  }
  const others = restPages(content, rest, paper);
  if (others === undefined) return undefined;
  const info = { paper: paper.name, page: 1, pages: 1 + others.length };
  const [first] = rest;
  return {
    pages: [drawPage(content, paper, { ...page, info, withView: true }), ...others],
    inOrder: first === undefined ? content.parts.length : content.parts.indexOf(first),
  };
}

/** What found no room beside the view; with check bars of their own, for every page is held against a rule. */
function restPages(content: SheetContent, parts: readonly Part[], paper: PaperSize): Drawing[] | undefined {
  if (parts.length === 0) return [];
  const after = (info: PageInfo): PageInfo => ({ ...info, page: info.page + 1, pages: info.pages + 1 });
  return onPackedPages(
    {
      ...content,
      parts,
      describe: (info) => content.describe(after(info)),
      fields: (info) => content.fields(after(info)),
    },
    paper,
  );
}
