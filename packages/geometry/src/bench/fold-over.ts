import type { Path } from "../plane/path.js";
import { mapSegment, reverseSegment, type Segment } from "../plane/segment.js";
import { closedThrough } from "./clip-x.js";

/**
 * A run turned over a level line at y = `fold`, in the same order.
 *
 * @example
 * runTurnedOver([line({ x: 0, y: 1 }, { x: 8, y: 3 })], 4)[0]?.to; // { x: 8, y: 5 }
 */
export const runTurnedOver = (run: readonly Segment[], fold: number): Segment[] =>
  run.map((segment) =>
    mapSegment(segment, {
      point: ({ x, y }) => ({ x, y: 2 * fold - y }),
      direction: (angle) => -angle,
      mirrors: true,
    }),
  );

/**
 * The closed outline of a run that ends on the fold and of the same run on the other side of it.
 *
 * @example
 * // a triangle 8 long and 3 high, and its mirror image
 * Math.abs(signedArea(unfolded([line({ x: 0, y: 0 }, { x: 8, y: 3 })], 3))); // 24
 */
export const unfolded = (run: readonly Segment[], fold: number): Path =>
  closedThrough([...run, ...runTurnedOver(run, fold).map(reverseSegment).reverse()]);
