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
   * Whether one of the readings, in its order, can have been another value beside what else the record holds: no steel is heavier
   * than at a stage before. Left out where nothing speaks against any value.
   */
  readonly canBe?: (reading: number, meant: number) => boolean;
  /**
   * Whether readings agree with what else the record holds: tells which of two numbers slipped. Left out where there is nothing
   * to hold them against.
   */
  readonly agrees?: (values: readonly number[]) => boolean;
}

/** What a job says of a figure once its odd readings are out. */
export interface KeptCandidate {
  readonly candidate: Candidate;
  readonly value: number;
}

/** A step is halved so often, where both its sides are impossible: to a millionth. */
const HALVINGS = 20;

/**
 * Standard error of a figure, to the first order: each reading moved by its own error, effects in squares. Where one side is
 * impossible, the other one tells alone: near what cannot be, a reading is less sure and not more so.
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
  const effects = values.map((_, moved) => {
    const effectOf = (step: number) =>
      effect((by) => compute(values.map((value, i) => (i === moved ? value + by : value))), step);
    let step = errors[moved] ?? 0;
    let found = effectOf(step);
    let times = 1;
    while (found === undefined && times < 2 ** HALVINGS) {
      [step, times] = [step / 2, times * 2];
      found = effectOf(step);
    }
    return times * (found ?? 0);
  });
  return Math.hypot(...effects);
}

/** What a step makes of a figure: half of it both ways; undefined where the figure cannot be there, nor on either side. */
function effect(at: (by: number) => Outcome, step: number): number | undefined {
  const [down, here, up] = [-step, 0, step].map((by) => {
    const outcome = at(by);
    return "value" in outcome ? outcome.value : undefined;
  });
  if (up !== undefined && down !== undefined) return (up - down) / 2;
  if (here === undefined) return undefined;
  return up !== undefined ? up - here : down !== undefined ? here - down : undefined;
}
