import type { Bounds, Vec2 } from "@scantling/geometry";
import { type FileUnits, formatNumber, inchesToMm, mmToInches } from "@scantling/geometry/units";
import { type DrawingItem, lettering, polyline, rectangle, strokes } from "../../drawing.js";
import { CONTENT_MARGIN } from "../../lay-out/arrange.js";
import { KEY } from "../../lettering-size.js";
import { type PaperSize, standingPaper } from "../../paper.js";
import { textWidth } from "../../text-metrics.js";

/** How far the lines of a cross reach from its middle, mm. */
export const CROSS = 3;

/** What the two long bars of the check sheet should measure, mm. */
export interface CalibrationBars {
  readonly shortSide: number;
  readonly longSide: number;
}

/**
 * The bars of the check sheet for a paper: as long as fits along each side, in whole tens of mm, or in whole inches.
 *
 * @param paper - lying or standing; of one that is corrected less goes on a page, and the bars may be shorter.
 *
 * @example
 * calibrationBars({ width: 297, height: 210 }, "mm"); // { shortSide: 180, longSide: 270 }
 */
export function calibrationBars(paper: PaperSize, units: FileUnits): CalibrationBars {
  const { width, height } = standingPaper(paper);
  const step = units === "mm" ? 10 : inchesToMm(1);
  const fit = (side: number): number =>
    Math.floor((Math.floor(side) - 2 * (CONTENT_MARGIN + CROSS)) / step) * step;
  return { shortSide: fit(width), longSide: fit(height) };
}

/** A length on this sheet: `180 mm`, `7 in`. */
export const shownLength = (mm: number, units: FileUnits): string =>
  units === "mm" ? `${formatNumber(mm, 0.1)} mm` : `${formatNumber(mmToInches(mm), 0.001)} in`;

/** A cross as fine as the pen, to set a rule or a caliper on. */
export const cross = ({ x, y }: Vec2): (readonly [Vec2, Vec2])[] => [
  [
    { x: x - CROSS, y },
    { x: x + CROSS, y },
  ],
  [
    { x, y: y - CROSS },
    { x, y: y + CROSS },
  ],
];

/**
 * The two bars in a right angle, from the corner where they meet: one across to the right, one down. The paths
 * `bar-short` and `bar-long` end in the middle of their crosses.
 */
export function barItems({ shortSide, longSide }: CalibrationBars, units: FileUnits): DrawingItem[] {
  const corner: Vec2 = { x: 0, y: 0 };
  const right: Vec2 = { x: shortSide, y: 0 };
  const foot: Vec2 = { x: 0, y: -longSide };
  return [
    { kind: "path", role: "check", paths: [polyline([corner, right])], name: "bar-short" },
    { kind: "path", role: "check", paths: [polyline([corner, foot])], name: "bar-long" },
    strokes("check", [corner, right, foot].flatMap(cross)),
    ...readingItems(shortSide, units, "across"),
    ...readingItems(longSide, units, "up"),
  ];
}

/** The paper that the bars and their crosses take: lines by themselves have no width. */
export const barBoxes = ({ shortSide, longSide }: CalibrationBars): Bounds[] => [
  { minX: -CROSS, minY: -CROSS, maxX: shortSide + CROSS, maxY: CROSS },
  { minX: -CROSS, minY: -longSide - CROSS, maxX: CROSS, maxY: CROSS },
];

/** The box to write a reading in, mm, and what stands about it. */
const BOX = { width: 30, height: 9 } as const;
const FROM_BAR = 4;
const BETWEEN = 2;
/** From the end of the bar to the words, mm. */
const INDENT = 18;

/** Where there is room inside the angle, from its corner; mm. */
export const INSIDE_BARS: Vec2 = { x: INDENT, y: -(FROM_BAR + BOX.height + FROM_BAR) };

/** What a bar should measure and a box for what it does, inside the angle. */
function readingItems(bar: number, units: FileUnits, direction: "across" | "up"): DrawingItem[] {
  const side = direction === "across" ? "short side (across)" : "long side (up)";
  const words = `${side}: ${shownLength(bar, units)} bar measures`;
  const width = textWidth(words, KEY);
  // Along the bar from its lower or left end, and inward from it.
  const place = (along: number, inward: number): Vec2 =>
    direction === "across" ? { x: along, y: -inward } : { x: inward, y: along - bar };
  const rotation = direction === "across" ? 0 : Math.PI / 2;
  const base = FROM_BAR + BOX.height / 2 + KEY / 2;
  const boxStart = INDENT + width + BETWEEN;
  const text = (along: number, content: string): DrawingItem =>
    lettering(content, place(along, base), { height: KEY, rotation });
  return [
    text(INDENT, words),
    rectangle("thin", place(boxStart, FROM_BAR), place(boxStart + BOX.width, FROM_BAR + BOX.height)),
    text(boxStart + BOX.width + BETWEEN, units),
  ];
}
