import type { Path } from "../plane/path.js";
import type { Segment } from "../plane/segment.js";

/** The named runs of an outline, in the order in which they follow one another counter-clockwise. */
export const RUN_NAMES = ["edge", "front", "spine", "tangTop", "butt", "tangBottom", "heelFace"] as const;
export type RunName = (typeof RUN_NAMES)[number];

/**
 * A closed, simple, counter-clockwise outline with its runs told apart. The heel is the origin, the edge is the
 * first run; `front` has no segments where the blade ends in a point.
 */
export interface Outline {
  readonly runs: Readonly<Record<RunName, readonly Segment[]>>;
  /** All runs in order. */
  readonly path: Path;
  /** Distance along x from heel to tip, mm. */
  readonly edgeLength: number;
  /** x of the handle front: minus the ricasso. */
  readonly handleFront: number;
  /** x of the rearmost point, mm (negative). */
  readonly butt: number;
  /** Unground length between heel and handle front, mm. */
  readonly ricasso: number;
}
