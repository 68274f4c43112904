import {
  describeQuantityError,
  type FileUnits,
  formatQuantity,
  KIND_WORDS,
  nearestWord,
  parseQuantity,
  type QuantityKind,
} from "@scantling/geometry/units";
import { z } from "zod";
import { showText } from "./problem.js";

/** A number that the file gives with its tolerance; `liftTolerances` takes the tolerance off. */
export class Reading {
  readonly value: number;
  readonly plus: number;
  readonly minus: number;

  constructor(value: number, plus = 0, minus = 0) {
    this.value = value;
    this.plus = plus;
    this.minus = minus;
  }

  scaled(factor: number): Reading {
    return new Reading(this.value * factor, this.plus * factor, this.minus * factor);
  }
}

/** What a quantity may be; limits in mm, g, rad, °C, g/mm³ or as a share. */
export interface QuantityRule {
  /** Must be greater than this. */
  readonly above?: number;
  /** Must be this or greater. */
  readonly from?: number;
  readonly below?: number;
  readonly to?: number;
  /** Whether a tolerance may follow; yes by default. */
  readonly tolerance?: boolean;
  /** What is usual, for whoever wrote something that cannot be. */
  readonly usual?: string;
  /** What the key means, for editors. */
  readonly about: string;
}

export const POSITIVE = { above: 0 } as const;
export const NOT_NEGATIVE = { from: 0 } as const;

type Complain = (code: string, message: string) => void;

/** The problem of a transform as zod carries it. */
function complainTo(ctx: z.core.$RefinementCtx): Complain {
  return (code, message) => ctx.addIssue({ code: "custom", message, params: { code } });
}

const numberOrText = (expected: string) => z.union([z.number(), z.string()], { error: expected });

/** A length, mass, angle, … in any of its spellings. */
export function quantity(kind: QuantityKind, units: FileUnits, rule: QuantityRule) {
  const words = KIND_WORDS[kind];
  return numberOrText(`needs ${words.a}, for example ${words.examples}`)
    .transform((raw, ctx) => readQuantity(raw, kind, units, rule, complainTo(ctx)) ?? z.NEVER)
    .meta({ description: `${rule.about} (${kind}; ${words.examples})` });
}

/** A quantity, or one of some words instead. */
export function quantityOrWord<W extends string>(
  kind: QuantityKind,
  units: FileUnits,
  words: readonly [W, ...W[]],
  rule: QuantityRule,
) {
  const { a, examples } = KIND_WORDS[kind];
  return numberOrText(`needs ${a}, for example ${examples}, or ${words.join(", ")}`)
    .transform((raw, ctx): Reading | W => {
      const word = words.find((known) => known === raw);
      if (word !== undefined) return word;
      const near = typeof raw === "string" ? nearestWord(raw, words) : undefined;
      if (near !== undefined) {
        complainTo(ctx)(
          "unknown-word",
          `"${showText(String(raw))}" is not known here; did you mean ${near}?`,
        );
        return z.NEVER;
      }
      return readQuantity(raw, kind, units, rule, complainTo(ctx)) ?? z.NEVER;
    })
    .meta({ description: `${rule.about} (${words.join(", ")}, or a ${kind})` });
}

export function readQuantity(
  raw: number | string,
  kind: QuantityKind,
  units: FileUnits,
  rule: QuantityRule,
  complain: Complain,
): Reading | undefined {
  const parsed = parseQuantity(raw, kind, units);
  if (!parsed.ok) {
    complain(`quantity-${parsed.error.code}`, describeQuantityError(parsed.error));
    return undefined;
  }
  const { value, plus, minus } = parsed.quantity;
  if (rule.tolerance === false && (plus > 0 || minus > 0)) {
    complain("tolerance-not-taken", `"${showText(String(raw))}" has a tolerance; none can be given here`);
    return undefined;
  }
  const said = unitsOf(raw, kind, units);
  const wrong = outOfRange(value, rule, (limit) => showLimit(limit, kind, said));
  if (wrong !== undefined) {
    const usual = rule.usual === undefined ? "" : `, for example ${usualIn(rule.usual, kind, said)}`;
    complain("out-of-range", `"${showText(String(raw))}" ${wrong}${usual}`);
    return undefined;
  }
  const ends = outOfRange(value - minus, rule, String) ?? outOfRange(value + plus, rule, String);
  if (ends !== undefined) {
    complain(
      "tolerance-out-of-range",
      `"${showText(String(raw))}" reaches beyond what is possible; give a closer tolerance`,
    );
    return undefined;
  }
  return new Reading(value, plus, minus);
}

