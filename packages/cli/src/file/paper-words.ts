import { type FileUnits, nearestWord } from "@scantling/geometry/units";
import type { PaperName } from "@scantling/render";
import { type QuantityRule, readQuantity } from "./fields.js";
import { showText } from "./problem.js";
import { twoSides } from "./two-sides.js";

/** A paper as it was asked for: by name, or by its sides, mm. */
export type PaperGiven = { readonly name: PaperName } | { readonly width: number; readonly height: number };

/** The papers by the words for them; blanks and hyphens do not matter, nor do capitals. */
const NAMES: Readonly<Record<string, PaperName>> = {
  a4: "A4",
  a3: "A3",
  a2: "A2",
  a1: "A1",
  a0: "A0",
  letter: "Letter",
  legal: "Legal",
  tabloid: "Tabloid",
  "ansi-c": "ANSI C",
  "ansi-d": "ANSI D",
  "ansi-e": "ANSI E",
};

/** Further words for the same papers. */
const ALSO: Readonly<Record<string, PaperName>> = {
  "ansi-a": "Letter",
  "ansi-b": "Tabloid",
  ledger: "Tabloid",
};

/** Sides that a sheet of paper may have, mm; beyond, a unit is missing or wrong. Basis: common practice, no source. */
const SIDE: QuantityRule = {
  from: 50,
  to: 5000,
  tolerance: false,
  usual: "300 x 600 mm or 8.5 x 11 in",
  about: "Side of a paper",
};

/** What a paper may be written as. */
export const PAPER_EXAMPLES = "a4, letter or 300 x 600 mm";

/**
 * A paper from what was written: `a4`, `Tabloid`, `300x600`, `8.5 x 11 in`.
 *
 * @param units - Of sides without a unit.
 * @param complain - Told what is wrong, with a stable code.
 * @param otherWords - Words that may stand in its place, for the advice about a word that is none.
 */
export function readPaper(
  text: string,
  units: FileUnits,
  complain: (code: string, message: string) => void,
  otherWords: readonly string[] = [],
): PaperGiven | undefined {
  const word = text.trim().toLowerCase();
  const name = nameOf(word);
  if (name !== undefined) return { name };
  const sides = twoSides(text);
  if (typeof sides === "number" || !/\d/u.test(sides.first)) {
    const known = [...Object.keys(NAMES), ...otherWords];
    const near = nearestWord(word, known);
    const advice =
      near === undefined
        ? `; write ${known.join(", ")}, or its sides, such as 300 x 600 mm`
        : `; did you mean ${near}?`;
    complain("unknown-paper", `"${showText(text)}" is not a paper known here${advice}`);
    return undefined;
  }
  const width = readQuantity(sides.first, "length", units, SIDE, complain);
  const height = width && readQuantity(sides.second, "length", units, SIDE, complain);
  return width && height && { width: width.value, height: height.value };
}

function nameOf(word: string): PaperName | undefined {
  const key = word.replace(/[\s_-]+/gu, "-").replace(/^ansi(?=[a-e]$)/u, "ansi-");
  const names = { ...NAMES, ...ALSO };
  return Object.hasOwn(names, key) ? names[key] : undefined;
}
