import { missingCharacter } from "./missing-character.js";

type WidthTable = readonly (readonly [number, string])[];

// Advance widths as shares of the font size. Source: the larger of the published Helvetica metrics (from memory) and
// those read from DejaVu Sans 2.37, the widest of the families that an SVG asks for and the one that is in a PDF.
const REGULAR: WidthTable = [
  [0.29, "'ijl|I"],
  [0.34, " ,.:;/\\f"],
  [0.4, "-()[]t!·`"],
  [0.42, 'r"*²³°'],
  [0.5, "J"],
  [0.53, "sz"],
  [0.56, "c?_k–"],
  [0.61, "vxyLF"],
  [0.64, "0123456789abdeghnopqu{}$T"],
  [0.69, "ABEKPSVXYZ"],
  [0.76, "CHNRU"],
  [0.79, "DGOQØ&"],
  [0.84, "w#+<=>^~±×−≈"],
  [0.87, "M"],
  [1.02, "m%W@"],
];

// Where DejaVu Sans alone is a little wider still. In any line but the shortest the room for kerning covers it, so
// these count only where they have to.
const A_LITTLE_WIDER: WidthTable = [
  [0.3, "I"],
  [0.34, "|"],
  [0.36, "f"],
  [0.41, "!"],
  [0.46, '"'],
  [0.501, "*`°"],
  [0.58, "k"],
];

// The same of the bold fonts: the larger of Helvetica Bold (from memory) and DejaVu Sans Bold 2.37.
const BOLD: WidthTable = [
  [0.35, "'ijl "],
  [0.38, "I|/\\,."],
  [0.42, ":;-·"],
  [0.46, "f²³!()[]"],
  [0.5, "tr`°"],
  [0.53, '"*'],
  [0.57, "J_–"],
  [0.6, "zcs"],
  [0.62, "?"],
  [0.66, "Lxvy"],
  [0.68, "kae"],
  [0.7, "TFEo0123456789$"],
  [0.72, "hnu{}bdgpq"],
  [0.74, "YZPCS"],
  [0.78, "BRXAVK"],
  [0.84, "UGDHN#+<=>^~±×−≈"],
  [0.88, "OQØ&"],
  [0.93, "w"],
  [1.01, "M%@"],
  [1.05, "m"],
  [1.11, "W"],
];

const byCharacter = (table: WidthTable): ReadonlyMap<string, number> =>
  new Map(table.flatMap(([width, characters]) => [...characters].map((character) => [character, width])));

const WIDTH_OF = { regular: byCharacter(REGULAR), bold: byCharacter(BOLD) };
const DRAWN_WIDTH_OF = { regular: byCharacter([...REGULAR, ...A_LITTLE_WIDER]), bold: WIDTH_OF.bold };

// Those that are wider than their letter without its accent, or than what is taken for letters of their kind.
const WIDER = byCharacter([
  [0.48, "ľ"],
  [0.87, "ƯỨỪỬỮỰ"],
  [0.92, "ƠỚỜỞỠỢ"],
  [1.6, "ǄǅǱǲѼ₧₯⅒ⅷↀↂ⋘⋙‰"],
  [1.9, "ⅦⅧⅫ‱⨌ﬗ"],
]);

// Widest letters of the Latin, Greek and Cyrillic blocks in DejaVu Sans, those of other scripts, and pictographs. The
// letters of the fallback in a PDF, GNU Unifont, are one font size wide at most.
const OTHER_LETTER = { regular: 1.2, bold: 1.36 };
const OTHER_SCRIPT = 1.5;
const PICTOGRAPH = 1.5;
// Syllables and strokes of Canada and Ireland of old.
const WIDE_SCRIPT = 2.05;
// Two- and three-em dashes, the long bars of some scripts, whole phrases set as one character.
const PHRASE = 12;

/** Marks that a font gives room of their own instead of setting them on the letter before. */
const SPACED_MARKS: readonly (readonly [number, number])[] = [
  [0x488, 0x489],
  [0x65a, 0x65a],
  [0x897, 0x89f],
  [0x8ca, 0x8d2],
  [0xc3c, 0xc3c],
  [0xcf3, 0xcf3],
  [0xece, 0xece],
  [0x1715, 0x1715],
  [0x1885, 0x1886],
  [0x1ac1, 0x1aeb],
  [0x1dfa, 0x1dfa],
];

const markWidth = (mark: string): number => {
  const code = mark.codePointAt(0) ?? 0;
  return SPACED_MARKS.some(([first, last]) => code >= first && code <= last) ? 1 : 0;
};

export type Weight = "regular" | "bold";

/** Width of all characters together, as a share of the font size, in the family that a reader may have. */
export const widthOfAll = (text: string, weight: Weight): number => sum(text, weight, WIDTH_OF[weight]);

/** The same in the very font that is in a PDF; without kerning, which makes a line shorter. */
export const drawnWidthOfAll = (text: string, weight: Weight): number =>
  sum(text, weight, DRAWN_WIDTH_OF[weight]);

function sum(text: string, weight: Weight, widths: ReadonlyMap<string, number>): number {
  let width = 0;
  for (const character of text) width += characterWidth(character, weight, widths);
  return width;
}

function characterWidth(character: string, weight: Weight, widths: ReadonlyMap<string, number>): number {
  const known = widths.get(character) ?? WIDER.get(character);
  if (known !== undefined) return known;
  // Few fonts have them; a PDF then writes out their number.
  if (character.length > 1) return sum(missingCharacter(character), weight, widths);
  if (/\p{M}/u.test(character)) return markWidth(character);
  const letter = widths.get(character.normalize("NFD").charAt(0));
  if (letter !== undefined) return letter;
  if (/\p{Extended_Pictographic}/u.test(character)) return PICTOGRAPH;
  if (/[\u2e3a\u2e3b\ua9c5\ufdf0-\ufdff\u0bf5\u0bf8]/.test(character)) return PHRASE;
  if (/[\u1400-\u169f]/.test(character)) return WIDE_SCRIPT;
  return character < "\u0530" || /[\u2000-\u22ff]/.test(character) ? OTHER_LETTER[weight] : OTHER_SCRIPT;
}
