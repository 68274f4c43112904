import type { CutProblem } from "./cut-problem.js";
import { SAW_HAIR } from "./saw-bar.js";

/** More lengths than this are not listed. */
const MOST_LENGTHS = 20_000;

/** Lengths that some choice of bars adds up to, from one length to another. */
export interface OpenableLengths {
  /** The shortest of them. */
  readonly least: number;
  /** Two that differ, differ by at least this, mm. */
  readonly step: number;
}

/**
 * What whole bars can add up to between two lengths: no cut list opens any other length, so a limit may be raised to
 * the next of them, and a list that is closer to the limit than their step is the best.
 *
 * @returns `undefined` where there are too many, or none.
 */
export function openableLengths(
  { stocks }: CutProblem,
  from: number,
  to: number,
): OpenableLengths | undefined {
  let sums = new Set([0]);
  for (const { length, count } of stocks) {
    const more = new Set(sums);
    for (const sum of sums)
      for (let n = 1; n <= count && sum + n * length <= to + SAW_HAIR; n++)
        more.add(Math.round((sum + n * length) / SAW_HAIR) * SAW_HAIR);
    if (more.size > MOST_LENGTHS) return undefined;
    sums = more;
  }
  const within = [...sums].filter((sum) => sum >= from - SAW_HAIR).sort((a, b) => a - b);
  const [least] = within;
  if (least === undefined) return undefined;
  const steps = within.slice(1).map((sum, i) => sum - (within[i] ?? 0));
  return { least, step: Math.min(...steps, Number.MAX_VALUE) };
}
