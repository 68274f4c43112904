/** Kinds of number that an issue or a finding can carry; each is shown in the reader's own units. */
export type Quantity = "length" | "angle" | "mass" | "temperature" | "share" | "count" | "area" | "volume";

/** A number inside a message: mm, rad, g, °C, 0–1, or a plain count. */
export interface QuantityValue {
  readonly quantity: Quantity;
  readonly value: number;
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

/** `stop`: cannot work. `warn`: likely trouble, the smith may accept. `note`: low margin or missing data. */
export type Severity = "stop" | "warn" | "note";

/** Legal but unwise: printed on reports and sheets, never an exception. */
export interface Finding extends Issue {
  readonly severity: Severity;
  /** Where the limit comes from: a source, or "common practice, no source". */
  readonly basis: string;
}

export const length = (value: number): QuantityValue => ({ quantity: "length", value });
export const angle = (value: number): QuantityValue => ({ quantity: "angle", value });
export const mass = (value: number): QuantityValue => ({ quantity: "mass", value });
export const share = (value: number): QuantityValue => ({ quantity: "share", value });
export const count = (value: number): QuantityValue => ({ quantity: "count", value });
