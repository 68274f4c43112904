import type { Segment } from "./segment.js";

/** Segments joined end to start. A closed path returns to its start; outlines are closed and counter-clockwise. */
export interface Path {
  readonly segments: readonly Segment[];
  readonly closed: boolean;
}
