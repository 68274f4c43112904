import { MM_PER_INCH } from "../units/constants.js";
import { NUMBER } from "./number-list.js";

/**
 * mm in each absolute unit of the format. A px is 1/96 in by definition, whatever the screen.
 *
 * Source: W3C, CSS Values and Units Module Level 3, section 6.2.
 */
const MM_PER: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: MM_PER_INCH,
  pt: MM_PER_INCH / 72,
  pc: MM_PER_INCH / 6,
  px: MM_PER_INCH / 96,
};

/** mm in a px, which is the drawing's own unit where nothing else is said. */
export const MM_PER_PX = MM_PER_INCH / 96;

/** A length of the drawing: with a unit of fixed size, bare, or in a unit that depends on something else (%, em). */
export type CssLength =
  | { readonly kind: "absolute"; readonly mm: number }
  | { readonly kind: "bare"; readonly value: number }
  | { readonly kind: "relative"; readonly unit: string };

const LONGEST = 60;
const LENGTH = new RegExp(`^(${NUMBER})\\s*([a-zA-Z]*|%)$`, "u");

/**
 * Reads a length attribute; undefined for what is no length or not finite.
 *
 * @example
 * readCssLength("1in"); // { kind: "absolute", mm: 25.4 }
 */
export function readCssLength(text: string): CssLength | undefined {
  const short = text.trim();
  if (short.length > LONGEST) return undefined;
  const [, digits, unit = ""] = LENGTH.exec(short) ?? [];
  const value = Number(digits ?? Number.NaN);
  if (!Number.isFinite(value)) return undefined;
  if (unit === "") return { kind: "bare", value };
  const key = unit.toLowerCase();
  const factor = Object.hasOwn(MM_PER, key) ? MM_PER[key] : undefined;
  return factor === undefined ? { kind: "relative", unit } : { kind: "absolute", mm: value * factor };
}
