import { type Bounds, boundsMeet } from "@scantling/geometry";
import { visibleItems } from "../../box.js";
import { type DrawingItem, moveBox, type TextItem } from "../../drawing.js";
import { textBox } from "../../text-metrics.js";
import { type TileGrid, windowAt } from "./grid.js";
import { circlePath } from "./in-window.js";
import { segmentMeetsBox } from "./segment-box.js";

/** Between a figure and the overlap that it is moved clear of, mm. */
const CLEAR = 1;
/** From one place that is tried to the next, mm. */
const STEP = 1;

interface Band {
  readonly low: number;
  readonly high: number;
}

/**
 * The items with their figures moved along their dimension lines, out of where two pages overlap: a number is read on one
 * page, before the pages are joined and after. One that has no room for that
 * is whole on one of the two pages; one that finds no place clear of everything stays.
 */
export function slideFigures(items: readonly DrawingItem[], grid: TileGrid): DrawingItem[] {
  const bands = {
    x: bandsOf(grid.columns, (index) => windowAt(grid, 0, index + 1).minX, grid.overlap),
    y: bandsOf(grid.rows, (index) => windowAt(grid, index, 0).minY, grid.overlap),
  };
  const all = visibleItems(items).map(({ item }) => item);
  const isFree = (own: TextItem, box: Bounds): boolean =>
    all.every((item) => {
      if (item === own) return true;
      if (item.kind === "text") return item.text === "" || !boundsMeet(textBox(item), box);
      const paths = item.kind === "circle" ? [circlePath(item)] : item.paths;
      return !paths.some(({ segments }) => segments.some((segment) => segmentMeetsBox(segment, box)));
    });
  const slid = (item: DrawingItem): DrawingItem => {
    if (item.kind === "group") return { ...item, items: item.items.map(slid) };
    return item.kind === "text" ? slidText(item, bands, isFree) : item;
  };
  return items.map(slid);
}

const bandsOf = (count: number, lowOf: (index: number) => number, overlap: number): Band[] =>
  Array.from({ length: Math.max(0, count - 1) }, (_, index) => {
    const low = lowOf(index);
    return { low: low - CLEAR, high: low + overlap + CLEAR };
  });

/** One that has nowhere else to stand; it is whole when the pages are joined. */
function fixed({ slide: _slide, ...item }: TextItem): TextItem {
  return item;
}

function slidText(
  item: TextItem,
  bands: Readonly<Record<"x" | "y", readonly Band[]>>,
  isFree: (own: TextItem, box: Bounds) => boolean,
): TextItem {
  const { slide = [], rotation, at } = item;
  const level = rotation === 0;
  const meets = (
    { minX, maxX, minY, maxY }: Bounds,
    test: (from: number, to: number, band: Band) => boolean,
  ): boolean => {
    const [from, to] = level ? [minX, maxX] : [minY, maxY];
    return bands[level ? "x" : "y"].some((band) => test(from, to, band));
  };
  const touches = (at: Bounds): boolean => meets(at, (from, to, { low, high }) => from < high && to > low);
  // Beyond both ends of an overlap it is cut on either page.
  const isCut = (at: Bounds): boolean =>
    meets(at, (from, to, { low, high }) => from < low + 2 * CLEAR && to > high - 2 * CLEAR);
  const box = textBox(item);
  if (slide.length === 0 || !touches(box)) return item;
  const places = slide
    .flatMap(({ from, to }) =>
      Array.from(
        { length: Math.max(0, Math.floor((to - from) / STEP)) + 1 },
        (_, step) => from + step * STEP,
      ),
    )
    .sort((a, b) => Math.abs(a) - Math.abs(b));
  const moved = (by: number): Bounds => moveBox(box, level ? by : 0, level ? 0 : by);
  const clearOf = (isBad: (at: Bounds) => boolean): number | undefined =>
    places.find((place) => !isBad(moved(place)) && isFree(item, moved(place)));
  // Where there is no room beside the overlap, it is whole on one of the two pages at least.
  const by = clearOf(touches) ?? clearOf(isCut);
  if (by === undefined) return fixed(item);
  return { ...item, at: { x: at.x + (level ? by : 0), y: at.y + (level ? 0 : by) } };
}
