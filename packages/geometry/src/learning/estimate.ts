import type { Banded } from "../stock/shop.js";
import { NORMAL_LIMIT, studentLimit } from "./student.js";
import {
  type Centred,
  centred,
  errorInWorking,
  fromWorking,
  type Spreading,
  toWorking,
} from "./working-scale.js";

/** What one job says of a figure. */
export interface Sample {
  readonly value: number;
  /** Standard error that comes from the scale or the caliper alone, not from the work. */
  readonly error: number;
}

/** What jobs and the shop's own figure say together. */
export interface Estimate {
  /** What to reckon with: between the shop's own figure and the jobs. */
  readonly value: number;
  /** Where 95 of 100 further jobs are to come out. */
  readonly low: number;
  readonly high: number;
  readonly jobs: number;
  /** What the jobs alone say; undefined without any. */
  readonly ofJobs: number | undefined;
  /**
   * One standard deviation between jobs that is reckoned with, the scale's own error taken off: a share of the figure where jobs spread by ratio,
   * else in the figure's unit.
   */
  readonly scatter: number;
  /** The same of the jobs alone, with nothing of the shop's band in it; undefined with fewer than {@link LEAST_JOBS}. */
  readonly apart: number | undefined;
  /** How much of the answer is the shop's own figure: 1 before there are jobs. */
  readonly ownWeight: number;
}

/** Jobs below this number say nothing of how far jobs lie apart, and the shop's own figure stays. */
export const LEAST_JOBS = 2;

/**
 * How many jobs the scatter that a shop's band implies counts for. Judgement: a band that a smith puts down from memory is
 * worth a few jobs, and one freak pair of records must not make it narrow.
 */
export const SCATTER_JOBS = 3;

/**
 * A shop's own figure held together with what jobs came out at, by the normal model with a normal prior: the shop's figure
 * counts as one reading of the shop's true one, jobs as others, each by one over its variance.
 *
 * The shop's band is where the next job may come out. Half of its variance is taken as not knowing the shop's true figure,
 * half as one job differing from the next (judgement: nothing in a file tells them apart). The scatter between jobs is
 * pooled from that half, which counts for {@link SCATTER_JOBS}, and the jobs' own; jobs weigh by the variance that is to be
 * expected from it, which is greater, so that few jobs move the figure little. The band of the answer is for the next job:
 * doubt of the figure, and scatter with the limit of Student's distribution, in squares. With fewer than
 * {@link LEAST_JOBS} jobs the figure and its band stay exactly as they are.
 *
 * Source: conjugate normal prior of a normal mean, and the scaled inverse chi-square of its variance, from memory (any
 * textbook of Bayesian statistics).
 *
 * @param own - The shop's figure with its band, or the published default's.
 * @param jobs - In any order; outliers are taken out before.
 *
 * @example
 * const own = { value: 0.012, low: 0.006, high: 0.02 };
 * const jobs = [0.017, 0.019, 0.018, 0.016].map((value) => ({ value, error: 0 }));
 * estimate(own, jobs, "ratio").value; // 0.0164, where the jobs alone say 0.01747
 */
export const estimate = (own: Banded, jobs: readonly Sample[], spreading: Spreading): Estimate =>
  held(own, jobs, spreading, OF_OWN);

/**
 * The same where the shop has no figure of its own: jobs alone say where the middle lies, for a middle that was taken from them
 * must not count again beside them. All of the band that stands in is one job differing from the next.
 *
 * @param band - That of such figures, about anything; with fewer than {@link LEAST_JOBS} jobs it is the answer.
 *
 * @example
 * const jobs = [2, 2, 2, 2].map((value) => ({ value, error: 0 }));
 * estimateAnew({ value: 3, low: 1.5, high: 6 }, jobs, "ratio").value; // 2
 */
export const estimateAnew = (band: Banded, jobs: readonly Sample[], spreading: Spreading): Estimate =>
  held(band, jobs, spreading, ANEW);

/** How much of a band's variance is not knowing the shop's true figure, and how much one job differing from the next. */
interface Parts {
  readonly doubt: number;
  readonly scatter: number;
}

/** Of a shop's own figure. Judgement: nothing in a file tells the two apart. */
export const OF_OWN: Parts = { doubt: 1 / 2, scatter: 1 / 2 };
/** Where the shop has none. */
export const ANEW: Parts = { doubt: Number.POSITIVE_INFINITY, scatter: 1 };

