/**
 * Sections of a stack on its way to a dressed billet, all in mm. Bars `w × t` laid flat on flat; a solid bar is a
 * stack of one that is neither cleaned, welded nor dressed.
 */

/**
 * Height of `bars` bars of one thickness with both faces of every joint cleaned by `cleaning`.
 *
 * @example
 * // three bars of 6.35 mm, 0.2 mm cleaned off each face of a joint
 * stackHeight(3, 6.35, 0.2); // 18.25
 */
export function stackHeight(bars: number, thickness: number, cleaning: number): number {
  return bars * thickness - 2 * cleaning * (bars - 1);
}

/**
 * Height after the joints have been squeezed by the share `reduction`.
 *
 * @example
 * weldedHeight(3, 18, 0.3); // 12.6
 */
export function weldedHeight(bars: number, height: number, reduction: number): number {
  return bars > 1 ? height * (1 - reduction) : height;
}

/**
 * Width after that squeeze: the share `spreadShare` of the thinning goes into width, the rest into length
 * (`w₁/w₀ = (h₀/h₁)^s`).
 *
 * @example
 * weldedWidth(3, 50, 0.3, 0.3); // 55.6
 */
export function weldedWidth(bars: number, width: number, reduction: number, spreadShare: number): number {
  return bars > 1 ? width * (1 - reduction) ** -spreadShare : width;
}

/**
 * Width after weld bead and seam are ground off both long sides.
 *
 * @example
 * dressedWidth(3, 55, 1.5); // 52
 */
export function dressedWidth(bars: number, welded: number, dressing: number): number {
  return bars > 1 ? welded - 2 * dressing : welded;
}

/** How the layers lie in the blade: flat (the blade's height comes from the bars' width) or on edge (from the stack's height). */
export type Layers = "flat" | "on-edge";
