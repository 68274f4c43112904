import { type Bounds, invariant, pathBounds, type Vec2 } from "@scantling/geometry";
import { boxOfItems, visibleItems } from "../../box.js";
import { textBox } from "../../text-metrics.js";
import type { SheetView } from "../sheet-content.js";
import { axisShifts, type Span } from "./axis-shifts.js";
import { axisOf, figureSpans, spanAlong } from "./figure-places.js";
import type { TileGrid } from "./grid.js";
import {
  countHeld,
  countJoints,
  countSlivers,
  type Held,
  heldWindows,
  type WindowRows,
} from "./held-windows.js";
import { InkMap } from "./ink-map.js";

/** Between what is drawn and the outer side of a window, mm: half a wide line and what a cutter takes. */
const CLEAR = 1;

/** How a grid compares with others, the weightiest first: less is better in each. */
type Rank = readonly number[];

export interface RankedGrid {
  readonly grid: TileGrid;
  readonly rank: Rank;
}

/** What is to be divided, gathered once for all grids. */
export interface TiledInk {
  readonly zone: Bounds;
  readonly ink: InkMap;
  readonly texts: readonly Bounds[];
  /** Of these what stays where it is, see `slideFigures`. */
  readonly fixedTexts: readonly Bounds[];
  /** What does not: of each figure what it takes of an axis wherever it may stand. Square to its line it stays. */
  readonly figures: Readonly<Record<"x" | "y", readonly (readonly Span[])[]>>;
  readonly features: readonly Vec2[];
  readonly ends: readonly Vec2[];
  readonly punched: readonly Vec2[];
  /** Where pieces of the wide outlines meet. */
  readonly corners: readonly Vec2[];
  /** Boxes of the pieces that are cut out: of a sheath the leather and its welt. */
  readonly pieces: readonly Bounds[];
}

/** Gathers what a grid is chosen by. */
export function tiledInk(view: SheetView): TiledInk {
  const { zone } = view;
  const drawn = boxOfItems(view.items) ?? zone;
  const whole = {
    minX: Math.floor(Math.min(zone.minX, drawn.minX) - CLEAR),
    minY: Math.floor(Math.min(zone.minY, drawn.minY) - CLEAR),
    maxX: Math.ceil(Math.max(zone.maxX, drawn.maxX) + CLEAR),
    maxY: Math.ceil(Math.max(zone.maxY, drawn.maxY) + CLEAR),
  };
  const visible = visibleItems(view.items);
  const words = visible.flatMap(({ item }) => (item.kind === "text" && item.text !== "" ? [item] : []));
  const corners = visible.flatMap(({ item }) =>
    item.kind === "path" && item.role === "outline"
      ? item.paths.flatMap(({ segments }) => segments.map(({ to }) => to))
      : [],
  );
  const pieces = visible.flatMap(({ item }) =>
    item.kind === "path" && item.role === "cut" ? item.paths.map(pathBounds) : [],
  );
  const figuresAlong = (axis: "x" | "y"): Span[][] =>
    words
      .filter(({ slide = [] }) => slide.length > 0)
      .map((item) => (axisOf(item) === axis ? figureSpans(item) : [spanAlong(item, axis)]));
  return {
    zone: whole,
    ink: new InkMap(view.items, whole),
    texts: words.map(textBox),
    fixedTexts: words.filter(({ slide = [] }) => slide.length === 0).map(textBox),
    figures: { x: figuresAlong("x"), y: figuresAlong("y") },
    features: view.features,
    ends: view.ends ?? [],
    punched: view.punched ?? [],
    corners,
    pieces,
  };
}

/**
 * The best grid of windows of this size: fewest pages, then no feature in an overlap, no page with a sliver of the drawing
 * alone, no last bit of a piece beyond a joint and fewest joints through pieces, no lettering cut on both pages and no figure with a joint through it wherever it is moved to, no end or
 * shoulder in an overlap, fewest joints, least lettering with a joint through it, fewest punched holes on a joint, least lettering and fewest corners in the overlaps, and the drawing in the middle. Every shift by whole mm is tried.
 *
 * @param size - of a window, whole mm.
 */
export function chooseGrid(
  { zone, ink, fixedTexts, figures, features, ends, punched, corners, pieces }: TiledInk,
  size: { readonly width: number; readonly height: number },
  overlap: number,
): RankedGrid {
  const across = axisShifts({
    from: zone.minX,
    to: zone.maxX,
    window: size.width,
    overlap,
    features: features.map(({ x }) => x),
    ends: ends.map(({ x }) => x),
    punched: punched.map(({ x }) => x),
    corners: corners.map(({ x }) => x),
    spans: fixedTexts.map(({ minX, maxX }) => ({ from: minX, to: maxX })),
    figures: figures.x,
    pieces: pieces.map(({ minX, maxX }) => ({ from: minX, to: maxX })),
  });
  const up = axisShifts({
    from: zone.minY,
    to: zone.maxY,
    window: size.height,
    overlap,
    features: features.map(({ y }) => y),
    ends: ends.map(({ y }) => y),
    punched: punched.map(({ y }) => y),
    corners: corners.map(({ y }) => y),
    spans: fixedTexts.map(({ minY, maxY }) => ({ from: minY, to: maxY })),
    figures: figures.y,
    pieces: pieces.map(({ minY, maxY }) => ({ from: minY, to: maxY })),
  });
  let best: { rows: WindowRows; held: Held; rank: Rank } | undefined;
  for (const x of across) {
    for (const y of up) {
      const rows = { x, y, size, overlap };
      const pages = countHeld(ink, rows);
      if (best !== undefined && pages > (best.rank[0] ?? 0)) continue;
      const featuresHidden = x.featuresHidden + y.featuresHidden;
      const pieceFlaws = [x.pieceSlivers + y.pieceSlivers, x.piecesCut + y.piecesCut];
      const textsCut = x.textsCut + y.textsCut;
      const endsHidden = x.endsHidden + y.endsHidden;
      // Most are worse even without a sliver: the rest is not counted for those.
      const atBest = [pages, featuresHidden, 0, ...pieceFlaws, textsCut, endsHidden];
      if (best !== undefined && compareRanks(atBest, best.rank) > 0) continue;
      const held = heldWindows(ink, rows);
      const rank = [
        pages,
        featuresHidden,
        countSlivers(ink, rows, held),
        ...pieceFlaws,
        textsCut,
        endsHidden,
        countJoints(rows, held),
        x.textsParted + y.textsParted,
        x.punchedCut + y.punchedCut,
        x.textsTouched + y.textsTouched,
        x.cornersHidden + y.cornersHidden,
        x.offCentre + y.offCentre,
      ];
      if (best === undefined || compareRanks(rank, best.rank) < 0) best = { rows, held, rank };
    }
  }
  invariant(best !== undefined, "an axis has at least one shift");
  return { grid: gridOf(best.rows, best.held), rank: best.rank };
}

/** Below 0 where the first is better, above 0 where the second is; 0 for ranks alike. */
export function compareRanks(a: Rank, b: Rank): number {
  for (const [index, value] of a.entries()) {
    const difference = value - (b[index] ?? value);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Rows of a grid count from the top. */
function gridOf({ x, y, size, overlap }: WindowRows, held: Held): TileGrid {
  const fromTop = Array.from({ length: y.count }, (_, row) =>
    held.slice((y.count - 1 - row) * x.count, (y.count - row) * x.count),
  );
  return {
    ...size,
    overlap,
    left: x.start,
    top: y.start + (y.count - 1) * (size.height - overlap) + size.height,
    columns: x.count,
    rows: y.count,
    kept: fromTop.flat(),
  };
}
