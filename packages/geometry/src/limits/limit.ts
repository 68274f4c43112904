import type { FindingCode } from "../errors/finding-codes.js";
import type { Quantity } from "../errors/issue.js";

/** One default: its value, its band where it is a loss, and where it comes from, so that a report can print all three. */
export interface DefaultNumber {
  readonly quantity: Quantity;
  readonly value: number;
  readonly low?: number;
  readonly high?: number;
  readonly basis: string;
}

/** A limit in a table: what it is a limit of, and the findings that it decides. mm, rad, g, °C, shares. */
export interface LimitEntry extends DefaultNumber {
  /** What it limits, as the shop file's schema and `docs/limits.md` say it. */
  readonly about: string;
  readonly trips: readonly FindingCode[];
}

/** A limit in force: its value, and where that comes from. */
export interface Limit {
  readonly value: number;
  readonly basis: string;
}

/** The basis of a limit that the shop file sets itself. */
export const SHOP_BASIS = "the shop's own limit";

/**
 * Where a limit comes from: its default's basis, or the shop where it says something else.
 *
 * @example
 * limitBasis(4, LIMIT_DEFAULTS.maxSlenderness); // "the shop's own limit"
 */
export const limitBasis = (limit: number, fallback: Pick<DefaultNumber, "value" | "basis">): string =>
  limit === fallback.value ? fallback.basis : SHOP_BASIS;

/** An angle of a table as it is reckoned with, rad. */
export const inRadians = (degrees: number): number => (degrees * Math.PI) / 180;

/** What stands as basis where nothing better is known. */
export const PRACTICE = "common practice, no source";
/** Figures of textbooks that have not been looked up. */
export const TEXTBOOK = "forging textbooks, from memory, unconfirmed";
