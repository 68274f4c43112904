import { GeometryError } from "@scantling/geometry";
import type { Drawing } from "../drawing.js";
import type { PaperSize } from "../paper.js";
import { onOnePaper, onOwnPage, onSmallestPaper } from "./one-page.js";
import { onPackedPages } from "./packed-pages.js";
import type { SheetContent, SheetView } from "./sheet-content.js";
import { divisionOf, type TiledPages, tiledSheet } from "./tiles.js";
import { compareRanks } from "./tiling/choose-grid.js";
import type { Division } from "./tiling/divide-sheet.js";
import type { TileOptions } from "./tiling/tile-options.js";
import { onViewPage } from "./view-page.js";

/**
 * What a sheet is printed on: the smallest of several papers that holds it on one page, a page of its own size, or
 * one paper, on as many pages as it takes.
 */
export type PaperChoice =
  | { readonly kind: "smallest"; readonly papers: readonly PaperSize[] }
  | { readonly kind: "own" }
  | { readonly kind: "paper"; readonly paper: PaperSize };

/**
 * The pages of a sheet. What does not fit on one page of the paper has its tables on another, is
 * tiled where the view itself is too large, or packed where it is a collection.
 *
 * @param versions - The same sheet with more and with fewer dimensions about its view, the fullest first; all have the
 *   same name, title and fields.
 * @param tiling - How a sheet that is larger than the paper is divided over pages.
 * @returns at least one page.
 * @throws {GeometryError} `sheet-too-large` where a part of a sheet is larger than the paper.
 */
export function layOutSheet(
  versions: readonly SheetContent[],
  choice: PaperChoice,
  tiling: TileOptions = {},
): Drawing[] {
  switch (choice.kind) {
    case "smallest":
      return [onSmallestPaper(versions, choice.papers)];
    case "own":
      return [onOwnPage(versions)];
    case "paper":
      return onPaper(versions, choice.paper, tiling);
  }
}

/** The version on the fewest pages; of those the one with the fewest flaws, the first of these. */
const best = (versions: readonly (TiledPages | undefined)[]): TiledPages | undefined =>
  versions.reduce<TiledPages | undefined>((a, b) => {
    if (a === undefined || b === undefined) return a ?? b;
    return compareRanks([b.pages.length, ...b.flaws], [a.pages.length, ...a.flaws]) < 0 ? b : a;
  }, undefined);

/** Of versions that only have fewer dimensions the fullest: on several pages there is room for them all. */
const distinct = (versions: readonly SheetContent[]): SheetContent[] =>
  versions.filter(
    (version, index) => versions.findIndex((other) => partSizes(other) === partSizes(version)) === index,
  );

const partSizes = ({ parts }: SheetContent): string =>
  parts.map(({ width, height }) => `${width} × ${height}`).join(", ");

/** The same with other check bars, which are taken where they save a page; none of a sheet that has no bars. */
const withBars = (bars: "slim" | "short", versions: readonly SheetContent[]): SheetContent[] =>
  versions.filter(({ trueSize }) => trueSize).map((version) => ({ ...version, bars }));

function onPaper(versions: readonly SheetContent[], paper: PaperSize, tiling: TileOptions): Drawing[] {
  const slim = withBars("slim", versions);
  const whole = onOnePaper(versions, paper) ?? onOnePaper(slim, paper);
  if (whole !== undefined) return [whole];
  const hasView = versions[0]?.view !== undefined;
  if (hasView) {
    const found = best([onViewPage(versions, paper), onViewPage(slim, paper)].map(unflawed));
    const pages = found?.pages ?? onViewPage(withBars("short", versions), paper);
    if (pages !== undefined) return pages;
  }
  const joined = best(
    hasView
      ? onDivided(distinct(versions), paper, tiling)
      : [...versions, ...slim].map((version) => unflawed(onPackedPages(version, paper))),
  );
  if (joined !== undefined) return joined.pages;
  const [content] = versions;
  throw new GeometryError(
    "sheet-too-large",
    `the ${content?.name ?? "empty"} sheet does not fit on paper of ${paper.width} × ${paper.height} mm`,
  );
}

/** Each view is divided once, however many versions show it. */
function onDivided(
  versions: readonly SheetContent[],
  paper: PaperSize,
  tiling: TileOptions,
): (TiledPages | undefined)[] {
  const divisions = new Map<SheetView, Division | undefined>();
  return versions.map((version) => {
    const { view } = version;
    if (view === undefined) return undefined;
    if (!divisions.has(view)) divisions.set(view, divisionOf(view, paper, tiling));
    const division = divisions.get(view);
    return division && tiledSheet(version, view, division);
  });
}

const unflawed = (pages: Drawing[] | undefined): TiledPages | undefined => pages && { pages, flaws: [] };
