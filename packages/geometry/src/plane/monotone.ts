import { monotoneBreaks } from "./bounds.js";
import type { Segment } from "./segment.js";
import { splitSegment } from "./split.js";

/** The segment cut where it turns back in x: every piece runs one way along x (or straight up and down). */
export function splitAtXExtremes(segment: Segment): Segment[] {
  const breaks = monotoneBreaks(segment, "x");
  if (breaks.length <= 2) return [segment];
  const pieces: Segment[] = [];
  for (let i = 0; i + 1 < breaks.length; i++) {
    pieces.push(splitSegment(segment, breaks[i] as number, breaks[i + 1] as number));
  }
  return pieces;
}
