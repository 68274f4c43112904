import type { Ask, AskTest } from "./file/ask-fields.js";

/**
 * `met`: the whole interval lies inside the limits. `at-risk`: the computed value is inside, a part of its interval
 * is not. `not-met`: the computed value is outside.
 */
export type Verdict = "met" | "at-risk" | "not-met";

/**
 * The same in four steps. `met-within-band`: the whole interval lies inside, but one twice as wide would not, so it is met as
 * long as every size keeps to its tolerance. `met`: an interval twice as wide lies inside too.
 */
export type Standing = "met" | "met-within-band" | "at-risk" | "not-met";

/** A computed figure with the interval that it lies in 95 times of 100; one without an interval is exact. mm or g. */
export interface AskedFigure {
  readonly value: number;
  readonly interval?: readonly [number, number];
}

/** Whatever is asked by a test. */
export interface Asked {
  readonly test: AskTest;
}

export interface AskAnswer<A extends Asked = Ask> {
  readonly ask: A;
  readonly figure: AskedFigure;
  readonly verdict: Verdict;
  readonly standing: Standing;
  /** Distance of the value to the nearest limit; negative outside. */
  readonly margin: number;
  /** Half the width of the interval; 0 for an exact figure. A margin smaller than this is no certainty. */
  readonly band: number;
  /** Whether a limit lies inside the interval, so that the finished knife may fall on either side of it. */
  readonly limitInBand: boolean;
  /** Whether the value is a limit itself, as far as can be told. */
  readonly onLimit: boolean;
}

export interface AskLimits {
  readonly atLeast: number;
  readonly atMost: number;
  /** Whether a value on a limit meets it. */
  readonly inclusive: boolean;
}

/** Bands that have to fit inside the limits where an ask is met with room to spare. */
const ROOM = 2;

/** Computed lengths carry the last digits of a double: within a hundredth of a micrometre two figures are equal. */
const TIE = 1e-5;

/** The limits of a condition; one that there is not is infinite. */
export function limitsOf(test: AskTest): AskLimits {
  const none = { atLeast: Number.NEGATIVE_INFINITY, atMost: Number.POSITIVE_INFINITY };
  switch (test.kind) {
    case "below":
      return { ...none, atMost: test.limit, inclusive: false };
    case "above":
      return { ...none, atLeast: test.limit, inclusive: false };
    case "between":
      return { atLeast: test.low, atMost: test.high, inclusive: true };
    case "about":
      return { atLeast: test.value - test.minus, atMost: test.value + test.plus, inclusive: true };
  }
}

/**
 * Holds one figure against what was asked.
 *
 * @example
 * answerAsk(massBelow600g, { value: 590, interval: [560, 620] }).verdict; // "at-risk"
 * answerAsk(massBelow600g, { value: 570, interval: [550, 590] }).standing; // "met-within-band"
 */
export function answerAsk<A extends Asked>(ask: A, figure: AskedFigure): AskAnswer<A> {
  const limits = limitsOf(ask.test);
  const marginOf = (value: number): number => Math.min(value - limits.atLeast, limits.atMost - value);
  const meets = (value: number): boolean =>
    limits.inclusive ? marginOf(value) >= -TIE : marginOf(value) > TIE;
  const { value } = figure;
  const [low, high] = figure.interval ?? [value, value];
  const verdict = !meets(value) ? "not-met" : meets(low) && meets(high) ? "met" : "at-risk";
  const roomy = [low, high].every((end) => meets(value + ROOM * (end - value)));
  return {
    ask,
    figure,
    verdict,
    standing: verdict === "met" && !roomy ? "met-within-band" : verdict,
    margin: marginOf(figure.value),
    band: (high - low) / 2,
    limitInBand: [limits.atLeast, limits.atMost].some((limit) => low < limit && limit < high),
    onLimit: Math.abs(marginOf(figure.value)) <= TIE,
  };
}

/** Whether an answer means that the order as it stands cannot be kept: a wish that is missed does not. */
export function isFailed({ ask, verdict }: AskAnswer): boolean {
  return verdict === "not-met" && !ask.should;
}
