import { type Bounds, mapSegment, type Path, type Vec2 } from "@scantling/geometry";
import { type DrawingItem, flattenItems, lettering, strokes } from "../../drawing.js";
import { KEY, SMALL } from "../../lettering-size.js";
import { textBox, textReach, textWidth } from "../../text-metrics.js";
import type { Part } from "../part.js";
import type { SheetView } from "../sheet-content.js";
import { isKept, type TileGrid, tileLabel, windowAt } from "./grid.js";
import { segmentMeetsBox } from "./segment-box.js";

/** Widths that a map may have at most, mm, the best first: a wide one shows more, a narrow one leaves more room. */
export const MAP_WIDTHS: readonly number[] = [160, 130, 100];
/** Height that it has at most, as a share of that. */
const HEIGHT = 0.6;
/** Heights of the pages' labels, the largest that has room, from the ISO 3098 series (from memory), mm. */
const LABELS = [7, 5, KEY, SMALL];
/** Clear space about a label, as a share of its height. */
const CLEAR = 0.2;
const LINE = 5;
const CAPTION = 8;

/**
 * The pages as they lie when they are joined, with the outline on them, small.
 *
 * @param widest - see {@link MAP_WIDTHS}, mm.
 */
export function pageMap(grid: TileGrid, view: SheetView, widest: number): Part {
  const whole = gridBox(grid);
  const across = whole.maxX - whole.minX;
  const up = whole.maxY - whole.minY;
  const reduction = Math.max(2, Math.ceil(Math.max(across, up / HEIGHT) / widest));
  const caption = `PAGES OF THIS SHEET, 1 : ${reduction}`;
  const legend = grid.kept.includes(false) ? "Crossed out: nothing on it, no page." : undefined;
  const foot = legend === undefined ? 1 : LINE + 1;
  return {
    name: "page-map",
    width: Math.ceil(
      Math.max(across / reduction + 2, textWidth(caption, KEY, true), textWidth(legend ?? "", SMALL)),
    ),
    height: Math.ceil(up / reduction) + foot + CAPTION,
    wish: "corner",
    ofPaper: true,
    items: ({ x, y }) => {
      const corner = { x: x + 1, y: y + foot };
      const place = (p: Vec2): Vec2 => ({
        x: corner.x + (p.x - whole.minX) / reduction,
        y: corner.y + (p.y - whole.minY) / reduction,
      });
      const top = corner.y + up / reduction;
      return [
        ...mapItems(grid, view, place, reduction),
        lettering(caption, { x, y: top + CAPTION - textReach("", KEY).over }, { height: KEY, bold: true }),
        ...(legend === undefined
          ? []
          : [lettering(legend, { x, y: y + textReach("", SMALL).under }, { height: SMALL })]),
      ];
    },
  };
}

/** The box about all windows. */
function gridBox(grid: TileGrid): Bounds {
  const first = windowAt(grid, 0, 0);
  const last = windowAt(grid, grid.rows - 1, grid.columns - 1);
  return { minX: first.minX, maxX: last.maxX, minY: last.minY, maxY: first.maxY };
}

type Place = (point: Vec2) => Vec2;

function mapItems(grid: TileGrid, view: SheetView, place: Place, reduction: number): DrawingItem[] {
  const outlines = outlinesOf(view).map((path) => reduced(path, place, reduction));
  const cells = grid.kept.map((kept, index) => {
    const row = Math.floor(index / grid.columns);
    const column = index % grid.columns;
    const { a, b } = cellAt(grid, row, column);
    return { kept, label: tileLabel(row, column), a: place(a), b: place(b) };
  });
  const kept = cells.filter((cell) => cell.kept);
  const clear = alike(kept, outlines);
  const hasRoom = clear.length === kept.length;
  return [
    ...(hasRoom ? [{ kind: "path", role: "outline", paths: outlines } as const] : []),
    ...cells.flatMap(({ kept: hasPage, a, b }) =>
      hasPage
        ? []
        : [
            strokes("thin", [
              [a, b],
              [
                { x: a.x, y: b.y },
                { x: b.x, y: a.y },
              ],
            ]),
          ],
    ),
    ...borderItems(grid, place),
    ...(hasRoom ? clear : alike(kept, [])),
  ];
}

