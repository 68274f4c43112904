import type { Vec2 } from "@scantling/geometry";
import { type FileUnits, formatNumber, mmToInches } from "@scantling/geometry/units";
import { type DrawingItem, lettering } from "../../drawing.js";
import { fitText } from "../../fit-text.js";
import { correctionWords, type NoteLine } from "../../lay-out/print-note.js";
import { KEY, LINE_PITCH, SMALL } from "../../lettering-size.js";
import { type PaperSize, paperWord } from "../../paper.js";
import type { CalibrationBars } from "./bars.js";

/** What the level check bars of this sheet stand under: here they are to show what is wrong. */
export function checkNote(paper: PaperSize): NoteLine[] {
  const lines =
    paper.correction === undefined
      ? [{ text: "No correction on this sheet: bars may come out wrong.", height: SMALL }]
      : [
          ...correctionWords(paper),
          { text: "All bars must measure what is written at them.", height: SMALL },
        ];
  return [{ text: "PRINT AT 100 %. NO FIT TO PAGE.", height: KEY }, ...lines];
}

/** What the line that is typed after measuring has in it besides the lengths. */
interface Typed {
  readonly units: FileUnits;
  readonly shop: string | undefined;
}

/** What to do with the sheet, step by step, downward from a point. */
export function stepItems(
  paper: PaperSize,
  bars: CalibrationBars,
  typed: Typed,
  { x, y }: Vec2,
): DrawingItem[] {
  return stepsOf(paper, bars, typed).map(({ text, indent }, index) =>
    lettering(text, { x: x + indent, y: y - (index + 1) * SMALL * LINE_PITCH }, { height: SMALL }),
  );
}

interface StepLine {
  readonly text: string;
  readonly indent: number;
}

const INDENT = 5;

function stepsOf(paper: PaperSize, bars: CalibrationBars, typed: Typed): StepLine[] {
  const { units } = typed;
  const step = (...texts: readonly string[]): StepLine[] =>
    texts.map((text, index) => ({ text, indent: index === 0 ? 0 : INDENT }));
  // Basis: common practice, no source.
  const skew = step(
    `4.  Measure both diagonals. Where they differ by more than ${units === "mm" ? "0.5 mm" : "0.02 in"},`,
    "the print is skewed: see to the paper's guides, no factor mends that.",
  );
  const measure = step(
    "2.  Measure both long bars with a steel rule or a caliper,",
    "from the middle of one cross to the middle of the other.",
  );
  const print = step(`1.  Print on ${paper.name ?? paperWord(paper)} at 100 %, not fitted to the page.`);
  const when =
    paper.correction === undefined
      ? "3.  Type on one line, with the lengths that you read:"
      : "3.  Where a bar is off by more than 0.2 %, type on one line:";
  return [...print, ...measure, ...step(when, ...commandLines(paper, bars, typed)), ...skew];
}

/** Room for the name of a shop file, mm. */
const SHOP_WIDTH = 110;

/** What is typed after measuring, with lengths as they may come out. */
function commandLines(paper: PaperSize, bars: CalibrationBars, { units, shop }: Typed): string[] {
  const reading = (mm: number): string =>
    units === "mm" ? `${formatNumber(mm, 0.1)}mm` : `${formatNumber(mmToInches(mm), 0.001)}in`;
  const corrected = paper.correction === undefined ? "" : " --corrected";
  return [
    `scantling calibrate${corrected} --paper ${paperWord(paper)} --units ${units}`,
    `--short ${reading(bars.shortSide * 0.998)} --long ${reading(bars.longSide * 0.9975)} --force`,
    ...(shop === undefined ? [] : fitText(`--shop ${shop}`, SMALL, SHOP_WIDTH, 1)),
  ];
}
