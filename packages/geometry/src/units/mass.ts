import { GRAMS_PER_OUNCE } from "./constants.js";
import { formatNumber, roundHalves } from "./number-text.js";
import type { FileUnits } from "./quantity.js";

/**
 * A mass for the reader: grams, or ounces with pounds from 16 oz on.
 *
 * @param grams - Mass in g.
 * @param resolution - Step to round to, in the unit shown: 0.1 g and 0.01 oz by default.
 *
 * @example
 * formatMass(480, "mm"); // "480 g"
 * formatMass(510.291, "in"); // "1 lb 2 oz"
 */
export function formatMass(grams: number, units: FileUnits, resolution?: number): string {
  if (units === "mm") return `${formatNumber(grams, resolution ?? 0.1)} g`;
  const step = resolution ?? 0.01;
  const ounces = roundHalves(Math.abs(grams) / GRAMS_PER_OUNCE / step) * step;
  const pounds = Math.floor(ounces / 16 + 1e-9);
  const rest = formatNumber(ounces - 16 * pounds, step);
  const sign = grams < 0 && ounces > 0 ? "-" : "";
  if (pounds === 0) return `${sign}${rest} oz`;
  return rest === "0" ? `${sign}${pounds} lb` : `${sign}${pounds} lb ${rest} oz`;
}
