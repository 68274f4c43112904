import { MM_PER_INCH } from "./constants.js";
import { formatMixed } from "./fraction.js";
import { formatDecimals, formatNumber, roundHalves } from "./number-text.js";
import type { FileUnits } from "./quantity.js";

/** How a length is written. */
export interface LengthFormat {
  /** Step to round to, in the unit shown: 0.01 mm and 1/64 in by default. Steps of 1/2ⁿ in are shown as fractions. */
  readonly resolution?: number;
  /** Whether an inch fraction that is not exact says so with a + or − after it; yes by default. */
  readonly remainder?: boolean;
}

/** Within this an inch fraction counts as exact, mm: half of what a length in mm is shown to. */
const EXACT_WITHIN = 0.005;

/**
 * A length for the reader: `190.5 mm`, or in inches as a fraction, `7 1/2"`. A fraction that the true size is a
 * little above is marked `+`, a little below `−`.
 *
 * @param mm - Length in mm.
 *
 * @example
 * formatLength(200.025, "in"); // '7 7/8"'
 * formatLength(200.1, "in"); // '7 7/8"+'
 * formatLength(0.5, "in", { resolution: 0.001 }); // '0.02"'
 */
export function formatLength(mm: number, units: FileUnits, format: LengthFormat = {}): string {
  if (units === "mm") return `${formatNumber(mm, format.resolution ?? 0.01)} mm`;
  const inches = mm / MM_PER_INCH;
  const resolution = format.resolution ?? 1 / 64;
  const denominator = Math.round(1 / resolution);
  const binary = denominator >= 1 && Math.log2(denominator) % 1 === 0 && 1 / denominator === resolution;
  if (!binary) return `${formatNumber(inches, resolution)}"`;
  const count = roundHalves(inches * denominator);
  const rest = mm - (count / denominator) * MM_PER_INCH;
  const text = `${count < 0 ? "-" : ""}${formatMixed(Math.abs(count), denominator)}"`;
  if (format.remainder === false || Math.abs(rest) <= EXACT_WITHIN) return text;
  return `${text}${rest > 0 ? "+" : "−"}`;
}

/**
 * A length as calipers and micrometers show it, with all its digits: mm to 0.01, inches to 0.001.
 *
 * @param mm - Length in mm.
 *
 * @example
 * formatCaliper(3.048, "mm"); // "3.05 mm"
 * formatCaliper(3.048, "in"); // '0.120"'
 */
export const formatCaliper = (mm: number, units: FileUnits): string =>
  units === "mm" ? `${formatDecimals(mm, 2)} mm` : `${formatDecimals(mm / MM_PER_INCH, 3)}"`;

/**
 * mm of a length in inches.
 *
 * @example
 * inchesToMm(7.5); // 190.5
 */
export const inchesToMm = (inches: number): number => inches * MM_PER_INCH;

/**
 * Inches of a length in mm.
 *
 * @example
 * mmToInches(190.5); // 7.5
 */
export const mmToInches = (mm: number): number => mm / MM_PER_INCH;
