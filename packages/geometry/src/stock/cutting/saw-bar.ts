/** Below this two lengths are the same to any saw, mm. */
export const SAW_HAIR = 1e-6;

/**
 * Saws pieces off a bar one after the other, as it is done at the saw: each piece, then the cut behind it, unless the
 * bar ends there.
 *
 * @param length - Of the bar, mm.
 * @returns What is left, mm; `undefined` where the bar does not hold them all.
 *
 * @example
 * sawBar(300, [99, 99, 99], 1.5); // 0
 * sawBar(500, [200, 150], 2); // 146
 */
export function sawBar(length: number, pieces: readonly number[], kerf: number): number | undefined {
  let left = length;
  for (const piece of pieces) {
    if (piece > left + SAW_HAIR) return undefined;
    left -= piece;
    left = left <= SAW_HAIR ? 0 : Math.max(0, left - kerf);
  }
  return left;
}
