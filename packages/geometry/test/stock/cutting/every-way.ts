import type { CutRequest } from "../../../src/stock/cutting/cut-types.js";

/** The three numbers by which cut lists are compared, all the smaller the better. */
export interface WayCost {
  readonly endless: number;
  readonly opened: number;
  readonly leftover: number;
}

const isLess = (a: WayCost, b: WayCost): boolean =>
  a.endless !== b.endless
    ? a.endless < b.endless
    : a.opened !== b.opened
      ? a.opened < b.opened
      : a.leftover < b.leftover;

/**
 * The best of every way to put the pieces of the orders named onto the bars, one piece after the other onto each bar
 * in turn: no pattern, no bound, no solver. Lengths and kerf in whole numbers or halves, so that sums are exact.
 */
export function bestOfEveryWay(
  { pieces, bars, kerf }: CutRequest,
  orders: readonly string[],
): WayCost | undefined {
  const single = bars.flatMap(({ length, count = 1 }) =>
    length === undefined ? [] : Array<number>(count).fill(length),
  );
  const endlessAllowed = bars.some(({ length }) => length === undefined);
  const waiting = pieces.flatMap(({ order, length, count }) =>
    orders.includes(order) ? Array<number>(count).fill(length) : [],
  );
  /** Pieces and the cuts between them, for each bar; undefined: not opened. */
  const used: (number | undefined)[] = single.map(() => undefined);
  let best: WayCost | undefined;
  const place = (next: number, endless: number): void => {
    const piece = waiting[next];
    if (piece === undefined) {
      let opened = 0;
      let longest = 0;
      single.forEach((length, i) => {
        const sawn = used[i];
        if (sawn === undefined) return;
        opened += length;
        longest = Math.max(longest, length - sawn - kerf);
      });
      const cost = { endless, opened, leftover: -longest };
      if (best === undefined || isLess(cost, best)) best = cost;
      return;
    }
    single.forEach((length, i) => {
      const before = used[i];
      const after = before === undefined ? piece : before + kerf + piece;
      if (after > length) return;
      used[i] = after;
      place(next + 1, endless);
      used[i] = before;
    });
    if (endlessAllowed) place(next + 1, endless + piece + kerf);
  };
  place(0, 0);
  return best;
}
