import type { Piece } from "../numeric/adaptive.js";

/** What is shorter than this is no zone of its own, mm; to a quarter of it the beginning or end of one is found. */
export const ZONE_SLACK = 2e-6;
/** How often a piece of x is divided for zones that come or go inside it. */
const MOST_CHANGES = 5;

/**
 * Divides pieces of x until the stations at both ends of each consist of the same zones.
 *
 * @param markAt - a number for the zones that a station consists of.
 * @param slack - how far inside a piece its ends are looked at, mm: no less than what the pieces themselves are found to.
 */
export function alikePieces(
  pieces: readonly Piece[],
  markAt: (x: number) => number,
  slack = ZONE_SLACK,
): Piece[] {
  const alike: Piece[] = [];
  for (const { from, to } of pieces) {
    let start = from;
    for (let change = 0; change < MOST_CHANGES && to - start > 4 * slack; change++) {
      let a = start + slack;
      let b = to - slack;
      const first = markAt(a);
      if (markAt(b) === first) break;
      while (b - a > slack / 4) {
        const x = (a + b) / 2;
        if (markAt(x) === first) a = x;
        else b = x;
      }
      const end = (a + b) / 2;
      alike.push({ from: start, to: end });
      start = end;
    }
    alike.push({ from: start, to });
  }
  return alike;
}
