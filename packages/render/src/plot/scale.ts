import { invariant } from "@scantling/geometry";
import { formatNumber } from "@scantling/geometry/units";

/** Values laid along a length of paper, with ticks at round values. */
export interface Scale {
  /** Values at its two ends. */
  readonly low: number;
  readonly high: number;
  /** Round values between them, ascending. */
  readonly ticks: readonly number[];
  /** Where a value falls, mm from the low end. */
  readonly at: (value: number) => number;
  /** A tick as it is written. */
  readonly write: (tick: number) => string;
}

/**
 * The smallest of the steps 1, 2, 5, 10, 20, … (and of 0.1, 0.2, 0.5, …) that divides a range into at most `most` parts.
 *
 * @example
 * roundStep(363, 6); // 100
 * roundStep(4.6, 5); // 1
 */
export function roundStep(range: number, most: number): number {
  invariant(Number.isFinite(range) && range > 0 && most >= 1, "an axis has a range");
  const rough = range / most;
  const power = 10 ** Math.floor(Math.log10(rough));
  // A range of exactly so many steps must not be lost to the last digit of a double.
  const factor = [1, 2, 5].find((each) => each * power >= rough * (1 - 1e-9)) ?? 10;
  return factor * power;
}

/** Two values nearer than this share of a step are one. */
const SAME = 1e-6;

/**
 * A scale that begins and ends with the values given, or with the round values about them.
 *
 * @param values.low - A range without width is made one step wide.
 * @param paper.length - mm.
 * @param paper.most - parts that the ticks may make.
 * @param paper.ends - `round`: the scale is drawn out to the next ticks; `given`: it is not.
 *
 * @example
 * const scale = makeScale({ low: 0, high: 4.6 }, { length: 50, most: 5, ends: "round" });
 * scale.ticks; // [0, 1, 2, 3, 4, 5]
 * scale.at(2.5); // 25
 */
export function makeScale(
  values: { readonly low: number; readonly high: number },
  paper: { readonly length: number; readonly most: number; readonly ends: "round" | "given" },
): Scale {
  const { length, most, ends } = paper;
  const width = values.high - values.low;
  const range = width > 0 ? width : Math.max(Math.abs(values.low), 1);
  const step = stepFor(values.low, range, most, ends);
  const first = Math.floor(values.low / step + SAME);
  const last = Math.ceil((values.low + range) / step - SAME);
  const low = ends === "round" ? first * step : values.low;
  const high = ends === "round" ? Math.max(last, first + 1) * step : values.low + range;
  const ticks = Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step).filter(
    (tick) => tick >= low - SAME * step && tick <= high + SAME * step,
  );
  return {
    low,
    high,
    ticks,
    at: (value) => ((value - low) / (high - low)) * length,
    write: (tick) => formatNumber(tick, step).replace(/^-/, "−"),
  };
}

/** Drawing both ends out to ticks may make one part more: then the next step is taken. */
function stepFor(low: number, range: number, most: number, ends: "round" | "given"): number {
  const step = roundStep(range, most);
  if (ends === "given") return step;
  const parts = Math.ceil((low + range) / step - SAME) - Math.floor(low / step + SAME);
  return parts <= most || most < 2 ? step : roundStep(range * (1 + 1 / most), most - 1);
}
