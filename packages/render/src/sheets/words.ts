import type { PageInfo } from "../lay-out/sheet-content.js";
import type { PaperName } from "../paper.js";

/** How to print a sheet, by the name of its paper. */
export const printWords = (paper: PaperName | undefined): string =>
  paper === undefined ? "Print at 100 %" : `Print at 100 % on ${paper}`;

/** The same, and which of several pages this is; short enough for a title block. */
export const pageWords = ({ paper, page, pages }: PageInfo): string =>
  pages === 1 ? printWords(paper) : `${paper === undefined ? "" : `${paper}, `}100 %, p. ${page} of ${pages}`;