function outOfRange(value: number, rule: QuantityRule, show: (limit: number) => string): string | undefined {
  const { above, from, below, to } = rule;
  if (above !== undefined && !(value > above)) return `must be more than ${show(above)}`;
  if (from !== undefined && !(value >= from))
    return from === 0 ? "must not be negative" : `must be ${show(from)} or more`;
  if (below !== undefined && !(value < below)) return `must be less than ${show(below)}`;
  if (to !== undefined && !(value <= to)) return `must be ${show(to)} or less`;
  return undefined;
}

/** The units that a length is written in, those of the file where it says none; other quantities are told in the file's. */
function unitsOf(raw: number | string, kind: QuantityKind, units: FileUnits): FileUnits {
  if (kind !== "length" || typeof raw === "number") return units;
  if (/\d\s*(?:[mcµu]?m|microns?)\b/iu.test(raw)) return "mm";
  return /\d\s*(?:in\b|inch|ft\b|thou|["″'′])/iu.test(raw) ? "in" : units;
}

/** A usual size in those units; as it stands where it is no single length. */
function usualIn(usual: string, kind: QuantityKind, units: FileUnits): string {
  if (kind !== "length" || unitsOf(usual, kind, units) === units) return usual;
  const parsed = parseQuantity(usual, kind, units);
  return parsed.ok ? formatQuantity({ quantity: kind, value: parsed.quantity.value }, units) : usual;
}

function showLimit(limit: number, kind: QuantityKind, units: FileUnits): string {
  if (limit === 0 || kind === "density") return String(limit);
  return formatQuantity({ quantity: kind, value: limit }, units);
}

/** A name: any text that can be printed; a bare number such as 1084 is taken as it is written. */
export function name(about: string, longest = 200) {
  return numberOrText("needs a name")
    .transform((raw, ctx) => {
      const text = String(raw).trim();
      if (text === "") complainTo(ctx)("name-empty", "needs a name");
      // Control characters cannot stand in a drawing; lone surrogates cannot be saved.
      else if (/[\p{Cc}\p{Cs}]/u.test(text))
        complainTo(ctx)("name-unprintable", "has a character in it that cannot be printed");
      else if (text.length > longest)
        complainTo(ctx)("name-too-long", `is too long; ${longest} characters are the most`);
      return text;
    })
    .meta({ description: about });
}

/** Words over several lines, for a sheet: every character can be printed. */
export function text(about: string, most = 1000) {
  return z
    .string({ error: "needs some words" })
    .transform((raw, ctx) => {
      const words = raw.trim();
      if (words === "") complainTo(ctx)("text-empty", "needs some words");
      else if (/[\p{Cs}]|(?![\n\r\t])\p{Cc}/u.test(words))
        complainTo(ctx)("text-unprintable", "has a character in it that cannot be printed");
      else if (words.length > most)
        complainTo(ctx)("text-too-long", `is too long; ${most} characters are the most`);
      return words;
    })
    .meta({ description: about });
}

/** A whole number. */
export function count(about: string, from: number, to = 1000) {
  return numberOrText(`needs a whole number from ${from} to ${to}`)
    .transform((raw, ctx) => {
      const value = typeof raw === "number" ? raw : Number(raw.trim() === "" ? Number.NaN : raw);
      if (!Number.isInteger(value) || value < from || value > to) {
        complainTo(ctx)(
          "not-a-count",
          `"${showText(String(raw))}" must be a whole number from ${from} to ${to}`,
        );
      }
      return value;
    })
    .meta({ description: about });
}

/** A number as it may be typed: `3.5`, `-3`, `1e3`; undefined where it is none. */
export const numberIn = (text: string): number | undefined =>
  /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?\s*$/iu.test(text) ? Number(text) : undefined;

/** A plain number, such as a price or a ratio. */
export function plainNumber(about: string, from: number) {
  return numberOrText("needs a number")
    .transform((raw, ctx) => {
      const value = typeof raw === "number" ? raw : (numberIn(raw) ?? Number.NaN);
      if (!Number.isFinite(value))
        complainTo(ctx)("not-a-number", `"${showText(String(raw))}" is not a number`);
      else if (value < from)
        complainTo(ctx)("out-of-range", `"${showText(String(raw))}" must be ${from} or more`);
      return value;
    })
    .meta({ description: about });
}