/** The sides of the pages' own parts: dashed where two are joined, as on the pages themselves. */
function borderItems(grid: TileGrid, place: Place): DrawingItem[] {
  type Side = readonly [Vec2, Vec2];
  const dashed: Side[] = [];
  const thin: Side[] = [];
  for (let row = 0; row < grid.rows; row++) {
    for (let column = 0; column < grid.columns; column++) {
      const cell = cellAt(grid, row, column);
      const [a, b] = [place(cell.a), place(cell.b)];
      const both = (r: number, c: number): boolean => isKept(grid, row, column) && isKept(grid, r, c);
      const right: Side = [{ x: b.x, y: a.y }, b];
      const foot: Side = [a, { x: b.x, y: a.y }];
      (both(row, column + 1) ? dashed : thin).push(right);
      (both(row + 1, column) ? dashed : thin).push(foot);
      if (column === 0) thin.push([a, { x: a.x, y: b.y }]);
      if (row === 0) thin.push([{ x: a.x, y: b.y }, b]);
    }
  }
  return [strokes("thin", thin), ...(dashed.length === 0 ? [] : [strokes("fold", dashed)])];
}

/** What shows best what lies where: outlines, or else whatever lines there are. */
function outlinesOf(view: SheetView): Path[] {
  const lines = flattenItems(view.items).flatMap((item) =>
    item.kind === "path" && item.fill === undefined ? [item] : [],
  );
  const outlines = lines.filter(({ role }) => role === "outline" || role === "cut");
  return (outlines.length > 0 ? outlines : lines).flatMap(({ paths }) => paths);
}

/** A page's own part of the drawing: up to the middle of each overlap. */
function cellAt(grid: TileGrid, row: number, column: number): { a: Vec2; b: Vec2 } {
  const { minX, minY, maxX, maxY } = windowAt(grid, row, column);
  const half = grid.overlap / 2;
  return {
    a: {
      x: minX + (column > 0 ? half : 0),
      y: minY + (row < grid.rows - 1 ? half : 0),
    },
    b: { x: maxX - (column < grid.columns - 1 ? half : 0), y: maxY - (row > 0 ? half : 0) },
  };
}

const SPOTS = [0.5, 0.25, 0.75, 0.1, 0.9, 0];

interface Cell {
  readonly label: string;
  readonly a: Vec2;
  readonly b: Vec2;
}

/** The labels of pages, all of one size: the largest for which each has room; none where one has none. */
function alike(cells: readonly Cell[], outlines: readonly Path[]): DrawingItem[] {
  for (const height of LABELS) {
    const labels = cells.flatMap((cell) => labelIn(cell, outlines, height) ?? []);
    if (labels.length === cells.length) return labels;
  }
  return [];
}

/** A page's label of this height, clear of the outlines; undefined where it finds no room. */
function labelIn(cell: Cell, outlines: readonly Path[], height: number): DrawingItem | undefined {
  const origin = textBox(lettering(cell.label, { x: 0, y: 0 }, { height, bold: true }));
  const clear = CLEAR * height;
  const roomX = cell.b.x - cell.a.x - (origin.maxX - origin.minX) - 2 * clear;
  const roomY = cell.b.y - cell.a.y - (origin.maxY - origin.minY) - 2 * clear;
  if (roomX < 0 || roomY < 0) return undefined;
  for (const up of SPOTS) {
    for (const across of SPOTS) {
      const at = {
        x: cell.a.x + clear + across * roomX - origin.minX,
        y: cell.a.y + clear + up * roomY - origin.minY,
      };
      const item = lettering(cell.label, at, { height, bold: true });
      const box = textBox(item);
      const near = {
        minX: box.minX - clear,
        minY: box.minY - clear,
        maxX: box.maxX + clear,
        maxY: box.maxY + clear,
      };
      const meets = outlines.some(({ segments }) =>
        segments.some((segment) => segmentMeetsBox(segment, near)),
      );
      if (!meets) return item;
    }
  }
  return undefined;
}

const reduced = (path: Path, place: Place, reduction: number): Path => ({
  ...path,
  segments: path.segments.map((segment) =>
    mapSegment(segment, { point: place, radius: (mm) => mm / reduction }),
  ),
});
