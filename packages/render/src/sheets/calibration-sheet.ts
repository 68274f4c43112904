import { GeometryError } from "@scantling/geometry";
import { type FileUnits, formatNumber } from "@scantling/geometry/units";
import type { Drawing } from "../drawing.js";
import { onPage } from "../lay-out/one-page.js";
import { noteAndLevelBars, uprightBars } from "../lay-out/part.js";
import { type SheetContent, viewOf } from "../lay-out/sheet-content.js";
import { type PaperSize, standingPaper } from "../paper.js";
import { barBoxes, barItems, calibrationBars, INSIDE_BARS, shownLength } from "./calibration/bars.js";
import { diagonalParts } from "./calibration/diagonals.js";
import { checkNote, stepItems } from "./calibration/words.js";
import { pageWords, printWords } from "./words.js";

export { type CalibrationBars, calibrationBars } from "./calibration/bars.js";

/**
 * The sheet that a printer is checked with: one page of the paper, standing, with a long bar along either side of it
 * (paths `bar-short` and `bar-long`), boxes for what they measure, the usual check bars, and a rectangle whose diagonals
 * tell whether the print is square.
 *
 * @param paper - Lying or standing; with a correction the sheet proves that, and says so, else it shows the printer as it is.
 * @param units - Of the bars and of the words.
 * @param shop - The shop file as it has to be named in what is typed; left out: the command finds it.
 * @throws {GeometryError} `sheet-too-large` where the paper has no room for it.
 *
 * @example
 * const svg = await toSvg(calibrationSheet(paperNamed("A4"), "mm"));
 */
export function calibrationSheet(paper: PaperSize, units: FileUnits, shop?: string): Drawing {
  const drawing = onPage(calibrationContents(paper, units, shop), standingPaper(paper));
  if (drawing !== undefined) return drawing;
  const side = (mm: number): string => formatNumber(mm, 0.1);
  throw new GeometryError(
    "sheet-too-large",
    `the print check does not fit on paper of ${side(paper.width)} × ${side(paper.height)} mm`,
  );
}

/** The same sheet with the largest diagonals first, then smaller ones, then none. */
function calibrationContents(paper: PaperSize, units: FileUnits, shop: string | undefined): SheetContent[] {
  const bars = calibrationBars(paper, units);
  const corrected = paper.correction !== undefined;
  const view = viewOf(
    [
      { kind: "group", name: "bars", items: barItems(bars, units) },
      { kind: "group", name: "steps", items: stepItems(paper, bars, { units, shop }, INSIDE_BARS) },
    ],
    { solid: barBoxes(bars) },
  );
  const needed = [uprightBars, noteAndLevelBars([], checkNote(paper))];
  const sides = `${shownLength(bars.shortSide, units)} along the short side, ${shownLength(bars.longSide, units)} along the long side`;
  return [...diagonalParts(units).map((part) => [part]), []].map((diagonals) => ({
    name: "calibrate",
    // Its words about printing are its own: here bars that come out wrong are what is looked for.
    trueSize: false,
    title: corrected ? "Print check, corrected" : "Print check",
    describe: (page) =>
      `Two bars in a right angle, ${sides} of the paper; check bars of 100 mm and 4 in, across and up. ${printWords(page.paper)}, then measure.`,
    fields: (page) => [
      [
        { label: "Sheet", value: "Print check", share: 0.5 },
        { label: "Correction", value: corrected ? "As stored" : "None", share: 0.5 },
      ],
      [
        { label: "Units", value: units, share: 0.29 },
        { label: "Drawn", value: "1 : 1", share: 0.13 },
        { label: "Paper", value: pageWords(page), share: 0.58 },
      ],
    ],
    view,
    parts: [...needed, ...diagonals],
  }));
}
