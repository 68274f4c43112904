/** A stretch of a line of lettering whose letters all run one way. */
export interface Stretch {
  readonly text: string;
  readonly rightToLeft: boolean;
}

// Hebrew, Arabic, Syriac, Thaana, NKo and their neighbours, presentation forms included. Unicode keeps these blocks for
// writing that runs from right to left (UAX 44, Bidi_Class, from memory).
const RIGHT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;
const DIGIT = /^\p{Nd}/u;
const LETTER = /^\p{L}/u;
/** What may stand between the digits of one number. */
const SEPARATOR = /^[.,:/+-]$/;

const OPENING = /^[([{]/;
const CLOSING = /^[)\]}]/;
/** Arabic digits. A font's rules for Arabic turn them too, although numbers run from left to right. */
const TURNED_DIGIT = /^[\u0660-\u0669\u06f0-\u06f9]/;

const MIRRORED: Readonly<Record<string, string>> = {
  "(": ")",
  ")": "(",
  "[": "]",
  "]": "[",
  "{": "}",
  "}": "{",
  "<": ">",
  ">": "<",
  "«": "»",
  "»": "«",
};

/**
 * The stretches of a line in the order in which they stand on paper, from the left: Hebrew, Arabic and their like run
 * from right to left, numbers among them from left to right. The line itself runs from left to right.
 *
 * A short form of the Unicode bidirectional algorithm (UAX 9) for one line without marks of direction, which
 * `cleanText` has taken out.
 */
export function readingOrder(text: string): Stretch[] {
  if (!RIGHT.test(text)) return [{ text, rightToLeft: false }];
  const letters = text.match(/.\p{M}*/gsu) ?? [];
  const stretches: Stretch[] = [];
  let left = "";
  for (let index = 0; index < letters.length; ) {
    const letter = letters[index] ?? "";
    if (isRight(letter)) {
      if (left !== "") stretches.push({ text: left, rightToLeft: false });
      left = "";
      const end = endOfRight(letters, index);
      stretches.push(...turned(letters.slice(index, end)));
      index = end;
    } else {
      left += letter;
      index++;
    }
  }
  return left === "" ? stretches : [...stretches, { text: left, rightToLeft: false }];
}

const isRight = (letter: string): boolean => RIGHT.test(letter) && !DIGIT.test(letter);

/**
 * Just past the last letter or digit before writing from left to right goes on. A bracket belongs to it only together
 * with its partner.
 */
function endOfRight(letters: readonly string[], start: number): number {
  let end = start;
  let open = 0;
  for (let index = start; index < letters.length; index++) {
    const letter = letters[index] ?? "";
    const counts = isRight(letter) || DIGIT.test(letter);
    if (OPENING.test(letter)) open++;
    if (CLOSING.test(letter)) open--;
    if (open < 0 || (LETTER.test(letter) && !counts)) break;
    if (open === 0 && (counts || CLOSING.test(letter))) end = index + 1;
  }
  return end;
}

function turned(letters: readonly string[]): Stretch[] {
  const stretches: { text: string; rightToLeft: boolean; number: boolean }[] = [];
  for (const [index, letter] of letters.entries()) {
    const number =
      DIGIT.test(letter) ||
      (SEPARATOR.test(letter) &&
        DIGIT.test(letters[index - 1] ?? "") &&
        DIGIT.test(letters[index + 1] ?? ""));
    const last = stretches.at(-1);
    const text = number ? letter : (MIRRORED[letter] ?? letter);
    if (last?.number !== number) stretches.push({ text, rightToLeft: !number, number });
    else last.text += text;
  }
  return stretches
    .reverse()
    .map(({ text, rightToLeft }) =>
      TURNED_DIGIT.test(text)
        ? { text: [...text].reverse().join(""), rightToLeft: true }
        : { text, rightToLeft },
    );
}
