import { type CutLayout, type CutProblem, isCheaper, layoutCost } from "./cut-problem.js";
import { SAW_HAIR } from "./saw-bar.js";

/** Which bar a piece opens that fits into none of those that are open: indices into the stocks, best first. */
type Opening = (candidates: readonly number[], problem: CutProblem, left: number) => number | undefined;

const OPENINGS: readonly Opening[] = [
  (candidates) => candidates[0],
  (candidates) => candidates.at(-1),
  // The shortest that takes all that is left, else the longest.
  (candidates, { stocks }, left) =>
    candidates.find((i) => (stocks[i]?.length ?? 0) >= left - SAW_HAIR) ?? candidates.at(-1),
];

/**
 * Lays pieces by a rule of thumb: longest first, each into the open bar that it leaves the least of; the best of
 * three ways to choose the next bar to open. Never better than the best there is, and may fail where a way exists.
 *
 * @returns `undefined` where it finds no place for some piece.
 */
export function layFirstFit(problem: CutProblem): CutLayout | undefined {
  const layouts = OPENINGS.flatMap((opening) => {
    const { layout, missing } = layPieces(problem, problem.demand, opening);
    return missing.some((count) => count > 0) ? [] : [layout];
  });
  const [first, ...others] = layouts;
  if (first === undefined) return undefined;
  return others.reduce(
    (best, layout) => (isCheaper(layoutCost(problem, layout), layoutCost(problem, best)) ? layout : best),
    first,
  );
}

/** Pieces of an order that find no place beside those of the orders before it. */
export function missingByFirstFit(problem: CutProblem, required: readonly number[]): number[] {
  const optional = problem.demand.map((count, i) => count - (required[i] ?? 0));
  const before = layFirstFit({ ...problem, demand: required });
  if (before === undefined) return optional;
  const opening = OPENINGS[0] as Opening;
  return layPieces(problem, optional, opening, before).missing;
}

interface OpenBar {
  readonly stock: number;
  readonly counts: number[];
  /** As if the bar were a cut longer: the last piece needs none behind it. */
  room: number;
}

function layPieces(
  problem: CutProblem,
  demand: readonly number[],
  opening: Opening,
  before: CutLayout = { bars: [], endless: problem.lengths.map(() => 0) },
): { readonly layout: CutLayout; readonly missing: number[] } {
  const { lengths, stocks, kerf } = problem;
  const open: OpenBar[] = before.bars.map(({ stock, counts }) => ({
    stock,
    counts: [...counts],
    room: counts.reduce(
      (left, n, i) => left - n * ((lengths[i] ?? 0) + kerf),
      (stocks[stock]?.length ?? 0) + kerf,
    ),
  }));
  const unopened = stocks.map(({ count }, i) => count - open.filter(({ stock }) => stock === i).length);
  const endless = [...before.endless];
  const missing = lengths.map(() => 0);
  let left = demand.reduce((sum, n, i) => sum + n * ((lengths[i] ?? 0) + kerf), -kerf);
  lengths.forEach((length, i) => {
    for (let n = 0; n < (demand[i] ?? 0); n++) {
      const bar = tightest(open, length + kerf) ?? openNext(length);
      if (bar !== undefined) {
        bar.counts[i] = (bar.counts[i] ?? 0) + 1;
        bar.room -= length + kerf;
      } else if (problem.endless) endless[i] = (endless[i] ?? 0) + 1;
      else missing[i] = (missing[i] ?? 0) + 1;
      left -= length + kerf;
    }
  });
  return { layout: { bars: open, endless }, missing };

  function openNext(length: number): OpenBar | undefined {
    const candidates = stocks.flatMap((stock, i) =>
      (unopened[i] ?? 0) > 0 && stock.length >= length - SAW_HAIR ? [i] : [],
    );
    const stock = opening(candidates, problem, left);
    if (stock === undefined) return undefined;
    unopened[stock] = (unopened[stock] ?? 0) - 1;
    const bar = { stock, counts: lengths.map(() => 0), room: (stocks[stock]?.length ?? 0) + kerf };
    open.push(bar);
    return bar;
  }
}

function tightest(open: readonly OpenBar[], needed: number): OpenBar | undefined {
  let best: OpenBar | undefined;
  for (const bar of open)
    if (bar.room >= needed - SAW_HAIR && (best === undefined || bar.room < best.room)) best = bar;
  return best;
}
