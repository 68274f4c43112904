import type { Issue } from "../errors/issue.js";
import type { Banded } from "../stock/shop.js";
import type { Candidate, KeptCandidate } from "./candidate.js";
import { middleOfFew } from "./doubted-shop.js";
import { ANEW, OF_OWN, type Sample } from "./estimate.js";
import { explanations, farIssue, withSlips } from "./explain-slip.js";
import { type FigurePath, figureOf } from "./figures.js";
import { jobsOf } from "./learnt-job.js";
import { farness, HANDFUL, isFar, type Middle, middleOfJobs, middleOfOwn } from "./outliers.js";

/** A reading that was left out, and why. */
export interface LeftOut {
  readonly of: FigurePath;
  readonly file: string;
  readonly on: string;
  /** What is wrong with it, as a sentence; its `path` is empty. */
  readonly issue: Issue;
}

/** The readings that count, and those that do not. */
export interface Screened {
  readonly kept: readonly KeptCandidate[];
  readonly leftOut: readonly LeftOut[];
}

/**
 * Parts readings of one figure that can be counted on from those that cannot: what is impossible, what a slip explains, and,
 * with a handful of jobs, what lies too far from all the others. Readings are held against the middle of *jobs*, one mean each,
 * so that one record of many places outvotes nobody.
 *
 * The farthest goes first, then the others are judged as if it had never been there, until none is odd: it never comes back,
 * so that it ends, and what was left out moves nothing.
 *
 * @param own - The shop's own figure, which stands in for the others while there are few and do not agree on another; how to make
 * it of them, where it has none.
 *
 * @example
 * screen("losses.scalePerHeat", { value: 0.012, low: 0.006, high: 0.02 }, []); // { kept: [], leftOut: [] }
 */
export function screen(
  of: FigurePath,
  own: Banded | ((jobs: readonly Sample[]) => Banded),
  candidates: readonly Candidate[],
): Screened {
  const { spreading } = figureOf(of);
  const middleOf = (some: readonly KeptCandidate[]): Middle => {
    const jobs = jobsOf(some);
    const isNew = typeof own === "function";
    const figure = isNew ? own(jobs) : own;
    if (jobs.length >= HANDFUL) return middleOfJobs(figure, jobs, spreading, (isNew ? ANEW : OF_OWN).scatter);
    return isNew ? middleOfOwn(figure, spreading, FEW_WORDS) : middleOfFew(of, figure, jobs);
  };
  const held = new Map<Candidate, Middle>();
  let kept = candidates.flatMap((candidate): KeptCandidate[] => {
    const outcome = candidate.compute(candidate.readings.map(({ value }) => value));
    return "value" in outcome ? [{ candidate, value: outcome.value }] : [];
  });
  let middle = middleOf(kept);
  for (let odd = farthest(kept, middle); odd.length > 0; odd = farthest(kept, middle)) {
    for (const { candidate } of odd) held.set(candidate, middle);
    kept = kept.filter((one) => !odd.includes(one));
    middle = middleOf(kept);
  }
  const counted = new Set(kept.map(({ candidate }) => candidate));
  return {
    kept,
    leftOut: candidates
      .filter((candidate) => !counted.has(candidate))
      .map((candidate) => leftOut(candidate, told(candidate, middle, held.get(candidate)))),
  };
}

/** The shop has no figure of its own to be far from. */
const FEW_WORDS = "the middle of the jobs,";

/** The odd reading that lies farthest off, and all that lie just as far: none may depend on the order of records. */
function farthest(kept: readonly KeptCandidate[], middle: Middle): readonly KeptCandidate[] {
  const odd = kept.filter((one) => isOdd(one, middle));
  const most = Math.max(...odd.map((one) => farness(sampleOf(one), middle)));
  return odd.filter((one) => !(farness(sampleOf(one), middle) < most));
}

/** What a reading is told to be far from: what was kept; else the middle that it was left out by. */
function told(candidate: Candidate, middle: Middle, by: Middle | undefined): Middle {
  if (by === undefined) return middle;
  const outcome = candidate.compute(candidate.readings.map(({ value }) => value));
  const far = "value" in outcome && isFar({ value: outcome.value, error: candidate.error }, middle);
  return far && middle.ofJobs === by.ofJobs ? middle : by;
}

const sampleOf = ({ candidate, value }: KeptCandidate): Sample => ({ value, error: candidate.error });

function isOdd(one: KeptCandidate, middle: Middle): boolean {
  const sample = sampleOf(one);
  if (!isFar(sample, middle) || (middle.besides && !isFar(sample, middle.besides))) return false;
  // A few jobs cannot outvote one another: only a slip that would explain it speaks against one of them.
  return middle.ofJobs || explanations(one.candidate, middle).length > 0;
}

function leftOut(candidate: Candidate, middle: Middle): LeftOut {
  const { of, file, on, readings } = candidate;
  const outcome = candidate.compute(readings.map(({ value }) => value));
  const place = { of, file, on };
  // Heats that nobody wrote down, and scale that was weighed along, are no slips.
  if ("impossible" in outcome && ["no-heats", "nothing-lost"].includes(outcome.impossible.code))
    return { ...place, issue: { ...outcome.impossible, path: "" } };
  const issue = "value" in outcome ? farIssue(of, outcome.value, middle) : outcome.impossible;
  return { ...place, issue: { ...withSlips(issue, readings, explanations(candidate, middle)), path: "" } };
}
