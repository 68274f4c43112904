import { type Bounds, type Path, pointAt, type Segment, type Vec2 } from "@scantling/geometry";
import { intersectBoxes, type VisibleItem, visibleItems } from "./box.js";
import type { Drawing, DrawingItem, TextItem } from "./drawing.js";
import { penOf } from "./role.js";
import { textBox } from "./text-metrics.js";

/** Something on a sheet that stands in the way of something else. */
export interface LayoutFault {
  readonly code: "text-off-page" | "line-off-page" | "text-on-text" | "line-through-text" | "text-cut";
  readonly text: string;
  readonly other: string;
  /** Where, in the drawing's own mm. */
  readonly at: Vec2;
}

/**
 * Whether a sheet can be read: no lettering on other lettering, no line of any role through lettering, nothing off
 * the page. Lettering counts with the widest size that it may take, see {@link textBox}; of a group with a clip only
 * what is seen of it counts.
 *
 * @returns all faults; none for a sheet that is in order.
 */
export function checkLayout(drawing: Drawing): LayoutFault[] {
  const page: Bounds = {
    minX: -drawing.origin.x,
    minY: -drawing.origin.y,
    maxX: drawing.width - drawing.origin.x,
    maxY: drawing.height - drawing.origin.y,
  };
  const visible = visibleItems(drawing.items);
  const texts = visible.flatMap(placedText);
  return [
    ...texts.flatMap(({ item, box }) => (contains(page, box) ? [] : [fault("text-off-page", item, "page")])),
    ...overlappingTexts(texts),
    ...visible.flatMap((item) => strokeFaults(item, page, texts)),
  ];
}

/**
 * Whether a sheet on several pages can be read: each page by itself, and lettering that is cut off on one page is whole
 * on another one.
 *
 * @param pages - Those that show parts of one view have its coordinates, so that the same lettering is at the same place.
 * @returns all faults; none for a sheet that is in order.
 *
 * @example
 * checkPages(layOutSheet(contents, { kind: "paper", paper: paperNamed("A4") })); // []
 */
export function checkPages(pages: readonly Drawing[]): LayoutFault[] {
  const texts = pages.flatMap(({ items }) => visibleItems(items).flatMap(placedText));
  const keyOf = ({ text, at, rotation }: TextItem): string => JSON.stringify([text, at.x, at.y, rotation]);
  const whole = new Set(texts.filter((text) => !text.cut).map(({ item }) => keyOf(item)));
  const cut = new Map(texts.filter((text) => text.cut).map(({ item }) => [keyOf(item), item]));
  return [
    ...pages.flatMap(checkLayout),
    ...[...cut].flatMap(([key, item]) => (whole.has(key) ? [] : [fault("text-cut", item, "every page")])),
  ];
}

interface PlacedText {
  readonly item: TextItem;
  /** What is seen of it. */
  readonly box: Bounds;
  readonly cut: boolean;
}

function placedText({ item, clip }: VisibleItem): PlacedText[] {
  if (item.kind !== "text" || item.text === "") return [];
  const whole = textBox(item);
  const box = clip === undefined ? whole : intersectBoxes(whole, clip);
  return box === undefined ? [] : [{ item, box, cut: clip !== undefined && !contains(clip, whole) }];
}

const fault = (code: LayoutFault["code"], item: TextItem, other: string): LayoutFault => ({
  code,
  text: item.text,
  other,
  at: item.at,
});

function overlappingTexts(texts: readonly PlacedText[]): LayoutFault[] {
  return texts.flatMap((a, index) =>
    texts
      .slice(index + 1)
      .filter((b) => overlap(a.box, b.box))
      .map((b) => fault("text-on-text", a.item, b.item.text)),
  );
}

function strokeFaults(
  { item, clip }: VisibleItem,
  page: Bounds,
  texts: readonly PlacedText[],
): LayoutFault[] {
  if (item.kind === "text") return [];
  const name = item.name ?? item.role;
  const reach = item.kind === "path" && item.fill !== undefined ? 0 : penOf(item.role).width / 2;
  return pointsOf(item).flatMap((points) => {
    const off = points.find((point) => isOff(page, around(point, reach), clip));
    const hits = texts.filter(({ box }) => {
      if (clip === undefined) return crosses(points, grow(box, reach));
      const seen = overlap(box, clip) ? intersectBoxes(grow(box, reach), clip) : undefined;
      return seen !== undefined && crosses(points, seen);
    });
    return [
      ...(off ? [{ code: "line-off-page" as const, text: "", other: name, at: off }] : []),
      ...hits.map((hit) => fault("line-through-text", hit.item, name)),
    ];
  });
}

/** Whether what is seen of a box reaches off the page. */
function isOff(page: Bounds, box: Bounds, clip: Bounds | undefined): boolean {
  const seen = clip === undefined ? box : intersectBoxes(box, clip);
  return seen !== undefined && !contains(page, seen);
}

/** Points close enough together for a look at the layout; nothing is measured on them. */
const POINTS_PER_CURVE = 48;

function pointsOf(item: Exclude<DrawingItem, { kind: "text" | "group" }>): Vec2[][] {
  if (item.kind === "path") return item.paths.map(pointsOfPath);
  const { centre, radius } = item;
  return [
    Array.from({ length: POINTS_PER_CURVE + 1 }, (_, index) => {
      const angle = (2 * Math.PI * index) / POINTS_PER_CURVE;
      return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
    }),
  ];
}

function pointsOfPath(path: Path): Vec2[] {
  const first = path.segments[0];
  if (first === undefined) return [];
  return [first.from, ...path.segments.flatMap(pointsAfterStart)];
}

function pointsAfterStart(segment: Segment): Vec2[] {
  if (segment.kind === "line") return [segment.to];
  return Array.from({ length: POINTS_PER_CURVE }, (_, index) =>
    pointAt(segment, (index + 1) / POINTS_PER_CURVE),
  );
}

const overlap = (a: Bounds, b: Bounds): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;

const contains = (outer: Bounds, inner: Bounds): boolean =>
  inner.minX >= outer.minX &&
  inner.minY >= outer.minY &&
  inner.maxX <= outer.maxX &&
  inner.maxY <= outer.maxY;

const grow = (box: Bounds, by: number): Bounds => ({
  minX: box.minX - by,
  minY: box.minY - by,
  maxX: box.maxX + by,
  maxY: box.maxY + by,
});

const around = (point: Vec2, by: number): Bounds =>
  grow({ minX: point.x, minY: point.y, maxX: point.x, maxY: point.y }, by);

function crosses(points: readonly Vec2[], box: Bounds): boolean {
  return points.some((point, index) => {
    const next = points[index + 1];
    return next !== undefined && lineMeetsBox(point, next, box);
  });
}

/** Clips the line from a to b by the box, one axis after the other (Liang and Barsky's way). */
function lineMeetsBox(a: Vec2, b: Vec2, box: Bounds): boolean {
  let enter = 0;
  let leave = 1;
  const slabs = [
    [a.x, b.x - a.x, box.minX, box.maxX],
    [a.y, b.y - a.y, box.minY, box.maxY],
  ] as const;
  for (const [start, step, low, high] of slabs) {
    if (step === 0) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const ends = [(low - start) / step, (high - start) / step] as const;
    enter = Math.max(enter, Math.min(...ends));
    leave = Math.min(leave, Math.max(...ends));
  }
  return enter < leave;
}
