import type { Issue } from "../errors/issue.js";
import type { Banded } from "../stock/shop.js";
import type { Candidate } from "./candidate.js";
import type { Sample } from "./estimate.js";
import { explanations, farIssue, withSlips } from "./explain-slip.js";
import { type FigurePath, figureOf } from "./figures.js";
import { HANDFUL, isFar, type Middle, middleOfJobs, middleOfOwn } from "./outliers.js";

/** A reading that was left out, and why. */
export interface LeftOut {
  readonly of: FigurePath;
  readonly file: string;
  readonly on: string;
  /** What is wrong with it, as a sentence; its `path` is empty. */
  readonly issue: Issue;
}

/** What a job says of a figure once its odd readings are out. */
export interface KeptCandidate {
  readonly candidate: Candidate;
  readonly value: number;
}

/** The readings that count, and those that do not. */
export interface Screened {
  readonly kept: readonly KeptCandidate[];
  readonly leftOut: readonly LeftOut[];
}

/** Rounds until nothing more changes; two are the rule. */
const MOST_ROUNDS = 20;

/**
 * Parts readings of one figure that can be counted on from those that cannot: what is impossible, what a slip explains, and,
 * with a handful of jobs, what lies too far from all the others. What was left out moves nothing: the others are judged as if
 * it had never been there.
 *
 * @param own - The shop's own figure, which stands in for the others while there are few.
 *
 * @example
 * screen("losses.scalePerHeat", { value: 0.012, low: 0.006, high: 0.02 }, []); // { kept: [], leftOut: [] }
 */
export function screen(of: FigurePath, own: Banded, candidates: readonly Candidate[]): Screened {
  const { spreading } = figureOf(of);
  const possible = candidates.flatMap((candidate): KeptCandidate[] => {
    const outcome = candidate.compute(candidate.readings.map(({ value }) => value));
    return "value" in outcome ? [{ candidate, value: outcome.value }] : [];
  });
  const handful = new Set(possible.map(({ candidate }) => candidate.file)).size >= HANDFUL;
  const middleOf = (jobs: readonly KeptCandidate[]): Middle =>
    handful ? middleOfJobs(own, jobs.map(sampleOf), spreading) : middleOfOwn(own, spreading);
  let kept = possible;
  let middle = middleOf(kept);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = possible.filter((one) => !isOdd(one, middle));
    const same = next.length === kept.length && next.every((one, index) => one === kept[index]);
    kept = next;
    if (same) break;
    middle = middleOf(kept);
  }
  const counted = new Set(kept.map(({ candidate }) => candidate));
  return {
    kept,
    leftOut: candidates
      .filter((candidate) => !counted.has(candidate))
      .map((candidate) => leftOut(candidate, middle)),
  };
}

/**
 * A reading as a sample of its figure.
 *
 * @example
 * const [candidate] = hoursCandidates({ file: "a", weighings: [], sizes: [], drawn: [],
 *   hours: [{ task: "forge", hours: 2, on: "2026-11-28" }],
 *   written: { mass: { unit: 1, mixUps: [] }, length: { unit: 1, mixUps: [] } } });
 * candidate && sampleOf({ candidate, value: 2 }); // { value: 2, error: 0 }
 */
export const sampleOf = ({ candidate, value }: KeptCandidate): Sample => ({ value, error: candidate.error });

function isOdd({ candidate, value }: KeptCandidate, middle: Middle): boolean {
  if (!isFar({ value, error: candidate.error }, middle)) return false;
  // A few jobs cannot outvote one another: only a slip that would explain it speaks against one of them.
  return middle.ofJobs || explanations(candidate, middle).length > 0;
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
