import type { Banded } from "../stock/shop.js";
import { LEAST_JOBS, type Sample } from "./estimate.js";
import { NORMAL_LIMIT } from "./student.js";
import { errorInWorking, type Spreading, toWorking } from "./working-scale.js";

/** How well each job is foretold by all the others. */
export interface HeldOut {
  readonly jobs: number;
  /** Jobs that came out within the band that the others give. */
  readonly within: number;
}

/**
 * Leaves out one job after the other and foretells it from the rest: a test of the band that no job had a hand in. The
 * scale's own error is added to the band, for it is in the reading that was foretold.
 *
 * @param foretell - What to reckon with, from the others alone.
 * @returns undefined where leaving one out leaves too few to say anything.
 *
 * @example
 * const jobs = [0.012, 0.013, 0.011, 0.06].map((value) => ({ value, error: 0 }));
 * const own = { value: 0.012, low: 0.006, high: 0.02 };
 * holdOut((others) => estimate(own, others, "ratio"), jobs, "ratio"); // { jobs: 4, within: 3 }
 */
export function holdOut(
  foretell: (others: readonly Sample[]) => Banded,
  jobs: readonly Sample[],
  spreading: Spreading,
): HeldOut | undefined {
  if (jobs.length <= LEAST_JOBS) return undefined;
  const within = jobs.filter((job, index) => {
    const { value, low, high } = foretell(jobs.toSpliced(index, 1));
    const [is, told, bottom, top] = [job.value, value, low, high].map((each) =>
      toWorking(each, spreading),
    ) as [number, number, number, number];
    const half = is < told ? told - bottom : top - told;
    return (
      Math.abs(is - told) <= Math.hypot(half, NORMAL_LIMIT * errorInWorking(job.value, job.error, spreading))
    );
  });
  return { jobs: jobs.length, within: within.length };
}
