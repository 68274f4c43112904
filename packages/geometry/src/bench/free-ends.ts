import type { Outline } from "../blade/outline.js";
import type { Stretch } from "../blade/rounded-slab.js";

/** Where slabs begin and end: fittings at the handle front and at the butt take their place. */
export function freeEnds(
  { handleFront, butt }: Outline,
  fittings: readonly Stretch[],
): readonly [front: number, rear: number] {
  let front = handleFront;
  let rear = butt;
  for (const fitting of [...fittings].sort((a, b) => b.front - a.front)) {
    if (fitting.front >= front && fitting.rear < front) front = fitting.rear;
  }
  for (const fitting of [...fittings].sort((a, b) => a.rear - b.rear)) {
    if (fitting.rear <= rear && fitting.front > rear) rear = fitting.front;
  }
  return [front, rear];
}
