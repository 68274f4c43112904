import type { KeptCandidate } from "./candidate.js";
import type { Sample } from "./estimate.js";

/** What one job comes to for a figure: the mean of all its places. */
export interface LearntJob extends Sample {
  readonly file: string;
  readonly on: string;
  readonly steel?: string;
}

/**
 * One sample a job, in the order of their names: the mean of what all its places say, for those share the hand and the fire.
 *
 * @example
 * const [candidate] = hoursCandidates({ file: "a", weighings: [], sizes: [], drawn: [],
 *   hours: [{ task: "forge", hours: 2, on: "2026-11-28" }],
 *   written: { mass: { unit: 1, mixUps: [] }, length: { unit: 1, mixUps: [] } } });
 * candidate && jobsOf([{ candidate, value: 2 }, { candidate, value: 3 }])[0]?.value; // 2.5
 */
export function jobsOf(kept: readonly KeptCandidate[]): LearntJob[] {
  const files = [...new Set(kept.map(({ candidate }) => candidate.file))].sort();
  return files.map((file): LearntJob => {
    const own = kept.filter(({ candidate }) => candidate.file === file);
    const mean = (numbers: readonly number[]): number =>
      numbers.reduce((total, one) => total + one, 0) / numbers.length;
    const { steel } = own[0]?.candidate ?? {};
    return {
      file,
      on:
        own
          .map(({ candidate }) => candidate.on)
          .sort()
          .at(-1) ?? "",
      ...(steel === undefined ? {} : { steel }),
      value: mean(own.map(({ value }) => value)),
      error: Math.sqrt(mean(own.map(({ candidate }) => candidate.error ** 2)) / own.length),
    };
  });
}
