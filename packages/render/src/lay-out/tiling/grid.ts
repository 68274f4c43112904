import type { Bounds } from "@scantling/geometry";

/** How a view is divided: equal windows in rows and columns, each overlapping the next; view mm, all whole. */
export interface TileGrid {
  /** Size of a window, and by how much it overlaps the next one. */
  readonly width: number;
  readonly height: number;
  readonly overlap: number;
  /** Left side of the first column's windows and upper side of the first row's. */
  readonly left: number;
  readonly top: number;
  readonly columns: number;
  readonly rows: number;
  /** Whether anything is drawn in a window, row by row; where not, it gets no page. */
  readonly kept: readonly boolean[];
}

/** A window that has a page. Rows count from the top. */
export interface Tile {
  readonly row: number;
  readonly column: number;
  /** Letter of the row and number of the column: "B2". */
  readonly label: string;
  readonly window: Bounds;
}

export const isKept = (grid: TileGrid, row: number, column: number): boolean =>
  row >= 0 &&
  row < grid.rows &&
  column >= 0 &&
  column < grid.columns &&
  grid.kept[row * grid.columns + column] === true;

/** The window in a row and column. */
export function windowAt(grid: TileGrid, row: number, column: number): Bounds {
  const minX = grid.left + column * (grid.width - grid.overlap);
  const maxY = grid.top - row * (grid.height - grid.overlap);
  return { minX, maxX: minX + grid.width, minY: maxY - grid.height, maxY };
}

/** The windows that have a page, row by row from the top, each from the left. */
export function tilesOf(grid: TileGrid): Tile[] {
  return grid.kept.flatMap((kept, index) => {
    const row = Math.floor(index / grid.columns);
    const column = index % grid.columns;
    return kept ? [{ row, column, label: tileLabel(row, column), window: windowAt(grid, row, column) }] : [];
  });
}

/** A1, A2 … in the uppermost row, then B1 …; after Z comes AA. */
export const tileLabel = (row: number, column: number): string => `${letters(row)}${column + 1}`;

function letters(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last;
}

/** Where two pages are joined: a line down the middle of their overlap. */
export interface Joint {
  /** Upright between the pages of one row, level between two rows. */
  readonly upright: boolean;
  /** x of an upright joint, y of a level one; and how far it reaches along the other axis: to the next joints. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
  /** Whether other joints meet it at that end. */
  readonly meets: { readonly from: boolean; readonly to: boolean };
  /** The left or upper page, and the one that is cut and laid over it. */
  readonly under: Pick<Tile, "row" | "column">;
  readonly over: Pick<Tile, "row" | "column">;
}

/** Every joint of two pages. */
export function jointsOf(grid: TileGrid): Joint[] {
  return tilesOf(grid).flatMap((tile) => {
    const { row, column, window } = tile;
    const half = grid.overlap / 2;
    const kept = (...tiles: readonly (readonly [number, number])[]): boolean =>
      tiles.some(([r, c]) => isKept(grid, r, c));
    const joints: Joint[] = [];
    if (isKept(grid, row, column + 1)) {
      const above = kept([row - 1, column], [row - 1, column + 1]);
      const below = kept([row + 1, column], [row + 1, column + 1]);
      joints.push({
        upright: true,
        at: window.maxX - half,
        from: window.minY + (below ? half : 0),
        to: window.maxY - (above ? half : 0),
        meets: { from: below, to: above },
        under: { row, column },
        over: { row, column: column + 1 },
      });
    }
    if (isKept(grid, row + 1, column)) {
      const before = kept([row, column - 1], [row + 1, column - 1]);
      const after = kept([row, column + 1], [row + 1, column + 1]);
      joints.push({
        upright: false,
        at: window.minY + half,
        from: window.minX + (before ? half : 0),
        to: window.maxX - (after ? half : 0),
        meets: { from: before, to: after },
        under: { row, column },
        over: { row: row + 1, column },
      });
    }
    return joints;
  });
}
