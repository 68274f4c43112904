import { arcAround, type Bounds, pointAt, type Vec2 } from "@scantling/geometry";
import { visibleItems } from "../../src/box.js";
import { type Drawing, type DrawingItem, flattenItems } from "../../src/drawing.js";
import type { SheetContent } from "../../src/lay-out/sheet-content.js";
import { onTiles } from "../../src/lay-out/tiles.js";
import { tileFrame } from "../../src/lay-out/tiling/tile-frame.js";
import { type PaperSize, papersFor } from "../../src/paper.js";
import { textBox } from "../../src/text-metrics.js";

export const A4: PaperSize = papersFor("mm")[0] as PaperSize;
export const LETTER: PaperSize = papersFor("in")[0] as PaperSize;

/** A page with a part of the view on it, as it can be told from the drawing alone. */
export interface TilePage {
  readonly drawing: Drawing;
  readonly label: string;
  readonly window: Bounds;
}

/** The pages of a view on a paper that it is surely large enough for. */
export function tiled(content: SheetContent, paper: PaperSize): { pages: Drawing[]; tiles: TilePage[] } {
  const { view } = content;
  if (view === undefined) throw new Error("there is a view");
  const pages = onTiles(content, view, paper);
  if (pages === undefined) throw new Error("the paper is large enough");
  return { pages, tiles: tilesAmong(pages) };
}

export const tilesAmong = (pages: readonly Drawing[]): TilePage[] =>
  pages.flatMap((drawing) => {
    const [first] = drawing.items;
    const label = /, page ([A-Z]+\d+)$/.exec(drawing.title)?.[1];
    return first?.kind === "group" && first.clip !== undefined && label !== undefined
      ? [{ drawing, label, window: first.clip }]
      : [];
  });

/** Size of the windows on either way of laying the paper. */
export function windowSize(paper: PaperSize): { width: number; height: number } | undefined {
  const frame = tileFrame(paper, 6);
  if (frame === undefined) return undefined;
  const { minX, minY, maxX, maxY } = frame.window;
  return { width: maxX - minX, height: maxY - minY };
}

/** Points on every line of a view, closer together than `step` mm as good as, and along the rims of its lettering. */
export function samplePoints(items: readonly DrawingItem[], step: number): Vec2[] {
  return visibleItems(items).flatMap(({ item }): Vec2[] => {
    if (item.kind === "text") return item.text === "" ? [] : rimPoints(textBox(item), step);
    const segments =
      item.kind === "circle"
        ? [arcAround(item.centre, item.radius, 0, 2 * Math.PI)]
        : item.paths.flatMap((path) => path.segments);
    return segments.flatMap((segment) => {
      const { from, to } = segment;
      const middle = pointAt(segment, 0.5);
      const rough =
        Math.hypot(middle.x - from.x, middle.y - from.y) + Math.hypot(to.x - middle.x, to.y - middle.y);
      const count = Math.ceil((1.6 * rough) / step) + 1;
      return Array.from({ length: count + 1 }, (_, index) => pointAt(segment, index / count));
    });
  });
}

function rimPoints(box: Bounds, step: number): Vec2[] {
  const across = Math.ceil((box.maxX - box.minX) / step);
  const up = Math.ceil((box.maxY - box.minY) / step);
  const points: Vec2[] = [];
  for (let i = 0; i <= across; i++) {
    const x = box.minX + ((box.maxX - box.minX) * i) / across;
    points.push({ x, y: box.minY }, { x, y: box.maxY });
  }
  for (let j = 0; j <= up; j++) {
    const y = box.minY + ((box.maxY - box.minY) * j) / up;
    points.push({ x: box.minX, y }, { x: box.maxX, y });
  }
  return points;
}

/** Row and column, from 0, of a label such as "B2". */
export function placeOf(label: string): { row: number; column: number } {
  return { row: label.charCodeAt(0) - 65, column: Number(label.slice(1)) - 1 };
}

export const isInside = ({ x, y }: Vec2, box: Bounds, by = 0): boolean =>
  x >= box.minX + by && x <= box.maxX - by && y >= box.minY + by && y <= box.maxY - by;

/** All lettering of a page. */
export const words = (drawing: Drawing): string[] =>
  flattenItems(drawing.items).flatMap((item) => (item.kind === "text" ? [item.text] : []));
