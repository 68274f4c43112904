import { handleLayout } from "./handle-layout.js";
import type { Knife } from "./knife.js";

/**
 * x of the rearmost point of the whole knife, mm: of the steel, or of a handle or a pommel that reaches farther back. Parts that
 * are given by their mass have no length.
 *
 * @example
 * rearmostOf(knife); // -115
 */
export function rearmostOf({ outline, spec }: Pick<Knife, "outline" | "spec">): number {
  const { handle, fittings } = handleLayout(spec.handle, outline);
  const rears = fittings.map(({ block }) => block.rear);
  return Math.min(outline.butt, handle?.block.rear ?? outline.butt, ...rears);
}
