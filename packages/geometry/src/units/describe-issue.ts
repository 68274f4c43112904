import { invariant } from "../errors/errors.js";
import type { Issue, QuantityValue } from "../errors/issue.js";
import { formatAngle } from "./angle.js";
import { MM_PER_INCH } from "./constants.js";
import { formatArea, formatShare, formatVolume } from "./density.js";
import { formatLength } from "./length.js";
import { formatMass } from "./mass.js";
import { formatNumber } from "./number-text.js";
import type { FileUnits } from "./quantity.js";
import { formatTemperature } from "./temperature.js";

/** Below this a length that is no inch fraction is shown in thousandths: a caliper reading, not a tape's. */
const CALIPER_RANGE = MM_PER_INCH / 2;

/**
 * The sentence of an issue or a finding with its numbers filled in.
 *
 * @param units - Units to show lengths, masses and temperatures in.
 * @throws {InternalError} where the text names a value that the issue does not carry.
 *
 * @example
 * describeIssue({ code: "x", path: "", text: "The blade is {t} thick.", values: { t: length(5) } }, "mm");
 * // "The blade is 5 mm thick."
 */
export function describeIssue(issue: Issue, units: FileUnits): string {
  return issue.text.replace(/\{(\w+)\}/gu, (_, name: string) => {
    const value = issue.values?.[name];
    invariant(value !== undefined, `the text of issue ${issue.code} names a value {${name}}`);
    return typeof value === "string" ? value : formatQuantity(value, units);
  });
}

/**
 * One number as {@link describeIssue} shows it.
 *
 * @example
 * formatQuantity({ quantity: "length", value: 12.7 }, "in"); // '1/2"'
 */
export function formatQuantity({ quantity, value }: QuantityValue, units: FileUnits): string {
  switch (quantity) {
    case "length":
      return formatReadableLength(value, units);
    case "mass":
      return formatMass(value, units);
    case "angle":
      return formatAngle(value);
    case "temperature":
      return formatTemperature(value, units);
    case "share":
      return formatShare(value);
    case "area":
      return formatArea(value, units);
    case "volume":
      return formatVolume(value, units);
    case "count":
      return formatNumber(value, 0.01);
  }
}

function formatReadableLength(mm: number, units: FileUnits): string {
  const text = formatLength(mm, units);
  const exact = !/[+−]$/u.test(text);
  return units === "mm" || exact || Math.abs(mm) >= CALIPER_RANGE
    ? text
    : formatLength(mm, units, { resolution: 0.001 });
}
