import type { Vec2 } from "@scantling/geometry";
import type { FreeSpace } from "../free-space.js";
import type { PaperSize } from "../paper.js";
import { boxAt, emptyPage, GAP, gapOf } from "./arrange.js";
import type { Part } from "./part.js";
import type { SheetContent } from "./sheet-content.js";
import { partsOfEveryPage, titleSize } from "./sheet-page.js";

/** A part and its lower left corner on the page; whole mm. */
export interface PlacedPart {
  readonly part: Part;
  readonly corner: Vec2;
}

/** A page and what stands on it. */
export interface PackedPage {
  readonly paper: PaperSize;
  /** What stands on every page. */
  readonly every: readonly PlacedPart[];
  /** Parts of the collection by their numbers, and where they stand, in the order in which they were put there. */
  readonly numbers: readonly number[];
  readonly placed: readonly PlacedPart[];
}

/** One way to go about it. */
export interface PackWay {
  /** The paper of a page, counted from 0; undefined where there are no more. */
  readonly paperOf: (page: number) => PaperSize | undefined;
  /** Numbers of the parts, in the order in which a place is looked for. */
  readonly order: readonly number[];
  /** Whether a part may go on any page that is begun, or on the last one only. */
  readonly anyPage: boolean;
  /** Whether the level check bars take the corner before the upright ones. */
  readonly levelFirst: boolean;
}

interface OpenPage extends PackedPage {
  readonly space: FreeSpace;
  readonly numbers: number[];
  readonly placed: PlacedPart[];
}

/** Begins a page; undefined where not even what stands on every page finds room. */
export type PageOpener = (paper: PaperSize, levelFirst: boolean) => OpenPage | undefined;

/** The pages; or no pages, and the number of the part that found no place, if it was a part. */
export interface Packed {
  readonly pages?: readonly PackedPage[];
  readonly stuck?: number;
}

/**
 * Packs the parts of a collection that way, the page with the first part first.
 *
 * @param open - Of the same collection, see {@link pageOpener}.
 */
export function packParts(content: SheetContent, way: PackWay, open: PageOpener): Packed {
  const pages: OpenPage[] = [];
  const nextPage = (): OpenPage | undefined => {
    const paper = way.paperOf(pages.length);
    const page = paper === undefined ? undefined : open(paper, way.levelFirst);
    if (page !== undefined) pages.push(page);
    return page;
  };
  // A sheet has a page, be there nothing on it but its title.
  if (nextPage() === undefined) return {};
  for (const number of way.order) {
    const part = content.parts[number];
    if (part === undefined) continue;
    const begun = way.anyPage ? pages : pages.slice(-1);
    if (begun.some((page) => putOn(page, part, number, GAP))) continue;
    const page = nextPage();
    if (page === undefined || !putOn(page, part, number, GAP)) return { stuck: number };
  }
  return { pages: pages.sort((a, b) => Math.min(...a.numbers) - Math.min(...b.numbers)) };
}

/** Wider spaces between the parts that are tried, mm. */
const AIR = [10, 8, 6, 4] as const;

/**
 * A page with its parts put anew: in the order of the sheet where they have room that way too, and with as much air between
 * them as there is room for in the same rows.
 */
export function putAnew(content: SheetContent, page: PackedPage, levelFirst: boolean): PackedPage {
  const open = pageOpener(content);
  const putAll = (order: readonly number[], gap: number): OpenPage | undefined => {
    const again = open(page.paper, levelFirst);
    const fits = order.every((number) => {
      const part = content.parts[number];
      return again !== undefined && part !== undefined && putOn(again, part, number, gap);
    });
    return fits ? again : undefined;
  };
  const sorted = [...page.numbers].sort((a, b) => a - b);
  for (const order of [sorted, page.numbers]) {
    const close = putAll(order, GAP);
    if (close === undefined) continue;
    for (const gap of AIR) {
      const airy = putAll(order, gap);
      if (airy !== undefined && rowsOn(airy) <= rowsOn(close)) return airy;
    }
    return close;
  }
  return page;
}

/** Parts whose upper sides are level stand in a row. */
const rowsOn = ({ placed }: PackedPage): number =>
  new Set(placed.map(({ part, corner }) => corner.y + Math.ceil(part.height))).size;

/** Begins pages of a collection: what stands on every page is placed once for each paper, and copied. */
export function pageOpener(content: SheetContent): PageOpener {
  const known = new Map<PaperSize, Map<boolean, OpenPage | undefined>>();
  return (paper, levelFirst) => {
    const ofPaper = known.get(paper) ?? new Map<boolean, OpenPage | undefined>();
    known.set(paper, ofPaper);
    if (!ofPaper.has(levelFirst)) ofPaper.set(levelFirst, emptyOpenPage(content, paper, levelFirst));
    const page = ofPaper.get(levelFirst);
    return page && { ...page, space: page.space.copy(), numbers: [], placed: [] };
  };
}

function emptyOpenPage(content: SheetContent, paper: PaperSize, levelFirst: boolean): OpenPage | undefined {
  const space = emptyPage(paper, titleSize(content));
  const parts = partsOfEveryPage(content, paper);
  const every: PlacedPart[] = [];
  for (const part of levelFirst ? [...parts].reverse() : parts) {
    const corner = space.find(part.width, part.height, part.wish);
    if (corner === undefined) return undefined;
    space.take(boxAt(corner, part), GAP);
    every.push({ part, corner });
  }
  return { paper, every, space, numbers: [], placed: [] };
}

/** A collection is read from the top, whatever its parts would wish beside a view. */
function putOn(page: OpenPage, part: Part, number: number, gap: number): boolean {
  const corner = page.space.find(part.width, part.height, "top");
  if (corner === undefined) return false;
  page.space.take(boxAt(corner, part), Math.max(gap, gapOf(part)));
  page.numbers.push(number);
  page.placed.push({ part, corner });
  return true;
}
