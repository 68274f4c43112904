import type { Issue } from "../errors/issue.js";
import type { FigurePath } from "./figures.js";
import type { Reading } from "./reading.js";

/** What numbers of a record come to, or why they cannot be. */
export type Outcome = { readonly value: number } | { readonly impossible: Omit<Issue, "path"> };

/** One thing that a record says of a figure, as the readings that it is computed from. */
export interface Candidate {
  readonly of: FigurePath;
  readonly file: string;
  /** The day of the last of its readings. */
  readonly on: string;
  /** Of the record; left out where that does not say. */
  readonly steel?: string;
  readonly readings: readonly Reading[];
  /** The figure from readings in their order, in mm, shares or hours. */
  readonly compute: (values: readonly number[]) => Outcome;
  /** Standard error of the figure that comes from scale, caliper and the other losses counted on, at its own readings. */
  readonly error: number;
  /**
   * Whether readings agree with what else the record holds: tells which of two numbers slipped. Left out where there is nothing
   * to hold them against.
   */
  readonly agrees?: (values: readonly number[]) => boolean;
}

/**
 * Standard error of a figure, to the first order: each reading moved by its own error, effects in squares.
 *
 * @param errors - Standard error of each reading.
 *
 * @example
 * propagated([3, 4], [0.1, 0.1], ([a = 0, b = 0]) => ({ value: a * b })); // 0.5
 */
export function propagated(
  values: readonly number[],
  errors: readonly number[],
  compute: (values: readonly number[]) => Outcome,
): number {
  const squares = values.map((_, moved) => {
    const [up, down] = [1, -1].map((sign) => {
      const outcome = compute(
        values.map((value, i) => (i === moved ? value + sign * (errors[i] ?? 0) : value)),
      );
      return "value" in outcome ? outcome.value : undefined;
    });
    return up === undefined || down === undefined ? 0 : ((up - down) / 2) ** 2;
  });
  return Math.sqrt(squares.reduce((total, one) => total + one, 0));
}
