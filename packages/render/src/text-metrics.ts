import type { Bounds } from "@scantling/geometry";
import { drawnWidthOfAll, widthOfAll } from "./character-widths.js";
import type { TextItem } from "./drawing.js";

/** Plain upright lettering: the first family that the reader's machine has. All are close to one another in width. */
export const FONT_FAMILIES = "Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif";

// Capitals of these fonts are 0.714 to 0.729 of the font size, so that a size of 1.4 heights gives at least the height.
const FONT_SIZE_PER_HEIGHT = 1.4;

/** Font size in mm for lettering whose capitals are `height` mm tall. */
export const fontSizeOf = (height: number): number => height * FONT_SIZE_PER_HEIGHT;

/** Room for kerning that a renderer may not apply and for hinting. */
const SAFETY = 1.03;

/**
 * Width that a line of lettering takes at most, mm. An estimate on the safe side, so that nothing overlaps whichever
 * of the font families is at hand.
 *
 * @param height - height of the capitals, mm.
 * @param bold - whether the lettering is bold.
 *
 * @example
 * textWidth("MG-14", 2.5); // 12.04
 */
export function textWidth(text: string, height: number, bold = false): number {
  const weight = bold ? "bold" : "regular";
  return Math.max(widthOfAll(text, weight) * SAFETY, drawnWidthOfAll(text, weight)) * fontSizeOf(height);
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
  const width = textWidth(item.text, item.height, item.bold);
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
