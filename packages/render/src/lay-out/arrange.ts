import type { Bounds, Vec2 } from "@scantling/geometry";
import { moveBox } from "../drawing.js";
import { FreeSpace } from "../free-space.js";
import type { Part } from "./part.js";

/** From the page's edge to the middle of the frame line, mm: 6 mm stay white, which most printers need. */
export const FRAME_MARGIN = 6.25;
/** From the page's edge to what the frame holds, whole mm. */
export const CONTENT_MARGIN = 9;
/** Clear space between the parts, mm. */
export const GAP = 3;

/** What goes on a sheet. */
export interface Contents {
  /** Boxes that the knife takes with its lines and lettering, in its own mm, and the box about them all. */
  readonly knife: readonly Bounds[];
  readonly zone: Bounds;
  /** The title block, which stands in the lower right corner of the frame. */
  readonly title: { readonly width: number; readonly height: number };
  readonly parts: readonly Part[];
}

export interface Arrangement {
  /** Where the knife's origin falls on the page, and the lower left corner of each part; whole mm. */
  readonly origin: Vec2;
  readonly corners: readonly Vec2[];
}

interface Page {
  readonly width: number;
  readonly height: number;
}

/** Finds a place for everything on a page of this size; undefined where something finds none. */
export function arrange(page: Page, contents: Contents): Arrangement | undefined {
  for (const origin of knifePlaces(page, contents.zone)) {
    for (const order of ordersOf(contents.parts)) {
      const corners = placeParts(page, contents, origin, order);
      if (corners !== undefined) return { origin: settle(page, contents, origin, corners), corners };
    }
  }
  return undefined;
}

/** At the top of the page: in the middle, then at the right, then at the left. */
function knifePlaces(page: Page, zone: Bounds): Vec2[] {
  const y = Math.floor(Math.floor(page.height) - CONTENT_MARGIN - zone.maxY);
  const left = Math.ceil(CONTENT_MARGIN - zone.minX);
  const right = Math.floor(Math.floor(page.width) - CONTENT_MARGIN - zone.maxX);
  if (y + zone.minY < CONTENT_MARGIN || right < left) return [];
  return [...new Set([Math.round((left + right) / 2), right, left])].map((x) => ({ x, y }));
}

/** Ways to go about it: as given, with the first part last, the other way round, the widest first, the tallest first. */
const ordersOf = (parts: readonly Part[]): Part[][] => [
  [...parts],
  [...parts.slice(1), ...parts.slice(0, 1)],
  [...parts].reverse(),
  [...parts].sort((a, b) => b.width - a.width),
  [...parts].sort((a, b) => b.height - a.height),
];

function placeParts(
  page: Page,
  contents: Contents,
  origin: Vec2,
  order: readonly Part[],
): Vec2[] | undefined {
  const space = emptyPage(page, contents.title);
  const knife = contents.knife.map((box) => moved(box, origin));
  if (!knife.every((box) => space.isFree(box))) return undefined;
  for (const box of knife) space.take(box, GAP);
  const found = new Map<Part, Vec2>();
  for (const part of order) {
    const corner = space.find(part.width, part.height, part.wish);
    if (corner === undefined) return undefined;
    space.take(boxAt(corner, part), GAP);
    found.set(part, corner);
  }
  return contents.parts.flatMap((part) => found.get(part) ?? []);
}

/** Lets the knife down to the middle of the height that the parts leave it. */
function settle(page: Page, contents: Contents, origin: Vec2, corners: readonly Vec2[]): Vec2 {
  // A collection has no knife to let down.
  if (contents.knife.length === 0) return origin;
  const space = emptyPage(page, contents.title);
  for (const [index, part] of contents.parts.entries()) {
    const corner = corners[index];
    if (corner !== undefined) space.take(boxAt(corner, part), GAP);
  }
  const fits = (down: number): boolean =>
    contents.knife.every((box) => space.isFree(moved(box, { x: origin.x, y: origin.y - down })));
  let room = 0;
  while (fits(room + 1)) room++;
  return { x: origin.x, y: origin.y - Math.floor(room / 2) };
}

/** A page with its margins and the title block taken. */
export function emptyPage(page: Page, title: Page): FreeSpace {
  const { width, height } = page;
  const space = new FreeSpace(width, height);
  space.take({ minX: 0, minY: 0, maxX: CONTENT_MARGIN, maxY: height });
  space.take({ minX: Math.floor(width - CONTENT_MARGIN), minY: 0, maxX: width, maxY: height });
  space.take({ minX: 0, minY: 0, maxX: width, maxY: CONTENT_MARGIN });
  space.take({ minX: 0, minY: Math.floor(height - CONTENT_MARGIN), maxX: width, maxY: height });
  const corner = { x: width - FRAME_MARGIN - title.width, y: FRAME_MARGIN };
  space.take(boxAt(corner, title), GAP);
  return space;
}

/** The box of a part that stands there. */
export const boxAt = ({ x, y }: Vec2, size: Page): Bounds => ({
  minX: x,
  minY: y,
  maxX: x + size.width,
  maxY: y + size.height,
});

const moved = (box: Bounds, by: Vec2): Bounds => moveBox(box, by.x, by.y);
