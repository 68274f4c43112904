import { formatNumber, inchesToMm } from "@scantling/geometry/units";
import {
  CHECK_BARS_END,
  CHECK_BARS_OVER,
  CHECK_BARS_UNDER,
  checkBars,
  INCH_BAR,
  SLIM_BARS,
  slimCheckBars,
} from "../calibration.js";
import { type DrawingItem, lettering } from "../drawing.js";
import { KEY, SMALL } from "../lettering-size.js";
import { fileSize, type PaperSize } from "../paper.js";
import { textWidth } from "../text-metrics.js";

export interface NoteLine {
  readonly text: string;
  readonly height: number;
}

/** What a sheet says that is cut along or traced. */
export const USUAL_NOTE: readonly NoteLine[] = [
  { text: "PRINT AT 100 %. NO FIT TO PAGE.", height: KEY },
  { text: "Before cutting, measure all four check bars.", height: SMALL },
  { text: "If one is not 100 mm or 4 in, do not use this print.", height: SMALL },
  { text: "True size is the middle of the wide outline.", height: SMALL },
];

/** The same with another last line, where the wide outline is not what is cut along. */
export const usualNote = (trueLine: string | undefined): readonly NoteLine[] =>
  trueLine === undefined ? USUAL_NOTE : [...USUAL_NOTE.slice(0, -1), { text: trueLine, height: SMALL }];

/** Digits that a factor is said with: 10⁻⁵ of 250 mm is far less than a caliper tells. */
const FACTOR_STEP = 1e-5;

/** What a page that is corrected for its printer says of that; nothing for others. */
export function correctionWords(paper: PaperSize): NoteLine[] {
  const { correction, name } = paper;
  if (correction === undefined) return [];
  const { width, height } = fileSize(paper);
  const { across, up } = correction;
  const [short, long] = width <= height ? [across, up] : [up, across];
  const factor = (value: number): string => formatNumber(value, FACTOR_STEP);
  return [
    `Corrected for this printer on ${name ?? "this paper"}:`,
    `short side × ${factor(short)}, long side × ${factor(long)}.`,
  ].map((text) => ({ text, height: SMALL }));
}

/** From the left of the note to where the bars begin: room for half a figure, whole mm. */
const BARS_START = 2;
const NOTE_GAP = 2;
/** Distance from one base line to the next, as a multiple of the height. */
const PITCH = 1.55;

const heightOf = (lines: readonly NoteLine[]): number =>
  lines.reduce((sum, line) => sum + line.height * PITCH, 0);

/** Room that the level check bars and the words over them take, mm. */
export const printNoteSize = (
  lines: readonly NoteLine[],
): { readonly width: number; readonly height: number } => ({
  width: Math.max(
    BARS_START + inchesToMm(INCH_BAR) + CHECK_BARS_END,
    ...lines.map((line) => textWidth(line.text, line.height)),
  ),
  height: Math.ceil(CHECK_BARS_UNDER) + CHECK_BARS_OVER + NOTE_GAP + heightOf(lines),
});

/** The words about printing, over the level check bars. `corner`: lower left, whole mm. */
export function printNote(corner: { x: number; y: number }, lines: readonly NoteLine[]): DrawingItem[] {
  const barY = corner.y + Math.ceil(CHECK_BARS_UNDER);
  return [
    ...checkBars("across", { x: corner.x + BARS_START, y: barY }),
    ...noteLines({ x: corner.x, y: barY + CHECK_BARS_OVER + NOTE_GAP }, lines),
  ];
}

/** Room that the slim level bars and the words over them take, mm. */
export const slimPrintNoteSize = (
  lines: readonly NoteLine[],
): { readonly width: number; readonly height: number } => ({
  width: Math.max(SLIM_BARS.length, ...lines.map((line) => textWidth(line.text, line.height))),
  height: SLIM_BARS.height + heightOf(lines),
});

/** The words about printing, over the slim level bars. `corner`: lower left, whole mm. */
export const slimPrintNote = (
  corner: { x: number; y: number },
  lines: readonly NoteLine[],
): DrawingItem[] => [
  ...slimCheckBars("across", corner),
  ...noteLines({ x: corner.x, y: corner.y + SLIM_BARS.height }, lines),
];

/** Lines one over the other. `foot`: lower left of their room. */
function noteLines(foot: { x: number; y: number }, lines: readonly NoteLine[]): DrawingItem[] {
  let y = foot.y + heightOf(lines);
  return lines.map((line) => {
    y -= line.height * PITCH;
    return lettering(line.text, { x: foot.x, y: y + 0.35 * line.height }, { height: line.height });
  });
}
