import type { Bounds, Vec2 } from "@scantling/geometry";
import { type DrawingItem, moveBox } from "../../drawing.js";
import { FreeSpace, type Wish } from "../../free-space.js";
import { boxAt, GAP, gapOf } from "../arrange.js";
import type { Part } from "../part.js";
import type { PageInfo, SheetContent } from "../sheet-content.js";
import { titleAt, titleSize } from "../sheet-page.js";
import { isKept, type Tile, type TileGrid, tilesOf } from "./grid.js";
import type { TiledSheet } from "./tile-page.js";

/** What may stand on a page of the view, where nothing of the view is drawn. */
export interface BesidePart {
  readonly width: number;
  readonly height: number;
  /** Clear space about it, mm. */
  readonly gap: number;
  /** Draws it with its lower left corner there; page mm, whole. */
  readonly itemOn: (corner: Vec2, info: PageInfo) => DrawingItem;
}

/** A part and its lower left corner on its page. */
export interface BesidePlace {
  readonly part: BesidePart;
  readonly corner: Vec2;
}

/** Between a part and where two pages overlap, mm: the cut lies in the middle of that. */
const BY_JOINT = 1;

/** Half a wide line, mm: what a box about its middle leaves out. */
const LINE_REACH = 0.5;

/** A part as it stands on a page of the view. */
export const besidePart = (part: Part): BesidePart => ({
  width: part.width,
  height: part.height,
  gap: gapOf(part),
  itemOn: (corner) => ({
    kind: "group",
    name: part.name,
    ...(part.ofPaper === undefined ? {} : { ofPaper: part.ofPaper }),
    items: part.items(corner),
  }),
});

/** The title block as it stands on a page of the view. */
export function besideTitle(content: SheetContent): BesidePart {
  const { width, height } = titleSize(content);
  return {
    width,
    height,
    gap: GAP,
    itemOn: ({ x, y }, info) => titleAt(content, { x: x + width, y }, info),
  };
}

/** The same windows with the view at their head or at their left, if there is one row or one column: so the room is in one piece. */
export function gridsBeside(grid: TileGrid, zone: Bounds): TileGrid[] {
  if (grid.rows === 1) return [{ ...grid, top: zone.maxY }, grid];
  if (grid.columns === 1) return [{ ...grid, left: zone.minX }, grid];
  return [grid];
}

/**
 * Finds room for the parts on the pages of the view: clear of what is drawn, and of what is cut off or laid under a
 * neighbour. A part that finds none is put down first the next time.
 *
 * @returns for each page what stands on it; undefined where something finds no room.
 */
export function placeBeside(sheet: TiledSheet, parts: readonly BesidePart[]): BesidePlace[][] | undefined {
  const empty = tilesOf(sheet.grid).map((tile) => roomBeside(sheet, tile));
  // What has no room by itself has none with others.
  const hasRoom = (part: BesidePart): boolean =>
    empty.some((space) => cornerFor(space, part, "top") !== undefined);
  if (roomOf(empty) < areaOf(parts) || !parts.every(hasRoom)) return undefined;
  for (const manner of MANNERS) {
    const order = [...parts];
    const begunWith = new Set<BesidePart>();
    for (;;) {
      const { pages, stuck } = putInOrder(empty, order, manner);
      if (stuck === undefined) return pages;
      if (begunWith.has(stuck)) break;
      begunWith.add(stuck);
      order.splice(order.indexOf(stuck), 1);
      order.unshift(stuck);
    }
  }
  return undefined;
}

/** From which page a part looks for room, and where on it. */
interface Manner {
  readonly from: "first" | "last";
  readonly wish: Wish;
}

const MANNERS: readonly Manner[] = [
  { from: "first", wish: "top" },
  { from: "last", wish: "top" },
  { from: "first", wish: "foot" },
  { from: "last", wish: "foot" },
];

const roomOf = (spaces: readonly FreeSpace[]): number =>
  spaces.reduce((sum, space) => sum + space.freeArea(), 0);

const areaOf = (parts: readonly BesidePart[]): number =>
  parts.reduce((sum, { width, height }) => sum + width * height, 0);

/** Each part on the first page that has room, looked through in that manner; `stuck` is the first one that has none on any. */
function putInOrder(
  empty: readonly FreeSpace[],
  order: readonly BesidePart[],
  { from, wish }: Manner,
): { readonly pages: BesidePlace[][]; readonly stuck?: BesidePart } {
  const pages = empty.map((space): OpenRoom => ({ space: space.copy(), places: [] }));
  const looked = from === "last" ? [...pages].reverse() : pages;
  const stuck = order.find((part) => !looked.some((page) => putBeside(page, part, wish)));
  return { pages: pages.map(({ places }) => places), ...(stuck === undefined ? {} : { stuck }) };
}

function putBeside({ space, places }: OpenRoom, part: BesidePart, wish: Wish): boolean {
  const corner = cornerFor(space, part, wish);
  if (corner === undefined) return false;
  space.take(boxAt(corner, part), part.gap - GAP);
  places.push({ part, corner });
  return true;
}

/** Lower left corner of a free place for a part with its clear space. */
function cornerFor(space: FreeSpace, { width, height, gap }: BesidePart, wish: Wish): Vec2 | undefined {
  const corner = space.find(width + 2 * gap, height + 2 * gap, wish);
  return corner && { x: corner.x + gap, y: corner.y + gap };
}

interface OpenRoom {
  readonly space: FreeSpace;
  readonly places: BesidePlace[];
}

/** A page on which all is taken but the room in its window where nothing is drawn and nothing overlaps; page mm. */
function roomBeside({ view, texts, paper, frame, grid }: TiledSheet, tile: Tile): FreeSpace {
  const { row, column, window } = tile;
  const { overlap } = grid;
  // The clear space about a part may lie outside the window, and but for the joint's own margin in an overlap.
  const over = (r: number, c: number): number => (isKept(grid, r, c) ? overlap + BY_JOINT : 0) - GAP;
  const free: Bounds = {
    minX: frame.window.minX + over(row, column - 1),
    maxX: frame.window.maxX - over(row, column + 1),
    minY: frame.window.minY + over(row + 1, column),
    maxY: frame.window.maxY - over(row - 1, column),
  };
  const { width, height } = paper;
  const space = new FreeSpace(width, height);
  space.take({ minX: 0, maxX: free.minX, minY: 0, maxY: height });
  space.take({ minX: free.maxX, maxX: width, minY: 0, maxY: height });
  space.take({ minX: 0, maxX: width, minY: 0, maxY: free.minY });
  space.take({ minX: 0, maxX: width, minY: free.maxY, maxY: height });
  for (const box of [...view.boxes, ...texts])
    space.take(moveBox(box, frame.window.minX - window.minX, frame.window.minY - window.minY), LINE_REACH);
  return space;
}
