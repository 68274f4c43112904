import { SAW_HAIR } from "./saw-bar.js";

/**
 * Every way to cut one bar that leaves no room for one more of the pieces wanted.
 *
 * @param length - Of the bar, mm.
 * @param lengths - Of the pieces, mm, longest first, each once.
 * @param demand - How many of each are wanted; no pattern holds more.
 * @param most - Gives up above so many patterns.
 * @returns Pieces of each length; `undefined` where there are more than `most`. Nothing where no piece fits.
 *
 * @example
 * cuttingPatterns(1000, [400, 250], [5, 5], 0, 99); // [[2, 0], [1, 2], [0, 4]]
 */
export function cuttingPatterns(
  length: number,
  lengths: readonly number[],
  demand: readonly number[],
  kerf: number,
  most: number,
): number[][] | undefined {
  const patterns: number[][] = [];
  const counts = lengths.map(() => 0);
  const fits = (piece: number, room: number): boolean => piece + kerf <= room + SAW_HAIR;
  const isFull = (room: number): boolean =>
    !lengths.some((piece, i) => (counts[i] ?? 0) < (demand[i] ?? 0) && fits(piece, room));
  // False where there are too many.
  const fill = (from: number, room: number): boolean => {
    const piece = lengths[from];
    if (piece === undefined) {
      if (isFull(room) && counts.some((count) => count > 0)) patterns.push([...counts]);
      return patterns.length <= most;
    }
    const greatest = Math.max(0, Math.min(demand[from] ?? 0, Math.floor((room + SAW_HAIR) / (piece + kerf))));
    for (let count = greatest; count >= 0; count--) {
      counts[from] = count;
      if (!fill(from + 1, room - count * (piece + kerf))) return false;
    }
    counts[from] = 0;
    return true;
  };
  // The last piece needs no cut behind it: as if the bar were a cut longer.
  return fill(0, length + kerf) ? patterns : undefined;
}
