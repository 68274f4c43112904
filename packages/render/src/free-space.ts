import type { Bounds, Vec2 } from "@scantling/geometry";
import { BitRows, type RowRuns } from "./bit-rows.js";

/**
 * Where a box would best stand: `foot` is as low as can be, then as far to the left; `top` as high as can be, then as far
 * to the left; `corner` as near to the lower left corner of the page as can be, by the sum of the ways right and up.
 */
export type Wish = "foot" | "top" | "corner";

/** Where there is still room on a page, kept in cells of 1 mm; page mm, y up from the lower left corner. */
export class FreeSpace {
  private readonly cells: BitRows;

  /** A page with nothing on it; a last part of a mm counts as taken. */
  constructor(width: number, height: number, cells = new BitRows(Math.floor(width), Math.floor(height))) {
    this.cells = cells;
  }

  /** A page with the same on it, to go on with by itself. */
  copy(): FreeSpace {
    const { columns, rows } = this.cells;
    return new FreeSpace(columns, rows, this.cells.copy());
  }

  /** Marks a box and `gap` mm about it as taken; what lies off the page does not matter. */
  take(box: Bounds, gap = 0): void {
    const { columns, rows } = this.cells;
    const fromX = Math.max(0, Math.floor(box.minX - gap));
    const toX = Math.min(columns, Math.ceil(box.maxX + gap));
    const fromY = Math.max(0, Math.floor(box.minY - gap));
    const toY = Math.min(rows, Math.ceil(box.maxY + gap));
    if (fromX < toX && fromY < toY) this.cells.take(fromX, toX, fromY, toY);
  }

  /** What is not taken, mm². */
  freeArea(): number {
    return this.cells.countFree();
  }

  /** Whether nothing in a box is taken; false for a box that reaches off the page. */
  isFree(box: Bounds): boolean {
    const { columns, rows } = this.cells;
    const across = cellsOf(box.minX, box.maxX);
    const up = cellsOf(box.minY, box.maxY);
    return across.some(([fromX, toX]) =>
      up.some(
        ([fromY, toY]) =>
          fromX >= 0 &&
          fromY >= 0 &&
          toX <= columns &&
          toY <= rows &&
          this.cells.areFree(fromX, toX, fromY, toY),
      ),
    );
  }

  /**
   * The best free place for a box of this size.
   *
   * @returns the lower left corner, whole mm; undefined where there is no room.
   */
  find(width: number, height: number, wish: Wish): Vec2 | undefined {
    const across = Math.max(1, Math.ceil(width));
    const up = Math.max(1, Math.ceil(height));
    const lastX = this.cells.columns - across;
    const lastY = this.cells.rows - up;
    if (lastX < 0 || lastY < 0) return undefined;
    const runs = this.cells.runsOf(up);
    if (wish === "corner") return nearest(runs, across);
    for (let row = 0; row <= lastY; row++) {
      const y = wish === "foot" ? row : lastY - row;
      const x = runs.firstFree(y, across, lastX);
      if (x !== undefined) return { x, y };
    }
    return undefined;
  }
}

/** The place so wide that is nearest to the corner; of those as near the lowest. */
function nearest(runs: RowRuns, across: number): Vec2 | undefined {
  let best: Vec2 | undefined;
  for (let y = 0; y < runs.count; y++) {
    const nearer = best === undefined ? runs.columns : best.x + best.y - y - 1;
    if (nearer < 0) break;
    const x = runs.firstFree(y, across, Math.min(nearer, runs.columns - across));
    if (x !== undefined) best = { x, y };
  }
  return best;
}

/** Cells from and to which a box reaches. A line has a width, though its box has none: between two cells it is on either. */
function cellsOf(min: number, max: number): readonly (readonly [number, number])[] {
  const from = Math.floor(min);
  const to = Math.ceil(max);
  if (to > from) return [[from, to]];
  return [
    [from, from + 1],
    [from - 1, from],
  ];
}
