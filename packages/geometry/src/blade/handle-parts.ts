import { type HandlePart, measurableParts } from "./measurable-parts.js";
import type { Outline } from "./outline.js";
import type { SlabLaw } from "./slab-law.js";
import type { HandleSpec, HoleSpec } from "./spec.js";

export type { HandlePart } from "./measurable-parts.js";

/**
 * The parts of a handle that are described by their sizes: liners, slabs, handle, pins, bolsters, guard, pommel, as far as
 * there are any. No two of them overlap, and none of them the steel.
 *
 * - Slabs and liners lie on a full tang along its outline, the slabs' long outer edges rounded by a quarter circle. Where
 *   a bolster, a guard or a pommel stands, they leave its place.
 * - The handle of a hidden tang and the blocks are less the steel inside them, which fills its mortise. A hole in the tang
 *   stays empty there, unless a pin fills it.
 * - Pin, hanging and thong holes behind the handle front go through all of these; lightening holes stay covered.
 * - Pins fill their holes to the outside. The gap between a pin and a larger hole in the tang is left empty: glue is not
 *   weighed.
 *
 * @param tang - thickness of the finished steel along x.
 * @param holes - of blade and tang.
 *
 * @example
 * handleParts(spec.handle, outline, knife.body("finished").slab, knife.holes).map(({ name }) => name); // ["slabs"]
 */
export function handleParts(
  handle: HandleSpec | undefined,
  outline: Outline,
  tang: SlabLaw,
  holes: readonly HoleSpec[],
): HandlePart[] {
  return measurableParts(handle, outline, tang, holes);
}
