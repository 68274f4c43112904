import { Fraction } from "fraction.js";

/** The single-character fractions of Unicode, each with its plain spelling, taken from its compatibility form. */
const VULGAR = /[\u00BC-\u00BE\u2150-\u215E]/gu;

/**
 * Spells single-character fractions and the fraction slash out, so that one reader serves all spellings.
 *
 * @example
 * spellFractions("7½"); // "7 1/2"
 */
export function spellFractions(text: string): string {
  return text
    .replace(VULGAR, (glyph, offset: number) => {
      const joins = /\d[\s-]*$/u.test(text.slice(0, offset));
      return `${joins ? " " : ""}${glyph.normalize("NFKD")}`;
    })
    .replace(/(\d)[\s-]+(?=\d+\u2044)/gu, "$1 ")
    .replaceAll("\u2044", "/");
}

/** What was found at the start of a text: a number and how many characters it took, or what is wrong with it. */
export type NumberReading =
  | { readonly ok: true; readonly value: Fraction; readonly length: number; readonly asFraction: boolean }
  | { readonly ok: false; readonly code: "number-unreadable" | "fraction-zero" | "fraction-improper" };

const MIXED = /^(\d+)(?:\s+|-)(\d+)\/(\d+)(?![\d.])/u;
const PLAIN_FRACTION = /^(\d+)\/(\d+)(?![\d.])/u;
const DECIMAL = /^(?:\d+(?:\.\d+)?|\.\d+)(?![\d.])/u;

/**
 * Reads the unsigned number that a text starts with: `7`, `7.5`, `.5`, `3/16`, `7 1/2`, `7-1/2`. The text must
 * have been through {@link spellFractions}.
 *
 * @returns the number as an exact ratio, or the reason why there is none.
 *
 * @example
 * readNumber("7-1/2 in"); // { ok: true, value: 15/2, length: 5, asFraction: true }
 */
export function readNumber(text: string): NumberReading {
  const mixed = MIXED.exec(text);
  if (mixed) {
    const [whole, whole2, numerator, denominator] = parts(mixed);
    if (/^0+$/u.test(denominator)) return { ok: false, code: "fraction-zero" };
    const share = new Fraction(`${numerator}/${denominator}`);
    if (share.gte(1)) return { ok: false, code: "fraction-improper" };
    return { ok: true, value: share.add(whole2), length: whole.length, asFraction: true };
  }
  const fraction = PLAIN_FRACTION.exec(text);
  if (fraction) {
    const [whole, numerator, denominator] = parts(fraction);
    if (/^0+$/u.test(denominator)) return { ok: false, code: "fraction-zero" };
    return {
      ok: true,
      value: new Fraction(`${numerator}/${denominator}`),
      length: whole.length,
      asFraction: true,
    };
  }
  const decimal = DECIMAL.exec(text)?.[0];
  if (decimal === undefined) return { ok: false, code: "number-unreadable" };
  return { ok: true, value: new Fraction(decimal), length: decimal.length, asFraction: false };
}

function parts(match: RegExpExecArray): [string, string, string, string] {
  return [match[0], match[1] ?? "", match[2] ?? "", match[3] ?? ""];
}

/** A number as an exact ratio of its shortest decimal spelling: 25.4 is 127/5. */
export function exactly(value: number): Fraction {
  const [digits = "0", exponent] = String(value).split("e");
  const mantissa = new Fraction(digits);
  return exponent === undefined ? mantissa : mantissa.mul(new Fraction(10).pow(Number(exponent)));
}

/**
 * Writes a value that is a whole number of `1/denominator` as a mixed fraction in lowest terms.
 *
 * @example
 * formatMixed(504, 64); // "7 7/8"
 */
export function formatMixed(count: number, denominator: number): string {
  return new Fraction(count, denominator).toFraction(true);
}
