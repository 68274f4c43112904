import type { Drawing } from "../drawing.js";
import { bothWays, type PaperSize } from "../paper.js";
import { CONTENT_MARGIN, FRAME_MARGIN, GAP } from "./arrange.js";
import { type PackedPage, type PackWay, type PageOpener, packParts, pageOpener, putAnew } from "./pack.js";
import type { Part } from "./part.js";
import type { SheetContent } from "./sheet-content.js";
import { drawPage, partsOfEveryPage, titleSize } from "./sheet-page.js";

/**
 * A collection of parts over as few pages of one paper as it takes, read from the top left, in their order as far as that
 * costs no page. The pages lie alike unless one is saved by turning some. The check bars and the words about printing
 * stand on each of them.
 *
 * @param content - Its view is left out.
 * @returns undefined where a part is larger than the paper.
 */
export const onPackedPages = (content: SheetContent, paper: PaperSize): Drawing[] | undefined =>
  packedPages(content, paper)?.draw();

/** Pages that are counted, and drawn when they are wanted. */
export interface CountedPages {
  readonly count: number;
  readonly draw: () => Drawing[];
}

/** The same as {@link onPackedPages}, for a choice between several. */
export function packedPages(content: SheetContent, paper: PaperSize): CountedPages | undefined {
  const alike = bothWays(paper).map((turned) => (): PaperSize => turned);
  const best = fewestPages(content, alike);
  const turned = best === undefined ? undefined : withOneLess(content, paper, best.pages.length);
  const found = turned ?? best;
  const packing = squeezed(content, alike, (found?.pages.length ?? 1) - 1) ?? found;
  return packing && { count: packing.pages.length, draw: () => drawn(content, packing) };
}

/** The same on one page of this paper as it lies; undefined where there is no room. */
export function onPackedPage(content: SheetContent, paper: PaperSize): Drawing | undefined {
  const papers = [(index: number): PaperSize | undefined => (index === 0 ? paper : undefined)];
  const packing = fewestPages(content, papers);
  return packing && drawn(content, packing)[0];
}

interface Packing {
  readonly way: PackWay;
  readonly pages: readonly PackedPage[];
}

/** Pages that are turned one by one: so many, and no more. */
const MOST_TURNED = 4;

/** Fewer pages, some lying and some standing. */
function withOneLess(content: SheetContent, paper: PaperSize, than: number): Packing | undefined {
  const [lying, standing] = bothWays(paper);
  const count = than - 1;
  if (lying === undefined || standing === undefined || count < 2 || count > MOST_TURNED) return undefined;
  if (leastPages(content, lying) > count) return undefined;
  const mixed = Array.from({ length: 2 ** count - 2 }, (_, index) => index + 1).map(
    (pattern) =>
      (page: number): PaperSize | undefined =>
        page >= count ? undefined : Math.floor(pattern / 2 ** page) % 2 === 0 ? lying : standing,
  );
  return fewestPages(content, mixed);
}

/** The packing with the fewest pages, and of those the one whose parts are most in order. */
function fewestPages(content: SheetContent, papers: readonly PackWay["paperOf"][]): Packing | undefined {
  const open = pageOpener(content);
  let best: Packing | undefined;
  for (const paperOf of papers) {
    const first = paperOf(0);
    const least = first === undefined ? 0 : leastPages(content, first);
    const onOnePage = paperOf(1) === undefined;
    if (onOnePage && least > 1) continue;
    for (const how of waysOf(content)) {
      const way = { ...how, paperOf };
      const { pages } = packParts(content, way, open);
      if (pages === undefined) continue;
      if (best === undefined || isBetter(pages, best.pages)) best = { way, pages };
      if (best.pages.length <= least && disorder(best.pages) === 0) return best;
    }
  }
  return best;
}

/** Where a part goes that found no place, as a share of how far it was from the first: half as far, or first. */
const SOONER = [0.5, 0] as const;
/** Orders that are tried at the most, and parts of a sheet for which that is done at all: each costs a packing. */
const MOST_ORDERS = 120;
const MOST_SQUEEZED = 25;

/**
 * The parts on so many pages, in the order nearest to the sheet's own that is found: a part that finds no place is put
 * down sooner the next time.
 */
