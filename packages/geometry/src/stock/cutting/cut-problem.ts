import type { CutBar, CutPiece } from "./cut-types.js";
import { SAW_HAIR, sawBar } from "./saw-bar.js";

/**
 * A cutting problem as it is solved: pieces by length, whose they are forgotten; bars by length. Lengths mm.
 */
export interface CutProblem {
  /** Longest first, each once. */
  readonly lengths: readonly number[];
  /** How many of each. */
  readonly demand: readonly number[];
  /** Bars with a length, shortest first, each length once. */
  readonly stocks: readonly { readonly length: number; readonly count: number }[];
  /** Whether there is a bar that is as long as needed. */
  readonly endless: boolean;
  readonly kerf: number;
}

/** Pieces of each length in one bar of a stock. */
export interface LaidBar {
  readonly stock: number;
  readonly counts: readonly number[];
}

/** A solution of a cutting problem. */
export interface CutLayout {
  readonly bars: readonly LaidBar[];
  /** Pieces of each length from the bar that is as long as needed. */
  readonly endless: readonly number[];
}

/** What makes one layout better than another, the first that differs decides; all the smaller the better, mm. */
export interface LayoutCost {
  /** From bars that are as long as needed, cuts included. */
  readonly endless: number;
  /** Length of all bars opened. */
  readonly opened: number;
  /** The longest leftover, negative: the longer the better. */
  readonly leftover: number;
}

/** Index of a length in a sorted list of lengths. */
export const indexOfLength = (lengths: readonly number[], length: number): number =>
  lengths.findIndex((other) => Math.abs(other - length) <= SAW_HAIR);

/** Puts pieces and bars together by length. */
export function makeCutProblem(
  pieces: readonly CutPiece[],
  bars: readonly CutBar[],
  kerf: number,
): CutProblem {
  const lengths: number[] = [];
  for (const { length } of [...pieces].sort((a, b) => b.length - a.length))
    if (indexOfLength(lengths, length) < 0) lengths.push(length);
  const demand = lengths.map(() => 0);
  for (const { length, count } of pieces) {
    const i = indexOfLength(lengths, length);
    demand[i] = (demand[i] ?? 0) + count;
  }
  const stocks: { length: number; count: number }[] = [];
  for (const { length, count = 1 } of bars) {
    if (length === undefined) continue;
    const same = stocks.find((stock) => Math.abs(stock.length - length) <= SAW_HAIR);
    if (same === undefined) stocks.push({ length, count });
    else same.count += count;
  }
  stocks.sort((a, b) => a.length - b.length);
  return { lengths, demand, stocks, endless: bars.some(({ length }) => length === undefined), kerf };
}

/** The pieces of a bar as a list of lengths, longest first. */
export const pieceLengths = (lengths: readonly number[], counts: readonly number[]): number[] =>
  lengths.flatMap((length, i) => Array<number>(counts[i] ?? 0).fill(length));

/** What a layout costs. */
export function layoutCost(problem: CutProblem, layout: CutLayout): LayoutCost {
  const { lengths, stocks, kerf } = problem;
  let opened = 0;
  let longest = 0;
  for (const { stock, counts } of layout.bars) {
    const length = stocks[stock]?.length ?? 0;
    opened += length;
    longest = Math.max(longest, sawBar(length, pieceLengths(lengths, counts), kerf) ?? 0);
  }
  const endless = layout.endless.reduce((sum, n, i) => sum + n * ((lengths[i] ?? 0) + kerf), 0);
  return { endless, opened, leftover: -longest };
}

/** Whether a layout costs less than another, by the first number in which they differ. */
export function isCheaper(a: LayoutCost, b: LayoutCost): boolean {
  for (const name of ["endless", "opened", "leftover"] as const)
    if (Math.abs(a[name] - b[name]) > SAW_HAIR) return a[name] < b[name];
  return false;
}

/**
 * Length that has to be taken whatever the layout: a bar of length `L` gives no more than `L + kerf` of pieces with
 * the cut behind each, so of every length taken at most the share `(L + kerf)/L` is pieces and cuts.
 */
export function takenAtLeast({ lengths, demand, stocks, endless, kerf }: CutProblem): number {
  const shortest = lengths.at(-1) ?? 0;
  let needed = demand.reduce((sum, n, i) => sum + n * ((lengths[i] ?? 0) + kerf), 0);
  const usable = stocks.filter(({ length }) => length >= shortest - SAW_HAIR);
  const [only] = usable;
  if (usable.length === 1 && only !== undefined && !endless)
    return Math.ceil((needed / (only.length + kerf)) * (1 - 1e-12)) * only.length;
  // The shorter a bar, the more the cut that its last piece does not need is worth.
  let taken = 0;
  for (const { length, count } of usable) {
    const share = Math.min(1, needed / (count * (length + kerf)));
    taken += share * count * length;
    needed -= share * count * (length + kerf);
  }
  return taken + Math.max(0, needed);
}
