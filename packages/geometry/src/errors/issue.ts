import type { FindingCode } from "./finding-codes.js";

/** Kinds of number that an issue or a finding can carry; each is shown in the reader's own units. */
export type Quantity =
  | "length"
  | "angle"
  | "mass"
  | "temperature"
  | "temperature difference"
  | "time"
  | "share"
  | "count"
  | "area"
  | "volume";

/** A number inside a message: mm, rad, g, °C, K, seconds, 0–1, or a plain count. */
export interface QuantityValue {
  readonly quantity: Quantity;
  readonly value: number;
  /** Of a length that is an estimate: shown in whole mm, or eighths of an inch. */
  readonly rough?: true;
}

/**
 * One thing that is wrong with what the smith wrote. Data, no prose in any particular unit: `text` is a
 * sentence with `{name}` where a number from `values` belongs, so that it can be shown in mm or inches.
 */
export interface Issue {
  /** Stable kebab-case name of the rule. */
  readonly code: string;
  /** Where in the knife file, for example `tang.holes[1].at`. */
  readonly path: string;
  /** One or two sentences: what is wrong, then what to do. */
  readonly text: string;
  readonly values?: Readonly<Record<string, QuantityValue | string>>;
}

/** A sentence that tells its numbers in the reader's units: `{name}` stands where a number of `values` belongs. */
export type TextWithValues = Pick<Issue, "text" | "values">;

/** `stop`: cannot work. `warn`: likely trouble, the smith may accept. `note`: low margin or missing data. */
export type Severity = "stop" | "warn" | "note";

/** Legal but unwise: printed on reports and sheets, never an exception. */
export interface Finding extends Issue {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** Where the limit comes from: a source, or "common practice, no source". */
  readonly basis: string;
  /** Why the smith takes the risk; left out where nobody has said so. */
  readonly accepted?: string;
}

/**
 * A length inside a message, mm.
 *
 * @example
 * length(5); // { quantity: "length", value: 5 }
 */
export const length = (value: number): QuantityValue => ({ quantity: "length", value });
/**
 * A length inside a message that is no more than an estimate, mm.
 *
 * @example
 * roughLength(24.7); // { quantity: "length", value: 24.7, rough: true }, shown as 25 mm
 */
export const roughLength = (value: number): QuantityValue => ({ quantity: "length", value, rough: true });
/**
 * An angle inside a message, rad.
 *
 * @example
 * angle(0.3); // { quantity: "angle", value: 0.3 }
 */
export const angle = (value: number): QuantityValue => ({ quantity: "angle", value });
/**
 * A temperature inside a message, °C.
 *
 * @example
 * temperature(815); // { quantity: "temperature", value: 815 }
 */
export const temperature = (value: number): QuantityValue => ({ quantity: "temperature", value });
/**
 * A difference of two temperatures inside a message, K.
 *
 * @example
 * temperatureDifference(28); // { quantity: "temperature difference", value: 28 }
 */
export const temperatureDifference = (value: number): QuantityValue => ({
  quantity: "temperature difference",
  value,
});
/**
 * A mass inside a message, g.
 *
 * @example
 * mass(480); // { quantity: "mass", value: 480 }
 */
export const mass = (value: number): QuantityValue => ({ quantity: "mass", value });
/**
 * A time inside a message, seconds.
 *
 * @example
 * time(5400); // { quantity: "time", value: 5400 }, shown as 1 h 30 min
 */
export const time = (value: number): QuantityValue => ({ quantity: "time", value });
/**
 * A share inside a message, 0 to 1.
 *
 * @example
 * share(0.6); // { quantity: "share", value: 0.6 }
 */
export const share = (value: number): QuantityValue => ({ quantity: "share", value });
/**
 * A plain number inside a message.
 *
 * @example
 * count(3); // { quantity: "count", value: 3 }
 */
export const count = (value: number): QuantityValue => ({ quantity: "count", value });
