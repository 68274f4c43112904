import type { Box, QuadraticModel } from "../numeric/quadratic-model.js";

/** Limits of an ask in units of its own scale; one that there is not is infinite. */
export interface Band {
  readonly low: number;
  readonly high: number;
  /** Whether it has to hold, where others may be missed. */
  readonly isHard?: boolean;
}

/** Asks as functions of the changes, near a point; every figure in units of its ask's scale. */
export interface LocalProblem {
  readonly model: QuadraticModel;
  readonly bands: readonly Band[];
  readonly box: Box;
}

/** A miss below this is rounding, in scales: a thousandth of what a fine scale or a micrometer shows. */
export const NO_MISS = 1e-7;

/** How much more a miss counts of an ask that has to hold. */
export const HARD = 1e4;

/** By how much a figure lies outside its band; below nothing inside. */
export const missOf = ({ low, high }: Band, value: number): number => Math.max(low - value, value - high);

/** The greatest miss of the asks that have to hold, or of those that may be missed; nothing where all of them are met. */
export function worstOf(bands: readonly Band[], values: readonly number[], isHard: boolean): number {
  return bands.reduce(
    (worst, band, i) =>
      (band.isHard === true) === isHard ? Math.max(worst, missOf(band, values[i] ?? Number.NaN)) : worst,
    0,
  );
}

/**
 * What is missed in all, 0 where everything is met: the worst of what may be missed, and beside it the worst of what has to hold,
 * which counts a great deal more.
 */
export function missOfAll(bands: readonly Band[], values: readonly number[]): number {
  const hard = worstOf(bands, values, true);
  return worstOf(bands, values, false) + (hard <= NO_MISS ? 0 : HARD * hard);
}

/** The same by the model at a point. */
export const missAt = ({ model, bands }: LocalProblem, point: readonly number[]): number =>
  missOfAll(
    bands,
    bands.map((_, f) => model.valueAt(f, point)),
  );

/** Half-spaces that a step has to stay in. */
export interface Rows {
  readonly rows: (readonly number[])[];
  readonly limits: number[];
}

/** What the asks say of a step from a point, as far as their slopes go: a row for each limit. */
export function askRows(
  { model, bands }: LocalProblem,
  point: readonly number[],
): Rows & { readonly isHard: boolean[] } {
  const found = { rows: [] as number[][], limits: [] as number[], isHard: [] as boolean[] };
  for (const [f, { low, high, isHard = false }] of bands.entries()) {
    const value = model.valueAt(f, point);
    const slopes = model.slopesAt(f, point);
    if (Number.isFinite(low)) {
      found.rows.push(slopes);
      found.limits.push(low - value);
      found.isHard.push(isHard);
    }
    if (Number.isFinite(high)) {
      found.rows.push(slopes.map((slope) => -slope));
      found.limits.push(value - high);
      found.isHard.push(isHard);
    }
  }
  return found;
}

/** A step stays in the box and within a distance along each axis. */
export function boxRows({ box }: LocalProblem, point: readonly number[], most: number): Rows {
  const found: Rows = { rows: [], limits: [] };
  const unit = (i: number, value: number): number[] => point.map((_, k) => (k === i ? value : 0));
  for (const [i, here] of point.entries()) {
    found.rows.push(unit(i, 1), unit(i, -1));
    found.limits.push(
      Math.max((box.low[i] ?? here) - here, -most),
      Math.max(here - (box.high[i] ?? here), -most),
    );
  }
  return found;
}

/** The point of a box nearest to another. */
export const clamped = ({ low, high }: Box, point: readonly number[]): number[] =>
  point.map((value, i) => Math.min(Math.max(value, low[i] ?? value), high[i] ?? value));

export const stepped = (point: readonly number[], step: readonly number[]): number[] =>
  point.map((value, i) => value + (step[i] ?? 0));

/** Half the sum of squares: what is made as small as the asks allow. */
export const halfSquares = (point: readonly number[]): number =>
  point.reduce((sum, value) => sum + value * value, 0) / 2;