function squeezed(
  content: SheetContent,
  papers: readonly PackWay["paperOf"][],
  count: number,
): Packing | undefined {
  if (content.parts.length > MOST_SQUEEZED) return undefined;
  const open = pageOpener(content);
  const tries = { left: MOST_ORDERS };
  let best: Packing | undefined;
  for (const papersOf of papers) {
    const paperOf = (page: number): PaperSize | undefined => (page < count ? papersOf(page) : undefined);
    const first = paperOf(0);
    if (first === undefined || leastPages(content, first) > count) continue;
    for (const levelFirst of [false, true]) {
      for (const share of SOONER) {
        const found = squeeze(content, { levelFirst, paperOf }, share, open, tries);
        if (found !== undefined && (best === undefined || isBetter(found.pages, best.pages))) best = found;
      }
    }
  }
  return best;
}

function squeeze(
  content: SheetContent,
  how: Pick<PackWay, "levelFirst" | "paperOf">,
  share: number,
  open: PageOpener,
  tries: { left: number },
): Packing | undefined {
  const order = content.parts.map((_, index) => index);
  const tried = new Set<string>();
  // What was tried goes the same way again.
  while (tries.left-- > 0 && !tried.has(order.join())) {
    tried.add(order.join());
    const way = { ...how, order: [...order], anyPage: true };
    const { pages, stuck } = packParts(content, way, open);
    if (pages !== undefined) return { way, pages };
    if (stuck === undefined) return undefined;
    const at = order.indexOf(stuck);
    order.splice(at, 1);
    order.splice(Math.floor(share * at), 0, stuck);
  }
  return undefined;
}

/** As given, on the last page only or on any; tallest first; widest first. Each with the check bars either way round. */
function waysOf({ parts }: SheetContent): Omit<PackWay, "paperOf">[] {
  const given = parts.map((_, index) => index);
  const by = (size: "width" | "height"): number[] =>
    [...given].sort((a, b) => (parts[b]?.[size] ?? 0) - (parts[a]?.[size] ?? 0));
  const orders: readonly (readonly [number[], boolean])[] = [
    [given, false],
    [given, true],
    [by("height"), true],
    [by("width"), true],
  ];
  return orders.flatMap(([order, anyPage]) =>
    [false, true].map((levelFirst) => ({ order, anyPage, levelFirst })),
  );
}

const isBetter = (a: readonly PackedPage[], b: readonly PackedPage[]): boolean =>
  a.length < b.length || (a.length === b.length && disorder(a) < disorder(b));

/** How many pairs of parts were put down the other way round than in the sheet's order. */
function disorder(pages: readonly PackedPage[]): number {
  const read = pages.flatMap(({ numbers }) => numbers);
  return read.reduce(
    (sum, one, index) => sum + read.slice(index + 1).filter((other) => other < one).length,
    0,
  );
}

/** No fewer pages can hold the parts, by their areas alone: each with clear space over it and at its right. */
function leastPages(content: SheetContent, paper: PaperSize): number {
  const taken = ({ width, height }: { readonly width: number; readonly height: number }): number =>
    (width + GAP) * (height + GAP);
  const sum = (parts: readonly Part[]): number => parts.reduce((mm2, part) => mm2 + taken(part), 0);
  const inFrame = (mm: number): number => mm - (CONTENT_MARGIN - FRAME_MARGIN);
  const title = titleSize(content);
  const room =
    taken({ width: paper.width - 2 * CONTENT_MARGIN, height: paper.height - 2 * CONTENT_MARGIN }) -
    inFrame(title.width) * inFrame(title.height) -
    sum(partsOfEveryPage(content, paper));
  return Math.max(1, Math.ceil(sum(content.parts) / Math.max(room, 1)));
}

function drawn(content: SheetContent, packing: Packing): Drawing[] {
  return packing.pages.map((packed, index) => {
    const { paper, every, placed } = putAnew(content, packed, packing.way.levelFirst);
    const all = [...every, ...placed];
    return drawPage(content, paper, {
      parts: all.map(({ part }) => part),
      arrangement: { origin: { x: 0, y: 0 }, corners: all.map(({ corner }) => corner) },
      info: { paper: paper.name, page: index + 1, pages: packing.pages.length },
      withView: false,
    });
  });
}
