import { findRoot } from "../numeric/roots.js";
import { pointAt, type Segment } from "../plane/segment.js";

/** The parameter at which a segment that runs one way along y passes a height between its ends. */
export function bracketedPlace(segment: Segment, y: number): number {
  return findRoot((t) => pointAt(segment, t).y - y, 0, 1, 1e-15) ?? 0;
}
