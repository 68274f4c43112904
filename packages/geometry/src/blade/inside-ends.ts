import type { Knife } from "./knife.js";

/** mm. */
const AHEAD = 1e-9;

/**
 * Where a station is read: where the outline turns a corner, a little ahead of it, and at the tip a little behind. mm.
 *
 * @param x - mm ahead of the heel.
 *
 * @example
 * insideEnds(knife, 60); // 60, and a millionth of a micrometre
 */
export const insideEnds = ({ outline }: Knife, x: number): number =>
  x < outline.edgeLength ? Math.min(x + AHEAD, outline.edgeLength) : outline.edgeLength - AHEAD;
