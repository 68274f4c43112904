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
 * @returns undefined where the view of no version has room, or another part is larger than the paper.
 */
export function onViewPage(versions: readonly SheetContent[], paper: PaperSize): Drawing[] | undefined {
  for (const turned of bothWays(paper)) {
    for (const content of versions) {
      const pages = pagesOf(content, turned);
      if (pages !== undefined) return pages;
    }
  }
  return undefined;
}

interface ViewPage {
  readonly parts: readonly Part[];
  readonly arrangement: Arrangement;
}

function pagesOf(content: SheetContent, paper: PaperSize): Drawing[] | undefined {
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
  return [drawPage(content, paper, { ...page, info, withView: true }), ...others];
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
