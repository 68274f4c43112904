import { formatLength, inchesToMm } from "./length.js";
import type { FileUnits } from "./quantity.js";

/** What a rule tells on hot steel: halves of a mm, or this many inches. */
const RULE_MM = 0.5;
const RULE_INCH = 1 / 32;
/** A length this little over a step, in steps, is a double's last digit. */
const HAIR = 1e-6;

/**
 * A length laid off with a rule on the bar: to half a mm or 1/32 in, wherever it is told.
 *
 * @param mm - Length in mm.
 * @param inchStep - Step of inches: 1/32 in by default.
 *
 * @example
 * formatRule(36.3, "mm"); // "36.5 mm"
 * formatRule(36.3, "in"); // '1 7/16"'
 */
export const formatRule = (mm: number, units: FileUnits, inchStep = RULE_INCH): string =>
  formatLength(mm, units, { resolution: units === "mm" ? RULE_MM : inchStep, remainder: false });

/**
 * The same, never shorter than it is: for a mark that parts what both sides need.
 *
 * @example
 * formatRuleUp(36.1, "mm"); // "36.5 mm"
 */
export function formatRuleUp(mm: number, units: FileUnits, inchStep = RULE_INCH): string {
  const step = units === "mm" ? RULE_MM : inchesToMm(inchStep);
  return formatRule(Math.ceil(mm / step - HAIR) * step, units, inchStep);
}

/**
 * What {@link formatRule} tells of a length, as a number.
 *
 * @returns mm.
 *
 * @example
 * onRule(36.3, "mm"); // 36.5
 * onRule(36.3, "in"); // 36.5125, 1 7/16 in
 */
export function onRule(mm: number, units: FileUnits): number {
  const step = units === "mm" ? RULE_MM : inchesToMm(RULE_INCH);
  return Math.sign(mm) * Math.round(Math.abs(mm) / step + HAIR) * step;
}
