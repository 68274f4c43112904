import { type Bounds, boundsMeet } from "@scantling/geometry";
import { visibleItems } from "../../box.js";
import type { DrawingItem, TextItem } from "../../drawing.js";
import { textBox } from "../../text-metrics.js";
import { isClearOfJoint } from "./axis-shifts.js";
import { axisOf, type FigurePlace, figurePlaces, halvesOf, smallFigure } from "./figure-places.js";
import { type TileGrid, windowAt } from "./grid.js";
import { circlePath } from "./in-window.js";
import { segmentMeetsBox } from "./segment-box.js";

/** Between a figure and the overlap that it is moved clear of, mm. */
const CLEAR = 1;
/** Between two parts of one line of lettering at least, mm. */
const APART = 2;

/** Where two pages overlap, along one axis. */
interface Band {
  readonly low: number;
  readonly high: number;
  /** The joint, down its middle. */
  readonly at: number;
}

/**
 * The items with their figures moved along their dimension lines, out of where two pages overlap: a number is read on one
 * page, before the pages are joined and after. One that has no room for that stands clear of the joint: what of it lies in
 * the overlap is on both pages, and the one that is laid over the other is cut beside it. So it is set in small lettering if
 * it must be, or parted, each part on one page; one that finds no place clear of everything stays.
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
    return { low, high: low + overlap, at: low + overlap / 2 };
  });

type Test = (place: FigurePlace) => boolean;

function slidText(
  item: TextItem,
  bands: readonly Band[],
  isFree: (own: TextItem, box: Bounds) => boolean,
): TextItem[] {
  const isBeside: Test = ({ span }) =>
    bands.every(({ low, high }) => span.from >= high + CLEAR || span.to <= low - CLEAR);
  const isOnOnePage: Test = ({ span }) => bands.every(({ at }) => isClearOfJoint(span, at));
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
  const found =
    places.find(isGood(isBeside)) ?? firstOf((each) => figurePlaces(each).find(isGood(isOnOnePage)));
  return found === undefined
    ? (firstOf((each) => parted(each, isGood(isOnOnePage))) ?? [item])
    : [found.item];
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
