/**
 * Fire scale, counted in two ways, each with its inverse. A fraction: the same share of the mass every heat. A skin:
 * a depth from the whole surface every heat, so that thin work loses proportionally more.
 *
 * Losses divide: what must go in is what comes out over what is kept, never the loss added on to what comes out.
 */

/**
 * Volume before the heats that leave `after`, each heat taking the share `loss`.
 *
 * @param loss - 0 ≤ loss < 1
 *
 * @example
 * beforeFractionLoss(100, 0.08, 1); // 108.6957, not 108
 */
export function beforeFractionLoss(after: number, loss: number, heats: number): number {
  return after / (1 - loss) ** heats;
}

/**
 * Volume after heats that each take the share `loss`; undoes {@link beforeFractionLoss}.
 *
 * @example
 * afterFractionLoss(100, 0.08, 1); // 92
 */
export function afterFractionLoss(before: number, loss: number, heats: number): number {
  return before * (1 - loss) ** heats;
}

/**
 * Surface of a flat piece, ends included, mm².
 *
 * @example
 * flatSurface(2, 3, 4); // 52
 */
export function flatSurface(width: number, thickness: number, length: number): number {
  return 2 * (width * thickness + thickness * length + width * length);
}

/** Surface of a flat piece of the given section that holds a volume, mm². */
function surfaceOfVolume(width: number, thickness: number, volume: number): number {
  return flatSurface(width, thickness, volume / (width * thickness));
}

/**
 * Skin lost over a number of heats while the surface goes evenly from one piece's to the next one's: heat `k` of `n`
 * takes `depth` from the surface `S₀ + (S₁ − S₀)(k − ½)/n`, together `n·depth·(S₀ + S₁)/2`.
 *
 * @returns mm³
 *
 * @example
 * // two heats, 0.04 mm each, off a piece whose surface goes from 9000 to 11 000 mm²
 * skinLoss(0.04, 2, 9000, 11000); // 800
 */
export function skinLoss(depth: number, heats: number, surfaceBefore: number, surfaceAfter: number): number {
  return (depth * heats * (surfaceBefore + surfaceAfter)) / 2;
}

/**
 * Volume of the flat piece, `width × thickness`, that leaves `after` once a skin has been lost from it: solves
 * `before − skinLoss(depth, heats, S(before), surfaceAfter) = after`, which is linear in `before`.
 *
 * @param surfaceAfter - Surface of what is left, mm².
 * @returns mm³; `Infinity` where the piece would burn away whatever its length.
 *
 * @example
 * // one heat, 0.04 mm: a long 6 mm bar loses about 2·0.04·(1/6 + 1/38) = 1.5 %
 */
export function beforeSkinLoss(
  after: number,
  surfaceAfter: number,
  width: number,
  thickness: number,
  depth: number,
  heats: number,
): number {
  const total = depth * heats;
  const kept = 1 - total * (1 / width + 1 / thickness);
  if (kept <= 0) return Number.POSITIVE_INFINITY;
  return (after + total * (surfaceAfter / 2 + width * thickness)) / kept;
}

/**
 * Volume left of a flat piece; undoes {@link beforeSkinLoss}.
 *
 * @example
 * const before = beforeSkinLoss(48000, flatSurface(40, 6, 200), 40, 6, 0.04, 1);
 * afterSkinLoss(before, flatSurface(40, 6, 200), 40, 6, 0.04, 1); // 48000
 */
export function afterSkinLoss(
  before: number,
  surfaceAfter: number,
  width: number,
  thickness: number,
  depth: number,
  heats: number,
): number {
  return before - skinLoss(depth, heats, surfaceOfVolume(width, thickness, before), surfaceAfter);
}
