import type { Bounds } from "@scantling/geometry";
import { SLIM_BARS } from "../../calibration.js";
import type { PaperSize } from "../../paper.js";

/** Between the window and the strips: room for a line of lettering that says what comes on that side, mm. */
export const COLLAR = 7;
/** Least width and height of a window, mm: with less the pages are all joints. */
const LEAST_WINDOW = 40;
/** Least room for the words on a page beside the check bars, mm. */
const LEAST_WORDS = 50;
const BETWEEN = 4;

/** Where things are on a page that shows a part of the drawing; all boxes whole mm, in page mm. */
export interface TileFrame {
  /** Here the drawing is seen. */
  readonly window: Bounds;
  /** The check bars across stand in a strip under the window, those upright in a strip at its right. */
  readonly barsAcross: Bounds;
  readonly barsUp: Bounds;
  /** What the page is, and the words about printing; upright words are read from the right. */
  readonly words: { readonly box: Bounds; readonly upright: boolean };
}

/**
 * Divides a page: the window as large as can be, strips for the check bars at the sides that a neighbour is laid over.
 *
 * @returns undefined where the paper is too small for the check bars, the words, or a window of 40 mm.
 */
export function tileFrame({ width, height }: PaperSize, margin: number): TileFrame | undefined {
  const page: Bounds = {
    minX: margin,
    minY: margin,
    maxX: Math.floor(width - margin),
    maxY: Math.floor(height - margin),
  };
  const strip = SLIM_BARS.height;
  const window: Bounds = {
    minX: page.minX + COLLAR,
    minY: page.minY + strip + COLLAR,
    maxX: page.maxX - strip - COLLAR,
    maxY: page.maxY - COLLAR,
  };
  if (window.maxX - window.minX < LEAST_WINDOW || window.maxY - window.minY < LEAST_WINDOW) return undefined;
  // The strip across has the corner, so the upright one begins above it.
  const foot: Bounds = { ...page, maxY: page.minY + strip };
  const side: Bounds = { ...page, minX: page.maxX - strip, minY: foot.maxY + BETWEEN };
  const barsAcross = { ...foot, minX: foot.maxX - SLIM_BARS.length };
  const barsUp = { ...side, maxY: side.minY + SLIM_BARS.length };
  if (barsAcross.minX < page.minX || barsUp.maxY > page.maxY) return undefined;
  const atFoot = { ...foot, maxX: barsAcross.minX - BETWEEN };
  const atSide = { ...side, minY: barsUp.maxY + BETWEEN };
  const place = { window, barsAcross, barsUp };
  if (atFoot.maxX - atFoot.minX >= LEAST_WORDS) return { ...place, words: { box: atFoot, upright: false } };
  if (atSide.maxY - atSide.minY >= LEAST_WORDS) return { ...place, words: { box: atSide, upright: true } };
  return undefined;
}
