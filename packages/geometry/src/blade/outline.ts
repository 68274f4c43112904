import { pathBounds } from "../plane/bounds.js";
import type { Path } from "../plane/path.js";
import type { Segment } from "../plane/segment.js";

/** The named runs of an outline, in the order in which they follow one another counter-clockwise. */
export const RUN_NAMES = ["edge", "front", "spine", "tangTop", "butt", "tangBottom", "heelFace"] as const;
/** Name of a run of the outline. */
export type RunName = (typeof RUN_NAMES)[number];

/**
 * No segments in any run.
 *
 * @example
 * emptyRuns().edge.length; // 0
 */
export const emptyRuns = (): Record<RunName, Segment[]> => ({
  edge: [],
  front: [],
  spine: [],
  tangTop: [],
  butt: [],
  tangBottom: [],
  heelFace: [],
});

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

/**
 * Puts runs together to an outline and reads its stations off them: the tip where the edge ends, the handle front where
 * the spine ends, the butt at the rearmost point. Checks nothing.
 *
 * @example
 * outlineOfRuns(outline.runs).edgeLength; // 100
 */
export function outlineOfRuns(runs: Readonly<Record<RunName, readonly Segment[]>>): Outline {
  const segments = RUN_NAMES.flatMap((name) => runs[name]);
  const path: Path = { segments, closed: true };
  const handleFront = runs.spine.at(-1)?.to.x ?? 0;
  return {
    runs,
    path,
    edgeLength: runs.edge.at(-1)?.to.x ?? 0,
    handleFront,
    butt: pathBounds(path).minX,
    ricasso: 0 - handleFront,
  };
}

/**
 * The run that a segment of `outline.path` belongs to, by the segment's index.
 *
 * @example
 * runOfSegment(outline, 0); // "edge"
 */
export function runOfSegment(outline: Outline, index: number): RunName | undefined {
  let end = 0;
  return RUN_NAMES.find((name) => {
    end += outline.runs[name].length;
    return index < end;
  });
}
