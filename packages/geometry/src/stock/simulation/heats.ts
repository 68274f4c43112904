/**
 * Skin that each of a number of heats takes while the surface goes evenly from the first piece's to the last one's: every
 * heat takes `depth` off the surface that the piece has half way through it.
 *
 * @param depth - mm a heat.
 * @param surfaces - Before the first heat and after the last, mm².
 * @returns mm³, one number a heat.
 *
 * @example
 * skinOfHeats(0.04, 2, [9000, 11000]); // [380, 420]
 */
export function skinOfHeats(
  depth: number,
  heats: number,
  surfaces: readonly [before: number, after: number],
): number[] {
  const [before, after] = surfaces;
  return Array.from({ length: heats }, (_, heat) => {
    const share = (heat + 0.5) / heats;
    return depth * (before * (1 - share) + after * share);
  });
}

/**
 * Solves `f(x) = wanted` where `f` is straight: through two points, and once more where rounding left a rest.
 *
 * @param near - Two different places to look at.
 * @returns `Infinity` where `f` does not rise.
 *
 * @example
 * solveStraight((x) => 3 * x - 2, 10, [0, 1]); // 4
 */
export function solveStraight(
  f: (x: number) => number,
  wanted: number,
  near: readonly [number, number],
): number {
  const [a, b] = near;
  const slope = (f(b) - f(a)) / (b - a);
  if (!(slope > 0)) return Number.POSITIVE_INFINITY;
  let x = b + (wanted - f(b)) / slope;
  for (let pass = 0; pass < 2; pass++) x += (wanted - f(x)) / slope;
  return x;
}
