// Control characters, the marks that turn or isolate writing direction, invisible joiners and fillers, private use and
// non-characters, halves of surrogate pairs: none of them prints, and some make a label read as another one.
const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Co}\p{Noncharacter_Code_Point}\p{Cs}\u115f\u1160\u3164\uffa0]/gu;
const SPACES = /[\p{Zs}\p{Zl}\p{Zp}\t\n\v\f\r\u0085]+/gu;
/** More than two marks on one letter would run into the line above. */
const PILED_MARKS = /(\p{M}{2})\p{M}+/gu;
/** Most of what is drawn: nothing in it but letters, figures and signs with single spaces between. */
const CLEAN = /^[!-~\u00b0-\u00ff]+(?: [!-~\u00b0-\u00ff]+)*$/;

/**
 * Text as it can stand on a drawing: one line, visible characters only, runs of space made one.
 * Markup is not touched here; it is escaped when a file is written.
 *
 * @example
 * cleanText("MG-14\u202e\n  fork"); // "MG-14 fork"
 */
export function cleanText(text: string): string {
  if (CLEAN.test(text)) return text;
  return text
    .replace(SPACES, " ")
    .replace(UNPRINTABLE, "")
    .replace(PILED_MARKS, "$1")
    .replace(/ {2,}/g, " ")
    .trim();
}
