import type { Vec2 } from "@scantling/geometry";
import { inchesToMm } from "@scantling/geometry/units";
import {
  CHECK_BARS_END,
  CHECK_BARS_OVER,
  CHECK_BARS_UNDER,
  checkBars,
  INCH_BAR,
  SHORT_BARS_END,
  SLIM_BARS,
  slimCheckBars,
} from "../calibration.js";
import type { DrawingItem } from "../drawing.js";
import type { Wish } from "../free-space.js";
import { type TableContent, tableItems, tableSize } from "../table.js";
import {
  type NoteLine,
  printNote,
  printNoteSize,
  slimPrintNote,
  slimPrintNoteSize,
  USUAL_NOTE,
} from "./print-note.js";

/** A part of the sheet that may stand wherever there is room; mm. */
export interface Part {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly wish: Wish;
  /** Belongs to the paper and not to what is drawn: left out of files for CAD. */
  readonly ofPaper?: true;
  /** Draws it with its lower left corner there; whole mm. */
  readonly items: (corner: Vec2) => DrawingItem[];
  /** Whether it is cut out along its outer line: then the check bars never go for want of room, and the scissors have theirs. */
  readonly trueSize?: boolean;
}

/** From the lower left corner of the part to where the upright bars begin: room for half a figure, whole mm. */
const BARS_FOOT = 2;
const BARS_LEFT = Math.ceil(CHECK_BARS_OVER);

/** Clear space over the words, besides that between all parts, mm. */
const ABOVE_NOTE = 1.5;

export const uprightBars: Part = {
  name: "check-bars-up",
  width: BARS_LEFT + Math.ceil(CHECK_BARS_UNDER),
  height: BARS_FOOT + inchesToMm(INCH_BAR) + CHECK_BARS_END,
  wish: "corner",
  ofPaper: true,
  items: ({ x, y }) => checkBars("up", { x: x + BARS_LEFT, y: y + BARS_FOOT }),
};

/** The same, as wide and less high, for a page with less room under the view. */
export const shortUprightBars: Part = {
  ...uprightBars,
  height: BARS_FOOT + inchesToMm(INCH_BAR) + SHORT_BARS_END,
  items: ({ x, y }) => checkBars("up", { x: x + BARS_LEFT, y: y + BARS_FOOT }, true),
};

/** The same as a slim strip, for a page on which every mm counts. */
export const slimUprightBars: Part = {
  name: "check-bars-up",
  width: SLIM_BARS.height,
  height: SLIM_BARS.length,
  wish: "corner",
  ofPaper: true,
  items: ({ x, y }) => slimCheckBars("up", { x: x + SLIM_BARS.height, y }),
};

/**
 * The level check bars under words about printing.
 *
 * @param more - further lines under the usual ones.
 * @param usual - those of a sheet that is cut along or traced, unless others are given.
 */
export function noteAndLevelBars(more: readonly NoteLine[], usual: readonly NoteLine[] = USUAL_NOTE): Part {
  const lines = [...usual, ...more];
  const { width, height } = printNoteSize(lines);
  return {
    name: "print-note",
    width,
    height: height + ABOVE_NOTE,
    wish: "corner",
    ofPaper: true,
    items: (corner) => printNote(corner, lines),
  };
}

/** The same over slim bars. */
export function noteAndSlimBars(more: readonly NoteLine[], usual: readonly NoteLine[] = USUAL_NOTE): Part {
  const lines = [...usual, ...more];
  return {
    ...slimPrintNoteSize(lines),
    name: "print-note",
    wish: "corner",
    ofPaper: true,
    items: (corner) => slimPrintNote(corner, lines),
  };
}

export function tablePart(name: string, table: TableContent): Part {
  const { width, height } = tableSize(table);
  return {
    name,
    width,
    height,
    wish: "foot",
    ofPaper: true,
    items: ({ x, y }) => tableItems(table, { left: x, top: y + Math.ceil(height) }),
  };
}
