import { count, length, mass, type QuantityValue } from "../errors/issue.js";
import type { WrittenIn } from "./job-record.js";

/** What kind of number was read, which decides how it is put down wrong. */
export type ReadingKind = "mass" | "length" | "heats" | "hours";

/** A number of a record: g, mm, a count or hours. */
export interface Reading {
  readonly kind: ReadingKind;
  readonly value: number;
  /** What it was read of, for a sentence: `forged blade`. */
  readonly of: string;
  readonly written: WrittenIn;
  /** Weighed twice: no slip of the hand. */
  readonly confirmed?: boolean;
}

/** Counts and hours have no other unit to be taken for but minutes. */
const PLAIN: WrittenIn = { unit: 1, mixUps: [] };
const HOURS: WrittenIn = { unit: 1, mixUps: [{ times: 1 / 60, words: "minutes written as hours" }] };

/**
 * Heats that were counted.
 *
 * @example
 * heatsReading(9).kind; // "heats"
 */
export const heatsReading = (value: number): Reading => ({
  kind: "heats",
  value,
  of: "heats",
  written: PLAIN,
});

/**
 * Hours that were written down for a task.
 *
 * @example
 * hoursReading(3, "forging").of; // "forging"
 */
export const hoursReading = (value: number, of: string): Reading => ({
  kind: "hours",
  value,
  of,
  written: HOURS,
});

/**
 * A number of a reading's kind as an issue carries it; hours as a count.
 *
 * @example
 * readingValue("mass", 702); // { quantity: "mass", value: 702 }
 */
export function readingValue(kind: ReadingKind, value: number): QuantityValue {
  return kind === "mass" ? mass(value) : kind === "length" ? length(value) : count(value);
}
