import type { QuantityValue } from "../errors/issue.js";
import type { Layers } from "./billet.js";
import type { RackBar } from "./shop.js";

/** Why a stack cannot be proposed, in the order in which it is asked; the first that holds is counted. */
export const REFUSAL_REASONS = [
  "wrong-steel",
  "too-tall-for-press",
  "weld-reduction-too-small",
  "too-thin",
  "out-of-reach",
  "too-slender",
  "lost-to-scale",
  "longer-than-forge",
  "bar-too-short",
] as const;
/** Why a bar or a stack cannot become the blade. */
export type RefusalReason = (typeof REFUSAL_REASONS)[number];

/** One sentence for each reason; `{value}` and `{limit}` are those of the nearest miss. */
export const REFUSAL_TEXTS: Readonly<Record<RefusalReason, string>> = {
  "wrong-steel": "The bar is of another steel than the knife.",
  "too-tall-for-press": "The stack, {value} high, does not go into the press, which opens {limit}.",
  "weld-reduction-too-small":
    "The joints could be squeezed by {value} only before the stack is as thin as the forged blade; {limit} is the least.",
  "too-thin": "The bar or billet, {value} thick, is too thin: the forged blade is {limit} thick.",
  "out-of-reach":
    "To reach the blade's height, {value} of the thinning would have to go into height; {limit} is the most that fullers do.",
  "too-slender":
    "Pressed on edge the piece buckles: {value} times as high as thick, where {limit} is the limit.",
  "lost-to-scale": "The section burns or is ground away before any length of it feeds the blade.",
  "longer-than-forge": "The billet, {value} long, does not fit the forge, which takes {limit}.",
  "bar-too-short": "The bars in hand are too short: {value} of bar is needed, {limit} is there.",
};

/** Kind of number that a reason's value and limit are. */
const QUANTITIES: Readonly<Record<RefusalReason, QuantityValue["quantity"] | undefined>> = {
  "wrong-steel": undefined,
  "too-tall-for-press": "length",
  "weld-reduction-too-small": "share",
  "too-thin": "length",
  "out-of-reach": "share",
  "too-slender": "count",
  "lost-to-scale": undefined,
  "longer-than-forge": "length",
  "bar-too-short": "length",
};

/** A stack that was refused, and by how much. */
export interface RefusalExample {
  readonly bar: RackBar;
  readonly bars: number;
  readonly layers: Layers;
  readonly value?: QuantityValue;
  readonly limit?: QuantityValue;
}

/** How many stacks were refused for one reason, and the one that came nearest. */
export interface Refusal {
  readonly reason: RefusalReason;
  readonly count: number;
  readonly text: string;
  /** The nearest miss. */
  readonly example: RefusalExample;
}

/** Verdict on one candidate: the place of the reason in `REFUSAL_REASONS`, or −1 for none; reused by the search. */
export interface Verdict {
  reason: number;
  value: number;
  limit: number;
}

interface Nearest {
  readonly bar: RackBar;
  readonly bars: number;
  readonly layers: Layers;
  readonly value: number;
  readonly limit: number;
}

/**
 * Counts refusals by reason and keeps the nearest miss of each.
 *
 * @example
 * const tally = makeRefusalTally();
 * tally.add({ reason: 0, value: 80, limit: 75 }, { name: "6 x 40", width: 40, thickness: 6 }, 13, "flat");
 * tally.list().length; // 1
 */
export function makeRefusalTally() {
  const counts = new Float64Array(REFUSAL_REASONS.length);
  const misses = new Float64Array(REFUSAL_REASONS.length).fill(Number.POSITIVE_INFINITY);
  const nearest: (Nearest | undefined)[] = REFUSAL_REASONS.map(() => undefined);
  return {
    add(verdict: Verdict, bar: RackBar, bars: number, layers: Layers): void {
      const { reason, value, limit } = verdict;
      counts[reason] = (counts[reason] ?? 0) + 1;
      const miss = Math.abs(value - limit);
      if (nearest[reason] !== undefined && miss >= (misses[reason] ?? 0)) return;
      misses[reason] = miss;
      nearest[reason] = { bar, bars, layers, value, limit };
    },
    list(): Refusal[] {
      return REFUSAL_REASONS.flatMap((reason, i) => {
        const example = nearest[i];
        if (example === undefined) return [];
        const quantity = QUANTITIES[reason];
        const { bar, bars, layers, value, limit } = example;
        const numbers =
          quantity === undefined ? {} : { value: { quantity, value }, limit: { quantity, value: limit } };
        return [
          {
            reason,
            count: counts[i] ?? 0,
            text: REFUSAL_TEXTS[reason],
            example: { bar, bars, layers, ...numbers },
          },
        ];
      });
    },
  };
}
