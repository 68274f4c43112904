import { FINDING_LIMITS } from "../limits/finding-limits.js";
import type { StockLimits } from "./shop.js";

/** Sizes in inches do not come out whole in mm; what only rounding puts over a limit is not over it. */
const HAIR = 1e-9;

/**
 * Share of its height by which a bar or billet has to be driven in on edge over its whole length while it is so much
 * higher than thick that it buckles. 0 where light blows do (a tenth, however thin it is), and where it is stout
 * enough for heavy ones.
 *
 * @param needed - Greatest height of the forged blade, mm.
 * @param section - The bar or billet as it lies in the blade, mm.
 *
 * @example
 * narrowingOnEdge(36, { height: 45, thickness: 5 }, DEFAULT_SHOP.limits); // 0.2
 */
export function narrowingOnEdge(
  needed: number,
  section: { readonly height: number; readonly thickness: number },
  { maxSlenderness, findings }: Pick<StockLimits, "maxSlenderness" | "findings">,
): number {
  const free = findings?.freeNarrowing ?? FINDING_LIMITS.freeNarrowing.value;
  const narrower = 1 - needed / section.height;
  const slender = section.height / section.thickness > maxSlenderness + HAIR;
  return slender && narrower > free + HAIR ? narrower : 0;
}

/**
 * Whether a narrowing by {@link narrowingOnEdge} is more than the shop undertakes.
 *
 * @example
 * isTooMuchNarrowing(0.4, DEFAULT_SHOP.limits) ? 1 : 0; // 1
 */
export const isTooMuchNarrowing = (
  narrowing: number,
  { mostNarrowing }: Pick<StockLimits, "mostNarrowing">,
): boolean => narrowing > mostNarrowing + HAIR;
