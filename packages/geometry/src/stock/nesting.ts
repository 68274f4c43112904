/**
 * How many pieces of one length a bar gives: `m·piece + (m − 1)·kerf ≤ length`; where the last piece ends with the bar
 * no cut is needed for it.
 *
 * @example
 * piecesFromBar(300, 99, 1.5); // 3
 */
export function piecesFromBar(length: number, piece: number, kerf: number): number {
  return Math.max(0, Math.floor(((length + kerf) / (piece + kerf)) * (1 + 1e-12)));
}

/** What is cut from one bar of the rack, mm. */
export interface CutFromBar {
  readonly pieces: number;
  /** What goes back on the rack. */
  readonly remainder: number;
}

/**
 * Cuts equal pieces from equal bars, filling one bar before the next is touched, so that the fewest bars are opened.
 *
 * @returns One entry for each bar that is cut, or `undefined` where the bars in hand do not hold that many pieces.
 *
 * @example
 * nestCuts(1000, 1, 3, 160, 1.5); // [{ pieces: 3, remainder: 515.5 }]
 */
export function nestCuts(
  barLength: number,
  barCount: number,
  pieces: number,
  piece: number,
  kerf: number,
): CutFromBar[] | undefined {
  const each = piecesFromBar(barLength, piece, kerf);
  if (each * barCount < pieces) return undefined;
  const cuts: CutFromBar[] = [];
  for (let left = pieces; left > 0; left -= each) {
    const taken = Math.min(each, left);
    // The saw takes its kerf after the last piece too, unless the bar ends there.
    cuts.push({ pieces: taken, remainder: Math.max(0, barLength - taken * (piece + kerf)) });
  }
  return cuts;
}
