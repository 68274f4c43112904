import type { Banded } from "../stock/shop.js";
import { NORMAL_LIMIT } from "./student.js";

/**
 * How jobs of a figure spread. `ratio`: by a factor either way, so that it never gets below nothing (losses, hours).
 * `difference`: by as much either way (shares of a thinning, which may come out a little below nothing).
 */
export type Spreading = "ratio" | "difference";

/** A figure on the scale on which jobs spread evenly: its logarithm, or itself. */
export interface Centred {
  readonly centre: number;
  /** Standard deviation of one job. */
  readonly deviation: number;
}

/**
 * A figure on its working scale.
 *
 * @example
 * toWorking(Math.E, "ratio"); // 1
 */
export const toWorking = (value: number, spreading: Spreading): number =>
  spreading === "ratio" ? Math.log(value) : value;

/**
 * Undoes {@link toWorking}.
 *
 * @example
 * fromWorking(0, "ratio"); // 1
 */
export const fromWorking = (value: number, spreading: Spreading): number =>
  spreading === "ratio" ? Math.exp(value) : value;

/**
 * A standard error of a figure on its working scale, to the first order.
 *
 * @example
 * errorInWorking(2, 0.1, "ratio"); // 0.05
 */
export const errorInWorking = (value: number, error: number, spreading: Spreading): number =>
  spreading === "ratio" ? error / value : error;

/**
 * A shop's figure with its band as a normal distribution of jobs on the working scale: the band is taken to hold 95 of 100.
 * A band that leans is made even; a low end of nothing says nothing on the scale of ratios, and the high end stands for both.
 *
 * @returns undefined where there is no band, or the figure is 0 and spreads by ratio.
 *
 * @example
 * centred({ value: 2, low: 1, high: 4 }, "ratio")?.deviation; // 0.353653
 */
export function centred({ value, low, high }: Banded, spreading: Spreading): Centred | undefined {
  if (spreading === "ratio" && !(value > 0)) return undefined;
  const [bottom, middle, top] = [low, value, high].map((each) => toWorking(each, spreading)) as [
    number,
    number,
    number,
  ];
  const half = Number.isFinite(bottom) ? (top - bottom) / 2 : top - middle;
  return half > 0 ? { centre: middle, deviation: half / NORMAL_LIMIT } : undefined;
}
