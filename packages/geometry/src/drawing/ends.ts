import { arcBetween, line, reverseSegment, type Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";

/** The same segment with its start moved; a cubic keeps the direction of its handle, an arc its turn. */
export function startAt(segment: Segment, from: Vec2): Segment {
  const { x, y } = segment.from;
  if (x === from.x && y === from.y) return segment;
  switch (segment.kind) {
    case "line":
      return line(from, segment.to);
    case "arc":
      return arcBetween(from, segment.to, segment.sweep);
    case "cubic": {
      const { control1 } = segment;
      return { ...segment, from, control1: { x: control1.x + from.x - x, y: control1.y + from.y - y } };
    }
  }
}

/** Segments joined end to start, run the other way. */
export const reversed = (segments: readonly Segment[]): Segment[] => segments.map(reverseSegment).reverse();

/** The same stroke with its first start and its last end moved. */
export function withEnds(segments: readonly Segment[], from: Vec2, to: Vec2): Segment[] {
  return segments.map((segment, i) => {
    const begun = i === 0 ? startAt(segment, from) : segment;
    return i === segments.length - 1 ? reverseSegment(startAt(reverseSegment(begun), to)) : begun;
  });
}
