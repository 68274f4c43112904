import { inchesToMm } from "@scantling/geometry/units";
import { CHECK_BARS_END, CHECK_BARS_OVER, CHECK_BARS_UNDER, checkBars, INCH_BAR } from "../calibration.js";
import { type DrawingItem, lettering } from "../drawing.js";
import { KEY, SMALL } from "../lettering-size.js";
import { textWidth } from "../text-metrics.js";

interface NoteLine {
  readonly text: string;
  readonly height: number;
}

const NOTE: readonly NoteLine[] = [
  { text: "PRINT AT 100 %. NO FIT TO PAGE.", height: KEY },
  { text: "Before cutting, measure all four check bars.", height: SMALL },
  { text: "If one is not 100 mm or 4 in, do not use this print.", height: SMALL },
  { text: "True size is the middle of the wide outline.", height: SMALL },
];

/** From the left of the note to where the bars begin: room for half a figure, whole mm. */
const BARS_START = 2;
const NOTE_GAP = 2;
/** Distance from one base line to the next, as a multiple of the height. */
const PITCH = 1.55;
const NOTE_HEIGHT = NOTE.reduce((sum, line) => sum + line.height * PITCH, 0);

/** Room that the note and the level check bars take, mm. */
export const PRINT_NOTE = {
  width: Math.max(
    BARS_START + inchesToMm(INCH_BAR) + CHECK_BARS_END,
    ...NOTE.map((line) => textWidth(line.text, line.height)),
  ),
  height: Math.ceil(CHECK_BARS_UNDER) + CHECK_BARS_OVER + NOTE_GAP + NOTE_HEIGHT,
};

/** The words about printing, over the level check bars. `corner`: lower left, whole mm. */
export function printNote(corner: { x: number; y: number }): DrawingItem[] {
  const barY = corner.y + Math.ceil(CHECK_BARS_UNDER);
  const items: DrawingItem[] = checkBars("across", { x: corner.x + BARS_START, y: barY });
  let y = barY + CHECK_BARS_OVER + NOTE_GAP + NOTE_HEIGHT;
  for (const line of NOTE) {
    y -= line.height * PITCH;
    items.push(lettering(line.text, { x: corner.x, y: y + 0.35 * line.height }, { height: line.height }));
  }
  return items;
}
