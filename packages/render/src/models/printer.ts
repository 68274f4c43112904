import { type PaperSize, samePaper } from "../paper.js";

/** How far a printer is off on one paper. */
export interface PaperCorrection {
  /** The paper, lying or standing, mm. */
  readonly paper: { readonly width: number; readonly height: number };
  /** By how much more than true size a page is written along each side of the paper: what a bar should measure over what it does. */
  readonly shortSide: number;
  readonly longSide: number;
}

/**
 * The same paper for a printer whose errors are known, lying or standing as it was; as it is where the printer was not
 * measured on it. Paper is the same within 0.5 mm. A square lies so that its width is its short side.
 *
 * @param paper - without a correction.
 * @returns a page of what will be measured on it: the paper's own size divided by the factors.
 *
 * @example
 * const a4 = { name: "A4" as const, width: 297, height: 210 };
 * correctedPaper(a4, [{ paper: a4, shortSide: 1.25, longSide: 1 }]);
 * // { name: "A4", width: 297, height: 168, correction: { across: 1, up: 1.25 } }
 */
export function correctedPaper(paper: PaperSize, printer: readonly PaperCorrection[]): PaperSize {
  const found = printer.find((entry) => samePaper(entry.paper, paper));
  if (found === undefined) return paper;
  const { shortSide, longSide } = found;
  const standing = paper.width <= paper.height;
  const across = standing ? shortSide : longSide;
  const up = standing ? longSide : shortSide;
  return { ...paper, width: paper.width / across, height: paper.height / up, correction: { across, up } };
}

/** What a measured bar says of a printer along one side of the paper. */
export interface BarReading {
  /** What the bar should measure and what it does, mm. */
  readonly bar: number;
  readonly measured: number;
  /** Measured over nominal: 0.98 where the printer prints 2 % small. */
  readonly scale: number;
  /** Nominal over measured, to 10⁻⁵: what a page is written larger by. */
  readonly factor: number;
  /** Whether the print is as true as a bar can be read. */
  readonly inOrder: boolean;
}

/** A print from 99.8 to 100.2 % of true size is in order. Basis: common practice, no source. */
const IN_ORDER = 0.002;
/** A printer is hardly ever farther off by itself: a print dialog is that scales the page. Basis: common practice, no source. */
const SCALED_BY_DIALOG = 0.03;
/** The factors that are accepted: beyond, it is a wrong bar, a wrong unit or a scaled page. */
export const LEAST_FACTOR = 0.9;
export const GREATEST_FACTOR = 1.1;

/** Rounding of measured over nominal must not decide a bar that measures exactly 99.8 %. */
const ROUNDING = 1e-9;

/**
 * Reads a bar of the check sheet.
 *
 * @param bar - what it should measure, mm, more than 0.
 * @param measured - what it does, mm, more than 0.
 *
 * @example
 * readBar(180, 179.6).factor; // 1.00223
 */
export function readBar(bar: number, measured: number): BarReading {
  const scale = measured / bar;
  return {
    bar,
    measured,
    scale,
    factor: Math.round((bar / measured) * 1e5) / 1e5,
    inOrder: Math.abs(scale - 1) <= IN_ORDER + ROUNDING,
  };
}

/**
 * Whether a print dialog most likely scaled the page: more than 3 % off.
 *
 * @example
 * looksScaled(readBar(100, 96)); // true
 */
export const looksScaled = ({ scale }: BarReading): boolean => Math.abs(scale - 1) > SCALED_BY_DIALOG;

/**
 * Whether a factor can be that of a printer: from 0.9 to 1.1.
 *
 * @example
 * isFactor(1.0022); // true
 */
export const isFactor = (factor: number): boolean => factor >= LEAST_FACTOR && factor <= GREATEST_FACTOR;