function held(own: Banded, jobs: readonly Sample[], spreading: Spreading, parts: Parts): Estimate {
  const prior = centred(own, spreading);
  const samples = inWorking(jobs, spreading);
  const band2 = (prior?.deviation ?? 0) ** 2;
  const implied2 = band2 * parts.scatter;
  const shown2 = samples.length < LEAST_JOBS ? undefined : shownScatter(implied2, samples);
  const told = {
    jobs: samples.length,
    ofJobs: samples.length === 0 ? undefined : fromWorking(meanOf(samples, implied2), spreading),
    apart: shown2 === undefined ? undefined : Math.sqrt(shown2),
  };
  if (prior === undefined || shown2 === undefined)
    return { ...own, ...told, scatter: Math.sqrt(implied2), ownWeight: 1 };
  const freedoms = SCATTER_JOBS + samples.length - 1;
  const scatter2 = (SCATTER_JOBS * implied2 + (samples.length - 1) * shown2) / freedoms;
  // The variance to expect is more than its estimate, the more so the fewer jobs it is from.
  const expected2 = (scatter2 * freedoms) / (freedoms - 2);
  const doubt2 = band2 * parts.doubt;
  const joined = joinNormal({ centre: prior.centre, deviation: Math.sqrt(doubt2) }, samples, expected2);
  const half = Math.hypot(NORMAL_LIMIT * joined.deviation, studentLimit(freedoms) * Math.sqrt(scatter2));
  const [low, value, high] = [-half, 0, half].map((by) => fromWorking(joined.centre + by, spreading)) as [
    number,
    number,
    number,
  ];
  return {
    value,
    low,
    high,
    ...told,
    scatter: Math.sqrt(scatter2),
    ownWeight: joined.deviation ** 2 / doubt2,
  };
}

/**
 * The mean of normal readings whose scatter is known, joined with a normal prior: precisions add, and the centre is their
 * weighted mean.
 *
 * @param scatter2 - Variance between jobs; each sample's own error comes on top.
 * @returns Centre, and standard deviation of the mean.
 *
 * @example
 * // prior 0 ± 1, four readings of 1 with a variance of 1: weights 1 and 4
 * const four = [1, 1, 1, 1].map((value) => ({ value, error: 0 }));
 * joinNormal({ centre: 0, deviation: 1 }, four, 1).centre; // 0.8
 */
export function joinNormal(prior: Centred, samples: readonly Sample[], scatter2: number): Centred {
  let precision = 1 / prior.deviation ** 2;
  let weighted = prior.centre * precision;
  for (const { value, error } of samples) {
    const weight = 1 / (scatter2 + error ** 2);
    precision += weight;
    weighted += weight * value;
  }
  return { centre: weighted / precision, deviation: Math.sqrt(1 / precision) };
}

/**
 * Variance between jobs as they show it themselves, the scale's own error taken off: a reading that the scale hardly tells says
 * little of it either.
 */
function shownScatter(implied2: number, samples: readonly Sample[]): number {
  const mean = meanOf(samples, implied2);
  const parts = samples.map((one) => {
    const weight = precisionOf(one, implied2);
    return { weight, squares: weight * (one.value - mean) ** 2, ofScale: weight * one.error ** 2 };
  });
  const shown = sum(parts.map(({ squares }) => squares)) * (samples.length / (samples.length - 1));
  const ofScale = sum(parts.map((part) => part.ofScale));
  return Math.max(0, shown - ofScale) / sum(parts.map(({ weight }) => weight));
}

/** Mean by precision. */
function meanOf(samples: readonly Sample[], scatter2: number): number {
  const weighted = sum(samples.map((one) => one.value * precisionOf(one, scatter2)));
  return weighted / sum(samples.map((one) => precisionOf(one, scatter2)));
}

/** What a sample counts for: alike where no scatter is expected. */
const precisionOf = ({ error }: Sample, scatter2: number): number =>
  scatter2 > 0 ? 1 / (scatter2 + error ** 2) : 1;

/** Sorted, so that the last digits do not depend on the order in which records were found. */
function inWorking(jobs: readonly Sample[], spreading: Spreading): Sample[] {
  return jobs
    .map(({ value, error }) => ({
      value: toWorking(value, spreading),
      error: errorInWorking(value, error, spreading),
    }))
    .sort((a, b) => a.value - b.value || a.error - b.error);
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);
