import { type AxisShift, SLIVER } from "./axis-shifts.js";
import type { InkMap } from "./ink-map.js";

/** Windows in rows and columns over the drawing; rows count from the foot here. View mm, all whole. */
export interface WindowRows {
  readonly x: Pick<AxisShift, "start" | "count">;
  readonly y: Pick<AxisShift, "start" | "count">;
  /** Size of a window, and by how much it overlaps the next one. */
  readonly size: { readonly width: number; readonly height: number };
  readonly overlap: number;
}

/** Which windows have something drawn in them, row by row from the foot. */
export type Held = readonly boolean[];

/** How many windows have something drawn in them. */
export function countHeld(ink: InkMap, { x, y, size, overlap }: WindowRows): number {
  let count = 0;
  for (let row = 0; row < y.count; row++) {
    const minY = y.start + row * (size.height - overlap);
    for (let column = 0; column < x.count; column++) {
      const minX = x.start + column * (size.width - overlap);
      if (!ink.isEmpty(minX, minY, minX + size.width, minY + size.height)) count++;
    }
  }
  return count;
}

/** Whether anything is drawn in each of the windows. */
export function heldWindows(ink: InkMap, { x, y, size, overlap }: WindowRows): Held {
  return Array.from({ length: y.count * x.count }, (_, index) => {
    const minX = x.start + (index % x.count) * (size.width - overlap);
    const minY = y.start + Math.floor(index / x.count) * (size.height - overlap);
    return !ink.isEmpty(minX, minY, minX + size.width, minY + size.height);
  });
}

/** Joints between two windows that both have something in them. */
export const countJoints = (rows: WindowRows, held: Held): number =>
  held.reduce((sum, _, index) => {
    const { left, under } = around(rows, held, index);
    return held[index] ? sum + Number(left) + Number(under) : sum;
  }, 0);

/**
 * Windows that are joined on one side, left or right, above or below, and have nothing in them farther than
 * {@link SLIVER} from that joint: pages that hold the last bit of a drawing.
 */
export function countSlivers(ink: InkMap, rows: WindowRows, held: Held): number {
  const { x, y, size, overlap } = rows;
  const past = overlap / 2 + SLIVER;
  return held.filter((isHeld, index) => {
    if (!isHeld) return false;
    const minX = x.start + (index % x.count) * (size.width - overlap);
    const minY = y.start + Math.floor(index / x.count) * (size.height - overlap);
    const { width, height } = size;
    const { left, right, under, over } = around(rows, held, index);
    const isEmpty = (fromX: number, fromY: number, toX: number, toY: number): boolean =>
      ink.isEmpty(minX + fromX, minY + fromY, minX + toX, minY + toY);
    return (
      (left !== right && isEmpty(left ? past : 0, 0, right ? width - past : width, height)) ||
      (under !== over && isEmpty(0, under ? past : 0, width, over ? height - past : height))
    );
  }).length;
}

/** Which of the windows beside one have something in them. */
function around(
  { x, y }: WindowRows,
  held: Held,
  index: number,
): { left: boolean; right: boolean; under: boolean; over: boolean } {
  const column = index % x.count;
  const row = Math.floor(index / x.count);
  return {
    left: column > 0 && held[index - 1] === true,
    right: column < x.count - 1 && held[index + 1] === true,
    under: row > 0 && held[index - x.count] === true,
    over: row < y.count - 1 && held[index + x.count] === true,
  };
}
