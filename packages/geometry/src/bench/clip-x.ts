import { parametersAtX } from "../plane/at-x.js";
import type { Path } from "../plane/path.js";
import { line, pointAt, type Segment } from "../plane/segment.js";
import { splitSegment } from "../plane/split.js";

/** Points nearer than this are one, mm. */
const SAME = 1e-9;

/**
 * Pieces of segments between two stations, in their order; what stands upright on one of them is left out, and nothing is
 * added where they are parted.
 */
export function piecesBetween(segments: readonly Segment[], rear: number, front: number): Segment[] {
  return segments.flatMap((segment) => {
    const cuts = [rear, front].flatMap((x) => (Number.isFinite(x) ? parametersAtX(segment, x) : []));
    const marks = [0, ...cuts.filter((t) => t > 0 && t < 1).sort((a, b) => a - b), 1];
    return marks.slice(1).flatMap((to, index) => {
      const from = marks[index] ?? 0;
      const { x } = pointAt(segment, (from + to) / 2);
      return to > from && x > rear + SAME && x < front - SAME ? [splitSegment(segment, from, to)] : [];
    });
  });
}

/** Segments joined to a closed path, with straight pieces wherever one does not begin where the one before it ended. */
export function closedThrough(segments: readonly Segment[]): Path {
  const last = segments.at(-1);
  const joined = segments.flatMap((segment, index) => {
    const before = index === 0 ? last : segments[index - 1];
    if (before === undefined) return [segment];
    const gap = Math.hypot(segment.from.x - before.to.x, segment.from.y - before.to.y);
    return gap > SAME ? [line(before.to, segment.from), segment] : [segment];
  });
  return { segments: joined, closed: true };
}
