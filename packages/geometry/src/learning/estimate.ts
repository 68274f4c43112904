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
   * One standard deviation between jobs, the scale's own error taken off: a share of the figure where jobs spread by ratio,
   * else in the figure's unit.
   */
  readonly scatter: number;
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
export function estimate(own: Banded, jobs: readonly Sample[], spreading: Spreading): Estimate {
  const prior = centred(own, spreading);
  const samples = inWorking(jobs, spreading);
  const doubt2 = (prior?.deviation ?? 0) ** 2 / 2;
  const ofJobs = samples.length === 0 ? undefined : fromWorking(meanOf(samples, doubt2), spreading);
  if (prior === undefined || samples.length < LEAST_JOBS)
    return { ...own, jobs: samples.length, ofJobs, scatter: Math.sqrt(doubt2), ownWeight: 1 };
  const freedoms = SCATTER_JOBS + samples.length - 1;
  const scatter2 = pooledScatter(doubt2, samples);
  // The variance to expect is more than its estimate, the more so the fewer jobs it is from.
  const expected2 = (scatter2 * freedoms) / (freedoms - 2);
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
    jobs: samples.length,
    ofJobs,
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

/** Variance between jobs: what is expected of them beforehand and what they show, each by how much it counts. */
function pooledScatter(expected: number, samples: readonly Sample[]): number {
  const freedoms = samples.length - 1;
  const mean = meanOf(samples, expected);
  const squares = sum(samples.map(({ value }) => (value - mean) ** 2));
  const ofScale = (sum(samples.map(({ error }) => error ** 2)) / samples.length) * freedoms;
  return (SCATTER_JOBS * expected + Math.max(0, squares - ofScale)) / (SCATTER_JOBS + freedoms);
}

/** Mean by precision; plain where no scatter is expected. */
function meanOf(samples: readonly Sample[], scatter2: number): number {
  const weightOf = ({ error }: Sample): number => (scatter2 > 0 ? 1 / (scatter2 + error ** 2) : 1);
  return sum(samples.map((one) => one.value * weightOf(one))) / sum(samples.map(weightOf));
}

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
