import { missingCharacter } from "../missing-character.js";
import { readingOrder, type Stretch } from "./reading-order.js";

/** The fonts that a page can be lettered with. */
export type FontName = "regular" | "bold" | "fallback";

/** Whether a font has a glyph for a code point. */
export type Coverage = (font: FontName, codePoint: number) => boolean;

/** Letters that are set with one font in one go, one way. */
export interface Run extends Stretch {
  readonly font: FontName;
}

const fontsFor = (bold: boolean): readonly FontName[] =>
  bold ? ["bold", "regular", "fallback"] : ["regular", "fallback"];

/** Says how letters are to be drawn and draws nothing itself (variation selectors and their like). */
const INVISIBLE = /\p{Default_Ignorable_Code_Point}/gu;

/** A line of lettering without what has no form of its own. */
export const visibleText = (text: string): string => text.replace(INVISIBLE, "");

/**
 * The runs of one line in the order in which they stand on paper, from the left. Each letter with its marks gets the
 * first font that has all of it; a character that no font has is written out as its number.
 */
export function typeset(text: string, bold: boolean, covers: Coverage): Run[] {
  return readingOrder(visibleText(text)).flatMap((stretch) => {
    const runs = runsOf(stretch, fontsFor(bold), covers);
    return stretch.rightToLeft ? runs.reverse().map(turnedWhereTheFontDoesNot) : runs;
  });
}

function runsOf({ text, rightToLeft }: Stretch, fonts: readonly FontName[], covers: Coverage): Run[] {
  const runs: Run[] = [];
  for (const letter of text.match(/.\p{M}*/gsu) ?? []) {
    for (const { font, text: part } of withFont(letter, fonts, runs.at(-1)?.font, covers)) {
      const last = runs.at(-1);
      if (last?.font === font) runs[runs.length - 1] = { ...last, text: last.text + part };
      else runs.push({ font, text: part, rightToLeft });
    }
  }
  return runs;
}

/** A letter and its marks in one font if any font has them all; otherwise each in the first font that has it. */
function withFont(
  letter: string,
  fonts: readonly FontName[],
  before: FontName | undefined,
  covers: Coverage,
): { readonly font: FontName; readonly text: string }[] {
  const firstFor = (characters: readonly string[]): FontName | undefined =>
    fonts.find((font) => characters.every((character) => covers(font, character.codePointAt(0) ?? 0)));
  // A space goes with the word before it.
  if (letter === " " && before !== undefined) return [{ font: before, text: letter }];
  const characters = [...letter];
  const whole = firstFor(characters);
  if (whole !== undefined) return [{ font: whole, text: letter }];
  return characters.map((character) => {
    const font = firstFor([character]);
    return font === undefined
      ? { font: fonts[0] ?? "regular", text: missingCharacter(character) }
      : { font, text: character };
  });
}

/** The main fonts carry rules of layout that turn Hebrew and Arabic themselves; the fallback has none. */
const turnedWhereTheFontDoesNot = (run: Run): Run =>
  run.font === "fallback" ? { ...run, text: (run.text.match(/.\p{M}*/gsu) ?? []).reverse().join("") } : run;
