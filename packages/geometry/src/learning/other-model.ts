import type { ScaleModel } from "../stock/shop.js";
import type { LearntJob } from "./learnt-job.js";

/** How near jobs lie together when scale is counted in the one way and in the other. */
export interface ModelsCompared {
  /** The way that the shop does not use. */
  readonly other: ScaleModel;
  /** Jobs that can be counted both ways. */
  readonly jobs: number;
  /** Standard deviation between them as a share of the figure. */
  readonly apart: number;
  readonly otherApart: number;
}

/** Fewer jobs cannot tell which way is better. */
const LEAST = 5;

/**
 * Holds the two ways of counting scale against each other, over the jobs that can be counted in both: the one in which jobs
 * lie nearer together foretells better.
 *
 * @returns undefined with fewer than five such jobs.
 *
 * @example
 * const job = (file: string, value: number) => ({ file, on: "2026-11-28", value, error: 0 });
 * const shares = [1, 2, 1, 2, 1].map((value, i) => job(String(i), value));
 * const skins = [3, 3, 3, 3, 3].map((value, i) => job(String(i), value));
 * compareModels("skin", shares, skins)?.otherApart; // 0
 */
export function compareModels(
  other: ScaleModel,
  jobs: readonly LearntJob[],
  otherJobs: readonly LearntJob[],
): ModelsCompared | undefined {
  const pairs = jobs.flatMap((job) => {
    const same = otherJobs.find(({ file }) => file === job.file);
    return same === undefined ? [] : [[job.value, same.value] as const];
  });
  if (pairs.length < LEAST) return undefined;
  return {
    other,
    jobs: pairs.length,
    apart: deviation(pairs.map(([value]) => Math.log(value))),
    otherApart: deviation(pairs.map(([, value]) => Math.log(value))),
  };
}

function deviation(numbers: readonly number[]): number {
  const mean = numbers.reduce((total, one) => total + one, 0) / numbers.length;
  const squares = numbers.reduce((total, one) => total + (one - mean) ** 2, 0);
  return Math.sqrt(squares / (numbers.length - 1));
}
