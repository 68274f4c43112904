import type { Path } from "../plane/path.js";
import { reverseSegment, type Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import { closedThrough } from "./clip-x.js";

/** A segment turned over a level line at y = `fold`, mm; it runs the same way. */
function turnedOver(segment: Segment, fold: number): Segment {
  const over = ({ x, y }: Vec2): Vec2 => ({ x, y: 2 * fold - y });
  const [from, to] = [over(segment.from), over(segment.to)];
  switch (segment.kind) {
    case "line":
      return { kind: "line", from, to };
    case "arc":
      return {
        ...segment,
        from,
        to,
        centre: over(segment.centre),
        startAngle: -segment.startAngle,
        sweep: -segment.sweep,
      };
    case "cubic":
      return { kind: "cubic", from, control1: over(segment.control1), control2: over(segment.control2), to };
  }
}

/**
 * A run turned over a level line at y = `fold`, in the same order.
 *
 * @example
 * runTurnedOver([line({ x: 0, y: 1 }, { x: 8, y: 3 })], 4)[0]?.to; // { x: 8, y: 5 }
 */
export const runTurnedOver = (run: readonly Segment[], fold: number): Segment[] =>
  run.map((segment) => turnedOver(segment, fold));

/**
 * The closed outline of a run that ends on the fold and of the same run on the other side of it.
 *
 * @example
 * // a triangle 8 long and 3 high, and its mirror image
 * Math.abs(signedArea(unfolded([line({ x: 0, y: 0 }, { x: 8, y: 3 })], 3))); // 24
 */
export const unfolded = (run: readonly Segment[], fold: number): Path =>
  closedThrough([...run, ...runTurnedOver(run, fold).map(reverseSegment).reverse()]);
