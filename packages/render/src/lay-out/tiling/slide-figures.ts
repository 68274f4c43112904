import { type Bounds, boundsMeet } from "@scantling/geometry";
import { visibleItems } from "../../box.js";
import type { DrawingItem, TextItem } from "../../drawing.js";
import { textBox } from "../../text-metrics.js";
import { axisOf, type FigurePlace, figurePlaces, halvesOf, smallFigure } from "./figure-places.js";
import { type TileGrid, windowAt } from "./grid.js";
import { circlePath } from "./in-window.js";
import { segmentMeetsBox } from "./segment-box.js";

/** Between a figure and the overlap that it is moved clear of, mm. */
const CLEAR = 1;
/** Between a whole figure and the edge of its page, mm. */
const INSIDE = 0.2;
/** Between two parts of one line of lettering at least, mm. */
const APART = 2;

/** Where two pages overlap, along one axis. */
interface Band {
  readonly low: number;
  readonly high: number;
}

/**
 * The items with their figures moved along their dimension lines, out of where two pages overlap: a number is read on one
 * page, before the pages are joined and after. One that has no room for that
 * is whole on one of the two pages, in small lettering if it must be, or parted, each part on one of them; one that finds no
 * place clear of everything stays.
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
  const slid = (item: DrawingItem): DrawingItem[] => {
    if (item.kind === "group") return [{ ...item, items: item.items.flatMap(slid) }];
    return item.kind === "text" ? slidText(item, bands[axisOf(item)], isFree) : [item];
  };
  return items.flatMap(slid);
}

const bandsOf = (count: number, lowOf: (index: number) => number, overlap: number): Band[] =>
  Array.from({ length: Math.max(0, count - 1) }, (_, index) => {
    const low = lowOf(index);
    return { low, high: low + overlap };
  });

type Test = (place: FigurePlace) => boolean;

function slidText(
  item: TextItem,
  bands: readonly Band[],
  isFree: (own: TextItem, box: Bounds) => boolean,
): TextItem[] {
  const isBeside: Test = ({ span }) =>
    bands.every(({ low, high }) => span.from >= high + CLEAR || span.to <= low - CLEAR);
  // Beyond both ends of an overlap it is cut on either page.
  const isWhole: Test = ({ span }) =>
    bands.every(({ low, high }) => span.from >= low + INSIDE || span.to <= high - INSIDE);
  const places = figurePlaces(item);
  const [rest] = places;
  if (rest === undefined || isBeside(rest)) return [item];
  const isGood =
    (test: Test): Test =>
    (place) =>
      test(place) && isFree(item, textBox(place.item));
  const small = smallFigure(item);
  const heights = small === undefined ? [item] : [item, small];
  const firstOf = <T>(find: (each: TextItem) => T | undefined): T | undefined =>
    heights.reduce<T | undefined>((found, each) => found ?? find(each), undefined);
  const found = places.find(isGood(isBeside)) ?? firstOf((each) => figurePlaces(each).find(isGood(isWhole)));
  return found === undefined ? (firstOf((each) => parted(each, isGood(isWhole))) ?? [item]) : [found.item];
}

/** Both halves at the nearest places that pass, the second behind the first; undefined where there are none. */
function parted(item: TextItem, isGood: Test): TextItem[] | undefined {
  const halves = halvesOf(item);
  if (halves === undefined) return undefined;
  const [firsts, seconds] = halves.map((half) => figurePlaces(half).filter(isGood));
  for (const first of firsts ?? []) {
    const second = seconds?.find(({ span }) => span.from >= first.span.to + APART);
    if (second !== undefined) return [first.item, second.item];
  }
  return undefined;
}
