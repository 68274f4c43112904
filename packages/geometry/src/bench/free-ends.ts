import type { Outline } from "../blade/outline.js";
import type { Stretch } from "../blade/rounded-slab.js";

/** A fitting that ends no farther from an end of the handle than this stands at it, mm. */
const NEAR = 1e-6;

/** Where slabs begin and end: fittings at the handle front and at the butt take their place. x, mm. */
export function freeEnds(
  { handleFront, butt }: Outline,
  fittings: readonly Stretch[],
): readonly [front: number, rear: number] {
  let front = handleFront;
  let rear = butt;
  for (const fitting of [...fittings].sort((a, b) => b.front - a.front)) {
    if (fitting.front >= front - NEAR && fitting.rear < front) front = fitting.rear;
  }
  for (const fitting of [...fittings].sort((a, b) => a.rear - b.rear)) {
    if (fitting.rear <= rear + NEAR && fitting.front > rear) rear = fitting.front;
  }
  return [front, rear];
}
