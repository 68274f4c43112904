import { describeQuantityError, type FileUnits, parseQuantity } from "@scantling/geometry/units";
import {
  type BarReading,
  calibrationBars,
  correctedPaper,
  GREATEST_FACTOR,
  isFactor,
  LEAST_FACTOR,
  looksScaled,
  type PaperCorrection,
  type PaperSize,
  paperWord,
  readBar,
  samePaper,
} from "@scantling/render";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import type { PrinterLine } from "./file/edit-yaml.js";
import { showText } from "./file/index.js";
import type { CalibrateOptions } from "./options.js";
import { type PaperSource, printerOf } from "./paper-choice.js";

/** What the two bars say of the printer. */
export interface Calibration {
  readonly paper: PaperSize;
  readonly units: FileUnits;
  readonly short: BarReading;
  readonly long: BarReading;
  /** Whether the sheet that was measured had been printed with the stored correction. */
  readonly corrected: boolean;
  /** The shop file as it was named, where it was. */
  readonly shop?: string;
  /** Whether a correction is stored for this paper. */
  readonly stored: boolean;
  /** What is stored from now on, unless both bars are in order. */
  readonly line: PrinterLine;
  /** Whether it is so far off that a print dialog most likely scaled the page. */
  readonly scaled: boolean;
}

export const isInOrder = ({ short, long }: Calibration): boolean => short.inOrder && long.inOrder;

/**
 * Reads the two lengths of the command line against the bars of the sheet that they were measured on.
 *
 * @param paper - The paper of the sheet, without a correction.
 * @returns undefined where no lengths were given: then the sheet is drawn.
 * @throws {CommandFailure} exit code 2 with what cannot be.
 */
export function readCalibration(
  options: CalibrateOptions,
  source: PaperSource,
  paper: PaperSize,
): Calibration | undefined {
  const { units } = source;
  if (options.short === undefined && options.long === undefined) return undefined;
  const printed = sheetPaper(options, source, paper);
  const [short, long] = [
    readLength("short", options.short, source),
    readLength("long", options.long, source),
  ];
  const read = (of: FileUnits): readonly [BarReading, BarReading] => {
    const bars = calibrationBars(printed, of);
    return [readBar(bars.shortSide, short), readBar(bars.longSide, long)];
  };
  const readings = read(units);
  const other = units === "mm" ? "in" : "mm";
  const worst = (bars: readonly BarReading[]): number =>
    Math.max(...bars.map(({ scale }) => Math.abs(scale - 1)));
  if (!readings.every(({ inOrder }) => inOrder) && worst(read(other)) < worst(readings) / 2) {
    throw wrong(
      "other-units",
      `these are the lengths of the sheet that is drawn in ${other === "mm" ? "mm" : "inches"}`,
      `Add --units ${other}.`,
    );
  }
  const stored = storedFor(source, paper);
  // What was measured on a corrected sheet comes on top of the correction that it was printed with.
  const before = options.corrected === true ? stored : undefined;
  const line = {
    paper: paperWord(paper),
    shortSide: factorOf("short", readings[0], before?.shortSide ?? 1, readings),
    longSide: factorOf("long", readings[1], before?.longSide ?? 1, readings),
  };
  return {
    paper,
    units,
    short: readings[0],
    long: readings[1],
    corrected: options.corrected === true,
    ...(options.shop === undefined ? {} : { shop: options.shop }),
    stored: stored !== undefined,
    line,
    scaled: readings.some(looksScaled),
  };
}

/**
 * The paper as the sheet is drawn on it: as the printer takes it, or with `--corrected` set right for the printer.
 *
 * @throws {CommandFailure} exit code 2 where nothing is stored to set it right by.
 */
export function sheetPaper(options: CalibrateOptions, source: PaperSource, paper: PaperSize): PaperSize {
  if (options.corrected !== true) return paper;
  const corrected = correctedPaper(paper, printerOf(source));
  if (corrected.correction !== undefined) return corrected;
  throw wrong(
    "no-correction",
    `no correction for ${nameOf(paper)} is stored in ${options.shop ?? "the shop file that was found"}`,
    "Print the sheet without --corrected first, and measure it.",
  );
}

/** A paper in a sentence: `A4`, `300x600mm`. */
export const nameOf = (paper: PaperSize): string => paper.name ?? paperWord(paper);

/** What is stored for a paper. */
const storedFor = (source: PaperSource, paper: PaperSize): PaperCorrection | undefined =>
  printerOf(source).find((entry) => samePaper(entry.paper, paper));

type Side = "short" | "long";

/**
 * What a bar measures, mm.
 *
 * @throws {CommandFailure} exit code 2 where it is left out or is no length.
 */
export function readLength(side: Side, text: string | undefined, { units, shopPlaces }: PaperSource): number {
  const todo = "Write it like --short 179.6mm --long 269.3mm.";
  if (text === undefined)
    throw wrong(
      "length-missing",
      `--${side} is missing: one length alone says nothing of the other side`,
      todo,
    );
  const parsed = parseQuantity(text, "length", shopPlaces?.units ?? units);
  if (!parsed.ok)
    throw wrong("unreadable", `--${side} "${showText(text)}": ${describeQuantityError(parsed.error)}`, todo);
  const { value, plus, minus } = parsed.quantity;
  if (plus > 0 || minus > 0) throw wrong("tolerance-not-taken", `--${side} takes no tolerance`, todo);
  if (!(value > 0))
    throw wrong("not-positive", `--${side} "${showText(text)}" has to be more than nothing`, todo);
  return value;
}

/** Digits of a factor that are kept: 10⁻⁵ of a bar is far less than can be read. */
const FACTOR_STEPS = 1e5;

function factorOf(
  side: Side,
  { bar, measured }: BarReading,
  before: number,
  [short, long]: readonly [BarReading, BarReading],
): number {
  const factor = Math.round(((before * bar) / measured) * FACTOR_STEPS) / FACTOR_STEPS;
  if (isFactor(factor)) return factor;
  const swapped = isFactor(short.bar / long.measured) && isFactor(long.bar / short.measured);
  const share = Math.round((measured / bar) * 1000) / 10;
  throw wrong(
    "out-of-range",
    `--${side}: the bar came out at ${share} % of its length; a printer alone is between ${Math.round(100 / GREATEST_FACTOR)} and ${Math.round(100 / LEAST_FACTOR)} %`,
    swapped
      ? "It looks as if --short and --long were swapped."
      : "See to the print dialog (100 %, no fit to page), the unit, and which paper and bar it was; then measure again.",
  );
}

const wrong = (code: string, message: string, todo: string): CommandFailure =>
  new CommandFailure(EXIT.usage, code, message, todo);
