import { invariant } from "../../errors/errors.js";
import { type CutLayout, type CutProblem, indexOfLength, type LaidBar } from "./cut-problem.js";
import type { CutPiece, CutRequest, SawnBar, SawnPiece } from "./cut-types.js";
import { SAW_HAIR, sawBar } from "./saw-bar.js";

/** Takes off what a layout holds beyond what is wanted: from the endless bar first, then from the last bars on. */
export function trimLayout({ demand }: CutProblem, { bars, endless }: CutLayout): CutLayout {
  const surplus = demand.map(
    (wanted, i) => bars.reduce((sum, { counts }) => sum + (counts[i] ?? 0), endless[i] ?? 0) - wanted,
  );
  const take = (counts: readonly number[]): number[] =>
    counts.map((count, i) => {
      const off = Math.min(count, Math.max(0, surplus[i] ?? 0));
      surplus[i] = (surplus[i] ?? 0) - off;
      return count - off;
    });
  const endlessLeft = take(endless);
  const barsLeft: LaidBar[] = [];
  for (const { stock, counts } of [...bars].reverse()) barsLeft.unshift({ stock, counts: take(counts) });
  return { bars: barsLeft.filter(({ counts }) => counts.some((count) => count > 0)), endless: endlessLeft };
}

/**
 * Gives every place of a layout to a piece of an order, and every bar to an entry of the rack; saws each bar to see
 * what it leaves.
 *
 * @param layout - Holds exactly what is wanted.
 */
export function dealPieces(
  request: CutRequest,
  pieces: readonly CutPiece[],
  problem: CutProblem,
  layout: CutLayout,
): SawnBar[] {
  const { lengths, stocks, kerf } = problem;
  const orders = [...new Set(pieces.map(({ order }) => order))];
  const waiting = lengths.map((_, i) =>
    pieces
      .filter(({ length }) => indexOfLength(lengths, length) === i)
      .flatMap(({ order, length, count }) => Array<SawnPiece>(count).fill({ order, length })),
  );
  const place = (piece: SawnPiece): number => orders.indexOf(piece.order);
  const deal = (counts: readonly number[]): SawnPiece[] =>
    counts
      .flatMap((count, i) => waiting[i]?.splice(0, count) ?? [])
      .sort((a, b) => place(a) - place(b) || b.length - a.length);
  const inHand = stocks.map((stock) =>
    request.bars.flatMap(({ length, count = 1 }, bar) =>
      length !== undefined && Math.abs(length - stock.length) <= SAW_HAIR
        ? Array<number>(count).fill(bar)
        : [],
    ),
  );

  const sawn = [...layout.bars]
    .sort((a, b) => a.stock - b.stock)
    .map(({ stock, counts }): SawnBar => {
      const bar = inHand[stock]?.shift();
      const entry = bar === undefined ? undefined : request.bars[bar];
      invariant(bar !== undefined && entry?.length !== undefined, "a bar is cut that lies on the rack");
      const dealt = deal(counts);
      const leftover = sawBar(
        entry.length,
        dealt.map(({ length }) => length),
        kerf,
      );
      invariant(leftover !== undefined, "the pieces laid into a bar fit into it");
      const kept = leftover > SAW_HAIR && leftover >= request.minKeep - SAW_HAIR;
      return { bar, name: entry.name, length: entry.length, pieces: dealt, leftover, kept };
    });
  const endless = deal(layout.endless);
  const endlessBar = request.bars.findIndex(({ length }) => length === undefined);
  const name = request.bars[endlessBar]?.name ?? "";
  invariant(
    waiting.every((rest) => rest.length === 0),
    "every piece that is wanted was laid",
  );
  return [
    ...sawn,
    ...(endless.length === 0 ? [] : [{ bar: endlessBar, name, pieces: endless, kept: false }]),
  ];
}
