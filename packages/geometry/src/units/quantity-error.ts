import { type QuantityKind, unitNames } from "./unit-table.js";

/** Stable name of what is wrong with a quantity. */
export type QuantityErrorCode =
  | "empty"
  | "not-finite"
  | "too-long"
  | "comma"
  | "number-unreadable"
  | "fraction-zero"
  | "fraction-improper"
  | "fraction-without-unit"
  | "unit-unknown"
  | "unit-wrong-kind"
  | "unit-not-taken"
  | "unit-gradian"
  | "unit-missing"
  | "parts-out-of-order"
  | "tolerance-unreadable"
  | "tolerance-other-unit";

/** Why a quantity could not be read. */
export interface QuantityError {
  readonly code: QuantityErrorCode;
  /** The kind that belongs there. */
  readonly kind: QuantityKind;
  /** The whole text as it was given. */
  readonly read: string;
  /** The unit in question, as written. */
  readonly unit?: string;
  /** The known unit most like it. */
  readonly nearest?: string;
  /** What the unit measures instead; of `tolerance-other-unit` the unit that bare numbers are in. */
  readonly found?: string;
}

/** A kind with its article and examples of how to write it. */
export const KIND_WORDS: Readonly<Record<QuantityKind, { readonly a: string; readonly examples: string }>> = {
  length: { a: "a length", examples: '190 mm, 7 1/2 in or 3/16"' },
  mass: { a: "a mass", examples: "480 g, 17 oz or 1 lb 2 oz" },
  angle: { a: "an angle", examples: "15 deg" },
  temperature: { a: "a temperature", examples: "820 °C or 1500 °F" },
  density: { a: "a density", examples: "7.83 g/cm3 or 0.283 lb/in3" },
  time: { a: "a time", examples: "3 h, 90 min or 2 days" },
  share: { a: "a share", examples: "60 %" },
};

/**
 * One sentence for the smith: what was read, what is wrong with it, what to write.
 *
 * @example
 * describeQuantityError({ code: "unit-wrong-kind", kind: "length", read: "480 g", unit: "g", found: "mass" });
 * // '"480 g" is a mass; a length belongs here, for example 190 mm, 7 1/2 in or 3/16"'
 */
export function describeQuantityError(error: QuantityError): string {
  const { kind } = error;
  const words = KIND_WORDS[kind];
  const read = quote(error.read);
  const example = `for example ${words.examples}`;
  switch (error.code) {
    case "empty":
      return `has no value; write ${words.a}, ${example}`;
    case "not-finite":
      return `${read} is not a number that can be measured; write ${words.a}, ${example}`;
    case "too-long":
      return `${read} is too long for ${words.a}; write it ${example}`;
    case "comma":
      return `${read} has a comma; write decimals with a point, such as 6.4, and thousands without a mark`;
    case "number-unreadable":
      return `${read} is not ${words.a}; write it ${example}`;
    case "fraction-zero":
      return `${read} divides by zero; write ${words.a}, ${example}`;
    case "fraction-improper":
      return `${read}: the fraction after a whole number must be less than 1`;
    case "fraction-without-unit":
      return `${read} has no unit in a file in mm; write ${read.slice(1, -1)} in, or a decimal number of mm`;
    case "unit-unknown":
      return error.nearest === undefined
        ? `"${clip(error.unit ?? "")}" is not a unit of ${kind}; use ${unitNames(kind).join(", ")}`
        : `"${clip(error.unit ?? "")}" is not a unit of ${kind}; did you mean ${error.nearest}?`;
    case "unit-wrong-kind":
      return `${read} is ${withArticle(error.found ?? "")}; ${words.a} belongs here, ${example}`;
    case "unit-not-taken":
      return `${read}: ${clip(error.unit ?? "")} is not taken here; write ${unitNames(kind).join(", ")}`;
    case "unit-gradian":
      return `${read}: ${clip(error.unit ?? "")} can mean 1° or 0.9°, so it is not taken; write ${inDegrees(error)} if degrees are meant`;
    case "unit-missing":
      return `${read}: every part needs its unit, such as 6' 2" or 1 lb 2 oz`;
    case "parts-out-of-order":
      return `${read}: write the larger unit first, such as 6' 2" or 1 lb 2 oz`;
    case "tolerance-unreadable":
      return `${read}: a tolerance is written ± 0.2 mm or +0.3/-0.1 mm after the value`;
    case "tolerance-other-unit":
      return `${read}: only the tolerance has a unit, and a bare number here is in ${error.found === "in" ? "inches" : (error.found ?? "")}; write ${unitChoices(error)}`;
  }
}

/** The same number in degrees: `20 deg` for `20 grad`, `20 ± 1 deg` for `20 ± 1 grad`. */
function inDegrees({ read, unit = "" }: QuantityError): string {
  return clip(read).replaceAll(unit, " deg").replace(/ +/gu, " ").trim();
}

/** The value with either unit: `8 mm ± 0.02 in, or 8 in ± 0.02 in`. */
function unitChoices({ read, unit = "", found = "" }: QuantityError): string {
  const [, value = "", tolerance = ""] = /^\s*([^±+]*[^±+\s])\s*([±+].*)$/u.exec(clip(read)) ?? [];
  if (value === "") return `the value's own unit too: ${found} or ${clip(unit)}`;
  return `${value} ${found} ${tolerance}, or ${value} ${clip(unit)} ${tolerance}`;
}

function withArticle(measure: string): string {
  const known = Object.entries(KIND_WORDS).find(([kind]) => kind === measure)?.[1].a;
  return known ?? `a unit of ${measure}`;
}

/** User text inside a message: short, and without characters that could steer a terminal. */
function quote(text: string): string {
  return `"${clip(text)}"`;
}

function clip(text: string): string {
  const visible = text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, "\uFFFD");
  return visible.length > 40 ? `${visible.slice(0, 39)}…` : visible;
}
