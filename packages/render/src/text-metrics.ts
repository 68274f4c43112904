import type { Bounds } from "@scantling/geometry";
import type { TextItem } from "./drawing.js";

/** Plain upright lettering: the first family that the reader's machine has. All are close to one another in width. */
export const FONT_FAMILIES = "Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif";

// Capitals of these fonts are 0.714 to 0.729 of the font size, so that a size of 1.4 heights gives at least the height.
const FONT_SIZE_PER_HEIGHT = 1.4;

/** Font size in mm for lettering whose capitals are `height` mm tall. */
export const fontSizeOf = (height: number): number => height * FONT_SIZE_PER_HEIGHT;

// Advance widths as shares of the font size. Source: the larger of the published Helvetica metrics (from memory) and
// those read from DejaVu Sans 2.37, the widest of the families above.
const WIDTHS: readonly (readonly [number, string])[] = [
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

const WIDTH_OF = new Map(
  WIDTHS.flatMap(([width, characters]) => [...characters].map((character) => [character, width] as const)),
);

// Widest letters of the Latin, Greek and Cyrillic blocks in DejaVu Sans, those of other scripts, and pictographs.
const OTHER_LETTER = 1.2;
const OTHER_SCRIPT = 1.5;
const PICTOGRAPH = 1.5;
// Two- and three-em dashes, the long bars of some scripts, whole phrases set as one character.
const PHRASE = 12;

/** Room for kerning that a renderer may not apply and for hinting. */
const SAFETY = 1.03;

/**
 * Width that a line of lettering takes at most, mm. An estimate on the safe side, so that nothing overlaps whichever
 * of the font families is at hand.
 *
 * @param height - height of the capitals, mm.
 *
 * @example
 * textWidth("MG-14", 2.5); // 12.04
 */
export function textWidth(text: string, height: number): number {
  let width = 0;
  for (const character of text) width += characterWidth(character);
  return width * fontSizeOf(height) * SAFETY;
}

function characterWidth(character: string): number {
  const known = WIDTH_OF.get(character);
  if (known !== undefined) return known;
  if (/\p{M}/u.test(character)) return 0;
  const base = character.normalize("NFD").charAt(0);
  const letter = WIDTH_OF.get(base);
  if (letter !== undefined) return letter;
  if (/[\p{Extended_Pictographic}\p{Regional_Indicator}]/u.test(character)) return PICTOGRAPH;
  if (/[\u2e3a\u2e3b\u{1242b}-\u{12431}\ua9c5\ufdf0-\ufdff]|\u0bf5|\u0bf8/u.test(character)) return PHRASE;
  return character < "\u0530" || /[\u2000-\u22ff]/.test(character) ? OTHER_LETTER : OTHER_SCRIPT;
}

const ASCENT = 0.8;
const DESCENT = 0.25;
const PLAIN_TEXT = /^[\x20-\x7e°±×Ø·−–≈²³]*$/;
const TALL_ASCENT = 1.1;
const TALL_DESCENT = 0.35;

/** How far a line of lettering reaches over and under its base line at most, mm; accents and other scripts count. */
export function textReach(text: string, height: number): { readonly over: number; readonly under: number } {
  const size = fontSizeOf(height);
  return PLAIN_TEXT.test(text)
    ? { over: ASCENT * size, under: DESCENT * size }
    : { over: TALL_ASCENT * size, under: TALL_DESCENT * size };
}

/** The box that a line of lettering takes at most, turned text included. */
export function textBox(item: TextItem): Bounds {
  const width = textWidth(item.text, item.height);
  const { over, under } = textReach(item.text, item.height);
  const left = item.anchor === "start" ? 0 : item.anchor === "middle" ? -width / 2 : -width;
  const cos = Math.cos(item.rotation);
  const sin = Math.sin(item.rotation);
  const corners = [left, left + width].flatMap((x) =>
    [-under, over].map((y) => ({ x: item.at.x + x * cos - y * sin, y: item.at.y + x * sin + y * cos })),
  );
  return {
    minX: Math.min(...corners.map((corner) => corner.x)),
    minY: Math.min(...corners.map((corner) => corner.y)),
    maxX: Math.max(...corners.map((corner) => corner.x)),
    maxY: Math.max(...corners.map((corner) => corner.y)),
  };
}
