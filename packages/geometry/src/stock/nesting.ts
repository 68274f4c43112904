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

/** Bars of one length that an entry of the rack stands for. */
export interface StockLength {
  /** The entry. */
  readonly barIndex: number;
  /** mm; left out: as long as needed. */
  readonly length?: number;
  /** How many of that length; left out: one. */
  readonly count?: number;
}

/**
 * How many pieces of one length the bars in hand give: without end where one of them is as long as needed.
 *
 * @example
 * piecesFromBars([{ barIndex: 0, length: 300 }, { barIndex: 1, length: 210, count: 2 }], 99, 1.5); // 7
 */
export function piecesFromBars(bars: readonly StockLength[], piece: number, kerf: number): number {
  let pieces = 0;
  for (const { length, count = 1 } of bars)
    pieces += length === undefined ? Number.POSITIVE_INFINITY : count * piecesFromBar(length, piece, kerf);
  return pieces;
}

/** What is cut from one bar of the rack, mm. */
export interface CutFromBar {
  /** The entry of the rack that the bar belongs to. */
  readonly barIndex: number;
  /** Of the bar as it lies there; left out: as long as needed. */
  readonly length?: number;
  readonly pieces: number;
  /** What goes back on the rack; left out where the bar's length is not known. */
  readonly remainder?: number;
}

/** Best way to take so many pieces from the bars looked at so far; one bar at most is not cut up. */
interface Best {
  /** mm of the bars that are opened. */
  readonly opened: number;
  /** mm that the one bar leaves which was singled out to be left longest; below nothing: none was yet. */
  readonly left: number;
  readonly cuts: readonly CutFromBar[];
}

/** Below this two lengths are the same to any saw, mm. */
const SAME = 1e-6;

const isBetter = (a: Best, b: Best | undefined): boolean =>
  b === undefined || a.opened < b.opened - SAME || (a.opened < b.opened + SAME && a.left > b.left + SAME);

/**
 * Cuts equal pieces from bars of several lengths. Of all ways it takes the one that opens the least length of bar,
 * so that leftovers go before whole bars, and of those the one that leaves the longest single piece. A bar that is as
 * long as needed gives only what the others do not hold.
 *
 * Exact: in some best way all bars but one are cut up, for whatever they leave can be left by that one alone; so
 * whole bars are added one length after the other, and one bar with any number of pieces.
 *
 * @returns One entry for each bar that is cut, the longest left last of those with a length; `undefined` where the
 *   bars in hand do not hold that many pieces.
 *
 * @example
 * const bars = [{ barIndex: 0, length: 1000, count: 2 }, { barIndex: 1, length: 350 }];
 * nestFromBars(bars, 2, 160, 1.5); // [{ barIndex: 1, length: 350, pieces: 2, remainder: 27 }]
 */
export function nestFromBars(
  bars: readonly StockLength[],
  pieces: number,
  piece: number,
  kerf: number,
): CutFromBar[] | undefined {
  const endless = bars.find(({ length }) => length === undefined);
  const inHand = piecesFromBars(
    bars.filter(({ length }) => length !== undefined),
    piece,
    kerf,
  );
  if (inHand < pieces && endless === undefined) return undefined;
  const wanted = Math.min(pieces, inHand);
  const rest = pieces - wanted;
  return [
    ...(wanted === 0 ? [] : nestInHand(bars, wanted, piece, kerf)),
    ...(rest === 0 || endless === undefined ? [] : [{ barIndex: endless.barIndex, pieces: rest }]),
  ];
}

function nestInHand(bars: readonly StockLength[], wanted: number, piece: number, kerf: number): CutFromBar[] {
  // By number of pieces: with bars that are cut up only, and with the one that is left longest among them.
  let cutUp: (Best | undefined)[] = Array(wanted + 1).fill(undefined);
  let withOne: (Best | undefined)[] = Array(wanted + 1).fill(undefined);
  cutUp[0] = { opened: 0, left: -1, cuts: [] };
  for (const { barIndex, length, count = 1 } of bars) {
    if (length === undefined) continue;
    const each = piecesFromBar(length, piece, kerf);
    if (each === 0) continue;
    // The saw takes its kerf after the last piece too, unless the bar ends there.
    const cut = (taken: number): CutFromBar => ({
      barIndex,
      length,
      pieces: taken,
      remainder: Math.max(0, length - taken * (piece + kerf)),
    });
    const cutWhole = cut(each);
    const nextCutUp = [...cutUp];
    const nextWithOne = [...withOne];
    for (let had = 0; had < wanted; had++) {
      const from = cutUp[had];
      const fromOne = withOne[had];
      for (let whole = 0; whole <= count && had + whole * each <= wanted; whole++) {
        const at = had + whole * each;
        const opened = whole * length;
        const more = Array<CutFromBar>(whole).fill(cutWhole);
        if (whole > 0 && fromOne !== undefined)
          offer(nextWithOne, at, {
            opened: fromOne.opened + opened,
            left: fromOne.left,
            cuts: [...more, ...fromOne.cuts],
          });
        if (from === undefined) continue;
        const cuts = [...from.cuts, ...more];
        if (whole > 0) offer(nextCutUp, at, { opened: from.opened + opened, left: -1, cuts });
        if (whole === count) continue;
        for (let taken = 1; taken <= each && at + taken <= wanted; taken++) {
          const one = cut(taken);
          offer(nextWithOne, at + taken, {
            opened: from.opened + opened + length,
            left: one.remainder ?? 0,
            cuts: [...cuts, one],
          });
        }
      }
    }
    cutUp = nextCutUp;
    withOne = nextWithOne;
  }
  return [...(withOne[wanted]?.cuts ?? [])];
}

function offer(table: (Best | undefined)[], at: number, best: Best): void {
  if (isBetter(best, table[at])) table[at] = best;
}
