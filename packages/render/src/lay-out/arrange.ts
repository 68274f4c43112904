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
/** The same between what is cut out, mm: room for the scissors. */
const CUT_GAP = 6;

/** Clear space that a part has about it, mm. */
export const gapOf = (part: Pick<Part, "trueSize">): number => (part.trueSize === true ? CUT_GAP : GAP);

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
  const begun = knifePlaces(page, contents.zone).flatMap((origin) => {
    const space = withKnife(page, contents, origin);
    return space === undefined ? [] : [{ origin, space }];
  });
  const arranged = (origin: Vec2, places: Places): Arrangement => {
    const corners = contents.parts.flatMap((part) => places.get(part) ?? []);
    return { origin: settle(page, contents, origin, corners), corners };
  };
  for (const { origin, space } of begun) {
    for (const order of ordersOf(contents.parts)) {
      const places = placeInOrder(space.copy(), order);
      if (places !== undefined) return arranged(origin, places);
    }
  }
  for (const { origin, space } of begun) {
    const places = placeInAnyOrder(space, contents.parts, { left: MOST_TRIES });
    if (places !== undefined) return arranged(origin, places);
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

/** The page with the knife there; undefined where it has no room. */
function withKnife(page: Page, contents: Contents, origin: Vec2): FreeSpace | undefined {
  const space = emptyPage(page, contents.title);
  const knife = contents.knife.map((box) => moved(box, origin));
  if (!knife.every((box) => space.isFree(box))) return undefined;
  for (const box of knife) space.take(box, GAP);
  return space;
}

/** Lower left corners of parts. */
type Places = Map<Part, Vec2>;

/** Where a part would stand: what is cut out keeps its own distance from the knife, which is taken with a {@link GAP}. */
function findFor(space: FreeSpace, part: Part): Vec2 | undefined {
  const more = gapOf(part) - GAP;
  const corner = space.find(part.width + 2 * more, part.height + 2 * more, part.wish);
  return corner && { x: corner.x + more, y: corner.y + more };
}

function placeInOrder(space: FreeSpace, order: readonly Part[]): Places | undefined {
  const places: Places = new Map();
  for (const part of order) {
    const corner = findFor(space, part);
    if (corner === undefined) return undefined;
    space.take(boxAt(corner, part), gapOf(part));
    places.set(part, corner);
  }
  return places;
}

/** Parts that are put down while every order is tried, at the most: a page with seven parts has 5040 orders. */
const MOST_TRIES = 300;

/** Tries every order, and gives one up as soon as what is left has no room by itself. */
function placeInAnyOrder(
  space: FreeSpace,
  parts: readonly Part[],
  tries: { left: number },
): Places | undefined {
  if (parts.length === 0) return new Map();
  const corners = parts.map((part) => findFor(space, part));
  if (corners.includes(undefined)) return undefined;
  for (const [index, part] of parts.entries()) {
    const corner = corners[index];
    if (corner === undefined || tries.left-- <= 0) return undefined;
    const next = space.copy();
    next.take(boxAt(corner, part), gapOf(part));
    const places = placeInAnyOrder(
      next,
      parts.filter((other) => other !== part),
      tries,
    );
    if (places !== undefined) return places.set(part, corner);
  }
  return undefined;
}

/** Lets the knife down to the middle of the height that the parts leave it. */
function settle(page: Page, contents: Contents, origin: Vec2, corners: readonly Vec2[]): Vec2 {
  // A collection has no knife to let down.
  if (contents.knife.length === 0) return origin;
  const space = emptyPage(page, contents.title);
  for (const [index, part] of contents.parts.entries()) {
    const corner = corners[index];
    if (corner !== undefined) space.take(boxAt(corner, part), gapOf(part));
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
