import type { Bounds, Vec2 } from "@scantling/geometry";

/**
 * Where a box would best stand: `foot` is as low as can be, then as far to the left; `top` as high as can be, then as far
 * to the left; `corner` as near to the lower left corner of the page as can be, by the sum of the ways right and up.
 */
export type Wish = "foot" | "top" | "corner";

/** Where there is still room on a page, kept in cells of 1 mm; page mm, y up from the lower left corner. */
export class FreeSpace {
  private readonly columns: number;
  private readonly rows: number;
  private readonly taken: Uint8Array;
  /** Taken cells left of and below each corner of the cells, so that any box is counted in four steps. */
  private readonly sums: Int32Array;
  /** The first row in which something was taken since the sums were made. */
  private staleFrom: number;

  /** A page with nothing on it; a last part of a mm counts as taken. */
  constructor(width: number, height: number) {
    this.columns = Math.floor(width);
    this.rows = Math.floor(height);
    this.taken = new Uint8Array(this.columns * this.rows);
    this.sums = new Int32Array((this.columns + 1) * (this.rows + 1));
    this.staleFrom = this.rows;
  }

  /** A page with the same on it, to go on with by itself. */
  copy(): FreeSpace {
    const page = new FreeSpace(this.columns, this.rows);
    page.taken.set(this.taken);
    page.sums.set(this.sums);
    page.staleFrom = this.staleFrom;
    return page;
  }

  /** Marks a box and `gap` mm about it as taken; what lies off the page does not matter. */
  take(box: Bounds, gap = 0): void {
    const fromX = Math.max(0, Math.floor(box.minX - gap));
    const toX = Math.min(this.columns, Math.ceil(box.maxX + gap));
    const fromY = Math.max(0, Math.floor(box.minY - gap));
    const toY = Math.min(this.rows, Math.ceil(box.maxY + gap));
    if (fromX >= toX || fromY >= toY) return;
    for (let y = fromY; y < toY; y++) {
      this.taken.fill(1, y * this.columns + fromX, y * this.columns + toX);
    }
    this.staleFrom = Math.min(this.staleFrom, fromY);
  }

  /** What is not taken, mm². */
  freeArea(): number {
    return this.columns * this.rows - this.countTaken(0, 0, this.columns, this.rows);
  }

  /** Whether nothing in a box is taken; false for a box that reaches off the page. */
  isFree(box: Bounds): boolean {
    const across = cellsOf(box.minX, box.maxX);
    const up = cellsOf(box.minY, box.maxY);
    return across.some(([fromX, toX]) =>
      up.some(
        ([fromY, toY]) =>
          fromX >= 0 &&
          fromY >= 0 &&
          toX <= this.columns &&
          toY <= this.rows &&
          this.countTaken(fromX, fromY, toX, toY) === 0,
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
    const lastX = this.columns - across;
    const lastY = this.rows - up;
    if (lastX < 0 || lastY < 0) return undefined;
    if (wish === "corner") return this.nearest(across, up);
    for (let row = 0; row <= lastY; row++) {
      const y = wish === "foot" ? row : lastY - row;
      const x = this.leftmost(y, across, up, lastX);
      if (x !== undefined) return { x, y };
    }
    return undefined;
  }

  /** The free place nearest to the corner; of those as near the lowest. */
  private nearest(across: number, up: number): Vec2 | undefined {
    let best: Vec2 | undefined;
    for (let y = 0; y <= this.rows - up; y++) {
      const nearer = best === undefined ? this.columns : best.x + best.y - y - 1;
      const x = this.leftmost(y, across, up, Math.min(nearer, this.columns - across));
      if (x !== undefined) best = { x, y };
    }
    return best;
  }

  /** x of the leftmost free place whose lower side is at that row, `last` at most. */
  private leftmost(y: number, across: number, up: number, last: number): number | undefined {
    for (let x = 0; x <= last; ) {
      if (this.countTaken(x, y, x + across, y + up) === 0) return x;
      // No place is free that holds the last column here with anything taken: the next to look at begins behind it.
      let taken = x;
      let free = x + across;
      while (free - taken > 1) {
        const middle = (taken + free) >> 1;
        if (this.countTaken(middle, y, x + across, y + up) > 0) taken = middle;
        else free = middle;
      }
      x = free;
    }
    return undefined;
  }

  private countTaken(fromX: number, fromY: number, toX: number, toY: number): number {
    if (this.staleFrom < this.rows) this.sumUp();
    const { sums } = this;
    const stride = this.columns + 1;
    const low = fromY * stride;
    const high = toY * stride;
    return (
      (sums[high + toX] ?? 0) - (sums[high + fromX] ?? 0) - (sums[low + toX] ?? 0) + (sums[low + fromX] ?? 0)
    );
  }

  private sumUp(): void {
    const { columns, rows, taken, sums } = this;
    for (let y = this.staleFrom; y < rows; y++) {
      let cell = y * columns;
      let below = y * (columns + 1) + 1;
      let inRow = 0;
      for (const end = cell + columns; cell < end; cell++, below++) {
        inRow += taken[cell] ?? 0;
        sums[below + columns + 1] = (sums[below] ?? 0) + inRow;
      }
    }
    this.staleFrom = rows;
  }
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
