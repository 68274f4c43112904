import { GeometryError } from "../../errors/errors.js";

/** Height after a pass, mm at 20 °C, and the share of the height before it that the pass takes off. */
export interface PassHeight {
  readonly height: number;
  readonly reduction: number;
}

/** A number of passes may come out this much above a whole one from rounding alone. */
const WHOLE_WITHIN = 1e-9;

/**
 * Heights of the passes that bring a piece down with the same reduction each, as few of them as the limit allows.
 *
 * @param start - Height before the first pass, mm.
 * @param end - Height after the last, mm; not above `start`.
 * @param maxReduction - The most that one pass may take, as a share of the height before it; above 0, below 1.
 * @returns In order, the last one exactly `end`; empty where `start` is `end`.
 * @throws {GeometryError} `pass-heights-wrong` where a size or the share is out of its range.
 *
 * @example
 * passHeights(12.5, 6.4, 0.2).map(({ height }) => height); // [10, 8, 6.4]
 */
export function passHeights(start: number, end: number, maxReduction: number): PassHeight[] {
  if (!(end > 0 && end <= start && Number.isFinite(start)))
    throw new GeometryError("pass-heights-wrong", `a piece ${start} mm high cannot be pressed to ${end} mm`);
  if (!(maxReduction > 0 && maxReduction < 1))
    throw new GeometryError("pass-heights-wrong", `a pass cannot take the share ${maxReduction}`);
  const exact = Math.log(end / start) / Math.log1p(-maxReduction);
  return evenHeights(start, end, Math.ceil(exact - WHOLE_WITHIN));
}

/**
 * Heights of a given number of passes, falling from `start` to `end` in one ratio.
 *
 * @param start - Height before the first pass, mm.
 * @param end - Height after the last, mm; above 0, not above `start`.
 *
 * @example
 * evenHeights(16, 4, 2).map(({ height }) => height); // [8, 4]
 */
export function evenHeights(start: number, end: number, passes: number): PassHeight[] {
  const heights = Array.from({ length: passes }, (_, k) =>
    k + 1 === passes ? end : start * (end / start) ** ((k + 1) / passes),
  );
  return heights.map((height, k) => ({ height, reduction: 1 - height / (heights[k - 1] ?? start) }));
}
