import type { QuantityValue } from "../errors/issue.js";
import type { Layers } from "./billet.js";
import { rankStacks } from "./ranking.js";
import type { FeasibleStack } from "./search.js";
import type { RackBar, StockLimits } from "./shop.js";

/** Why a stack cannot be proposed, in the order in which it is asked; the first that holds is counted. */
export const REFUSAL_REASONS = [
  "wrong-steel",
  "too-tall-for-press",
  "weld-reduction-too-small",
  "too-thin",
  "out-of-reach",
  "too-slender",
  "too-high",
  "lost-to-scale",
  "longer-than-forge",
  "bar-too-short",
] as const;
/** Why a bar or a stack cannot become the blade. */
export type RefusalReason = (typeof REFUSAL_REASONS)[number];

/** One sentence for each reason; `{value}` and `{limit}` are those of the one that is shown. */
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
  "too-high":
    "The bar or billet is too high and buckles on edge: {value} of its height would have to be driven in there; {limit} is the most. Sawn down along its length first, it would do.",
  "lost-to-scale": "The section burns or is ground away before any length of it feeds the blade.",
  "longer-than-forge": "The billet, {value} long, does not fit the forge, which takes {limit}.",
  "bar-too-short": "The bars in hand are too short. Pieces wanted: {value}; to be had: {limit}.",
};

/** Kind of number that a reason's value and limit are. */
const QUANTITIES: Readonly<Record<RefusalReason, QuantityValue["quantity"] | undefined>> = {
  "wrong-steel": undefined,
  "too-tall-for-press": "length",
  "weld-reduction-too-small": "share",
  "too-thin": "length",
  "out-of-reach": "share",
  "too-slender": "count",
  "too-high": "share",
  "lost-to-scale": undefined,
  "longer-than-forge": "length",
  "bar-too-short": "count",
};

/** A stack that was refused, and by how much. */
export interface RefusalExample {
  readonly bar: RackBar;
  readonly bars: number;
  readonly layers: Layers;
  readonly value?: QuantityValue;
  readonly limit?: QuantityValue;
  /** Where only the bars in hand are too short: what each piece would be cut to, mm. */
  readonly cutLength?: number;
}

/** How many stacks were refused for one reason, and the one that is shown for it. */
export interface Refusal {
  readonly reason: RefusalReason;
  readonly count: number;
  readonly text: string;
  /**
   * What a smith would look at first. Of those that miss by little the one of fewest bars, else the nearest miss; where
   * only the bars in hand are too short, the stack that would be proposed if they were longer.
   */
  readonly example: RefusalExample;
}

/** Verdict on one candidate: the place of the reason in `REFUSAL_REASONS`, or −1 for none; reused by the search. */
export interface Verdict {
  reason: number;
  value: number;
  limit: number;
}

/** A miss by less than this share of the limit: a bar of the next size would do. */
const LITTLE = 0.1;

interface Miss {
  readonly bar: RackBar;
  readonly bars: number;
  readonly layers: Layers;
  readonly value: number;
  readonly limit: number;
}

interface Short extends Miss {
  readonly stack: FeasibleStack;
}

/** By what share of the limit it is missed. */
const missOf = ({ value, limit }: Pick<Miss, "value" | "limit">): number =>
  value === limit ? 0 : Math.abs(value - limit) / Math.abs(limit);

/** Whether one miss is rather to be shown than another: few bars where both are small, else the smaller. */
function isNearer(bars: number, miss: number, than: Miss): boolean {
  const other = missOf(than);
  if (miss <= LITTLE !== other <= LITTLE) return miss <= LITTLE;
  const first = miss <= LITTLE ? bars - than.bars : miss - other;
  const second = miss <= LITTLE ? miss - other : bars - than.bars;
  // Two misses without end are no number apart.
  return first < 0 || (!(first > 0) && second < 0);
}

/**
 * Counts refusals by reason and keeps the one of each that is shown.
 *
 * @example
 * const tally = makeRefusalTally();
 * tally.add({ reason: 0, value: 80, limit: 75 }, { name: "6 x 40", width: 40, thickness: 6 }, 13, "flat");
 * tally.list(DEFAULT_SHOP.limits.reach).length; // 1
 */
export function makeRefusalTally() {
  const counts = new Float64Array(REFUSAL_REASONS.length);
  const shown: (Miss | undefined)[] = REFUSAL_REASONS.map(() => undefined);
  const short: Short[] = [];
  return {
    add({ reason, value, limit }: Verdict, bar: RackBar, bars: number, layers: Layers): void {
      counts[reason] = (counts[reason] ?? 0) + 1;
      const before = shown[reason];
      if (before === undefined || isNearer(bars, missOf({ value, limit }), before))
        shown[reason] = { bar, bars, layers, value, limit };
    },
    /** A stack that could be made if the bars in hand were longer. */
    addShort({ value, limit }: Verdict, bar: RackBar, stack: FeasibleStack): void {
      short.push({ bar, bars: stack.bars, layers: stack.layers, value, limit, stack });
    },
    list(limits: StockLimits["reach"]): Refusal[] {
      const [best] = rankStacks(
        short.map(({ stack }) => stack),
        limits,
      );
      return REFUSAL_REASONS.flatMap((reason, i): Refusal[] => {
        const tooShort = reason === "bar-too-short";
        const example = tooShort ? short.find(({ stack }) => stack === best) : shown[i];
        if (example === undefined) return [];
        const quantity = QUANTITIES[reason];
        const { bar, bars, layers, value, limit } = example;
        const numbers =
          quantity === undefined ? {} : { value: { quantity, value }, limit: { quantity, value: limit } };
        const cut = tooShort && best !== undefined ? { cutLength: best.cutLength } : {};
        return [
          {
            reason,
            count: tooShort ? short.length : (counts[i] ?? 0),
            text: REFUSAL_TEXTS[reason],
            example: { bar, bars, layers, ...numbers, ...cut },
          },
        ];
      });
    },
  };
}
