import { invariant } from "../errors/errors.js";
import type { QuantityValue, TextWithValues } from "../errors/issue.js";
import { formatAngle } from "./angle.js";
import { MM_PER_INCH } from "./constants.js";
import { formatArea, formatShare, formatVolume } from "./density.js";
import { formatLength } from "./length.js";
import { formatMass } from "./mass.js";
import { formatNumber } from "./number-text.js";
import type { FileUnits } from "./quantity.js";
import { formatTemperature, formatTemperatureDifference } from "./temperature.js";
import { formatTime } from "./time.js";

/** Below this a length that is no inch fraction is shown in thousandths: a caliper reading, not a tape's. */
const CALIPER_RANGE = MM_PER_INCH / 2;
/** Within this a length is a fraction or a decimal of an inch as it was written, mm. */
const AS_WRITTEN = 1e-6;

/**
 * The sentence of an issue, a finding, or whatever else has numbers in it, with these filled in. Two numbers of it that differ are shown with as many digits
 * as it takes to see that: no limit of 3 is passed by a 3. Of inches a sentence has fractions or decimals, not both. Below nothing they have a true minus. What lies no way ahead of the heel lies at it.
 *
 * @param units - Units to show lengths, masses and temperatures in.
 * @throws {InternalError} where the text names a value that the issue does not carry.
 *
 * @example
 * describeIssue({ text: "The blade is {t} thick.", values: { t: length(5) } }, "mm");
 * // "The blade is 5 mm thick."
 */
export function describeIssue(issue: TextWithValues, units: FileUnits): string {
  const shown = [...issue.text.matchAll(NAMES)].flatMap(([, name = ""]) => {
    const value = issue.values?.[name];
    return value === undefined || typeof value === "string" ? [] : [value];
  });
  const show = (value: QuantityValue): string =>
    formatQuantity(value, units, digitsToTell(value, shown, units)).replace(/^-/u, "−");
  const text = issue.text
    .split(SENTENCES)
    .map((sentence) => {
      const names = [...sentence.matchAll(NAMES)].map(([, name = ""]) => issue.values?.[name]);
      const inDecimals =
        units === "in" && names.some((value) => isLength(value) && show(value).includes("."));
      return sentence.replace(NAMES, (_, name: string) => {
        const value = issue.values?.[name];
        invariant(value !== undefined, `the text "${issue.text}" names a value {${name}}`);
        if (typeof value === "string") return value;
        const usual = show(value);
        return inDecimals && isLength(value) && usual.includes("/") ? decimals(value) : usual;
      });
    })
    .join("");
  return text.replace(AT_HEEL, (_, start: string | undefined) => `${start ?? "at"} the heel`);
}

/** Where a sentence ends and the next one begins. */
const SENTENCES = /(?<=[.?!])(?=\s)/u;

/** A length that is measured, not estimated. */
const isLength = (value: QuantityValue | string | undefined): value is QuantityValue =>
  typeof value === "object" && value.quantity === "length" && value.rough !== true;

/** In thousandths of an inch: a fraction beside a decimal cannot be compared at sight. */
const decimals = ({ value }: QuantityValue): string =>
  formatLength(value, "in", { resolution: 0.001 }).replace(/^-/u, "−");

const NAMES = /\{(\w+)\}/gu;
/** No distance from the heel, with the word before it that already says a place. */
const AT_HEEL = /(?:\b(At|at|From|from) )?(?<![\d./−-])0(?: mm|") (?:ahead of|behind) the heel\b/gu;

/** Closer than this, as a share, two numbers are one: the last digits of doubles. */
const ONE = 1e-7;
/** Decimals more than usual at the most. */
const MOST_MORE = 3;

/** How many decimals more than usual a number needs so that none of the others that differs from it is shown like it. */
function digitsToTell(value: QuantityValue, others: readonly QuantityValue[], units: FileUnits): number {
  const alike = others.filter(
    (other) =>
      other.quantity === value.quantity &&
      Math.abs(other.value - value.value) > ONE * Math.max(Math.abs(other.value), Math.abs(value.value)),
  );
  for (let more = 0; more <= MOST_MORE; more++) {
    const text = formatQuantity(value, units, more);
    if (alike.every((other) => formatQuantity(other, units, more) !== text)) return more;
  }
  return 0;
}

/**
 * One number as {@link describeIssue} shows it.
 *
 * @param more - Decimals more than usual.
 *
 * @example
 * formatQuantity({ quantity: "length", value: 12.7 }, "in"); // '1/2"'
 * formatQuantity({ quantity: "length", value: 3.048 }, "in"); // '0.12"'
 */
export function formatQuantity(
  { quantity, value, rough }: QuantityValue,
  units: FileUnits,
  more = 0,
): string {
  const finer = (usual: number): number => usual / 10 ** more;
  switch (quantity) {
    case "length":
      return rough === true ? formatRoughLength(value, units) : formatReadableLength(value, units, more);
    case "mass":
      return formatMass(value, units, finer(units === "mm" ? 0.1 : 0.01));
    case "angle":
      return formatAngle(value, finer(0.1));
    case "temperature":
      return formatTemperature(value, units, finer(1));
    case "temperature difference":
      return formatTemperatureDifference(value, units, finer(1));
    case "time":
      return formatTime(value);
    case "share":
      return formatShare(value, finer(0.1));
    case "area":
      return formatArea(value, units, finer(units === "mm" ? 0.1 : 0.001));
    case "volume":
      return formatVolume(value, units, finer(units === "mm" ? 0.01 : 0.001));
    case "count":
      return formatNumber(value, finer(0.01));
  }
}

/** An estimate has no hundredths, and no mark that it is a little more. */
const formatRoughLength = (mm: number, units: FileUnits): string =>
  formatLength(mm, units, { resolution: units === "mm" ? 1 : 1 / 8, remainder: false });

/** Inches as a fraction where it is one, else as the decimal that it is; what is neither has a mark, or is told as calipers do. */
function formatReadableLength(mm: number, units: FileUnits, more: number): string {
  const decimals = (resolution: number): string => formatLength(mm, units, { resolution });
  if (units === "mm") return decimals(0.01 / 10 ** more);
  if (more > 0) return decimals(0.01 / 10 ** more);
  if (isMultiple(mm, MM_PER_INCH / 64)) return formatLength(mm, units);
  if (isMultiple(mm, MM_PER_INCH / 1000)) return decimals(0.001);
  if (isMultiple(mm, MM_PER_INCH / 10_000)) return decimals(0.0001);
  const text = formatLength(mm, units);
  const exact = !/[+−]$/u.test(text);
  return exact || Math.abs(mm) >= CALIPER_RANGE ? text : decimals(0.001);
}

const isMultiple = (mm: number, step: number): boolean =>
  Math.abs(mm - Math.round(mm / step) * step) <= AS_WRITTEN;
