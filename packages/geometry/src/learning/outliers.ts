import type { Banded } from "../stock/shop.js";
import { OF_OWN, type Sample, SCATTER_JOBS } from "./estimate.js";
import { centred, errorInWorking, type Spreading, toWorking } from "./working-scale.js";

/** Fewer jobs cannot tell which of them is the odd one. */
export const HANDFUL = 5;
/** Deviations from the middle at which a job is set aside. Source: Iglewicz and Hoaglin, How to Detect and Handle Outliers, ASQC, 1993. */
export const FAR = 3.5;
/** Standard deviation of a normal distribution over its median absolute deviation. Source: the same. */
const PER_MEDIAN_DEVIATION = 1.4826;

/** The jobs of one figure as far as their middle and their spread go, none of which a single wild one can move. */
export interface Middle {
  readonly centre: number;
  /** Robust standard deviation, never less than what a few jobs at the shop's own scatter allow. */
  readonly deviation: number;
  readonly spreading: Spreading;
  /** Whether it is that of the jobs; else that of the shop's own figure. */
  readonly ofJobs: boolean;
  /** What it is, for a sentence: `what the shop reckons with,`. */
  readonly words: string;
  /** What else speaks for a reading that does not lie far from it: the shop's own figure, where few jobs stand in its place. */
  readonly besides?: Middle;
}

/**
 * What a job is held against while there are few: the shop's own figure and band.
 *
 * @example
 * middleOfOwn({ value: 3, low: 1.5, high: 6 }, "ratio").ofJobs; // false
 */
export function middleOfOwn(own: Banded, spreading: Spreading, words = OWN_WORDS): Middle {
  const prior = centred(own, spreading) ?? { centre: toWorking(own.value, spreading), deviation: 0 };
  return { ...prior, spreading, ofJobs: false, words };
}

const OWN_WORDS = "what the shop reckons with,";

/**
 * What a job is held against with a {@link HANDFUL} of them: their median and median absolute deviation, pooled with the
 * scatter that the shop's band implies, so that a few alike do not make all others odd.
 *
 * @param jobs - At least one.
 * @param implied - How much of the band's variance is one job differing from the next.
 *
 * @example
 * const jobs = [2.9, 3, 3.1, 3, 30].map((value) => ({ value, error: 0 }));
 * Math.exp(middleOfJobs({ value: 3, low: 1.5, high: 6 }, jobs, "ratio").centre); // 3
 */
export function middleOfJobs(
  own: Banded,
  jobs: readonly Sample[],
  spreading: Spreading,
  implied = OF_OWN.scatter,
): Middle {
  const expected2 = (centred(own, spreading)?.deviation ?? 0) ** 2 * implied;
  const values = jobs.map(({ value }) => toWorking(value, spreading));
  const centre = median(values);
  const shown = PER_MEDIAN_DEVIATION * median(values.map((value) => Math.abs(value - centre)));
  const freedoms = jobs.length - 1;
  const deviation = Math.sqrt((SCATTER_JOBS * expected2 + freedoms * shown ** 2) / (SCATTER_JOBS + freedoms));
  return { centre, deviation, spreading, ofJobs: true, words: "the other jobs, which lie about" };
}

/**
 * How far a reading lies from the middle, over the distance at which it is too far; its own error counts with it.
 *
 * @example
 * farness({ value: 6, error: 0 }, middleOfOwn({ value: 3, low: 1.5, high: 6 }, "ratio")); // 0.56
 */
export function farness({ value, error }: Sample, middle: Middle): number {
  const off = Math.abs(toWorking(value, middle.spreading) - middle.centre);
  if (off === 0) return 0;
  return off / (FAR * Math.hypot(middle.deviation, errorInWorking(value, error, middle.spreading)));
}

/**
 * Whether a reading lies too far from the middle to be one of them.
 *
 * @example
 * const own = { value: 0.012, low: 0.006, high: 0.02 };
 * isFar({ value: 0.12, error: 0 }, middleOfOwn(own, "ratio")); // true
 */
export const isFar = (sample: Sample, middle: Middle): boolean => !(farness(sample, middle) <= 1);

/**
 * The middle one of some numbers; between two, half way.
 *
 * @example
 * median([3, 1, 2, 10]); // 2.5
 */
export function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  const half = sorted.length / 2;
  const upper = sorted[Math.floor(half)] ?? Number.NaN;
  return Number.isInteger(half) ? ((sorted[half - 1] ?? upper) + upper) / 2 : upper;
}
