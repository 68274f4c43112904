import { invariant } from "@scantling/geometry";
import { formatNumber } from "@scantling/geometry/units";
import type { PrintCorrection } from "./drawing.js";
import { mainUnits, type SheetUnits } from "./sheet-units.js";

/** A standard paper in landscape; mm. */
export interface Paper {
  readonly name: PaperName;
  readonly width: number;
  readonly height: number;
}

export type PaperName =
  | "A4"
  | "A3"
  | "A2"
  | "A1"
  | "A0"
  | "Letter"
  | "Legal"
  | "Tabloid"
  | "ANSI C"
  | "ANSI D"
  | "ANSI E";

// ISO 216 (from memory).
const METRIC: readonly Paper[] = [
  { name: "A4", width: 297, height: 210 },
  { name: "A3", width: 420, height: 297 },
  { name: "A2", width: 594, height: 420 },
  { name: "A1", width: 841, height: 594 },
  { name: "A0", width: 1189, height: 841 },
];

// ANSI/ASME Y14.1 (from memory): 11 × 8.5, 17 × 11, 22 × 17, 34 × 22, 44 × 34 in, A and B by their trade names.
const INCH: readonly Paper[] = [
  { name: "Letter", width: 279.4, height: 215.9 },
  { name: "Tabloid", width: 431.8, height: 279.4 },
  { name: "ANSI C", width: 558.8, height: 431.8 },
  { name: "ANSI D", width: 863.6, height: 558.8 },
  { name: "ANSI E", width: 1117.6, height: 863.6 },
];

/**
 * The papers of the series that goes with a unit of length, smallest first: who works in inches has Letter, not A4.
 *
 * @example
 * papersFor("mm")[0]; // { name: "A4", width: 297, height: 210 }
 */
export const papersFor = (units: SheetUnits): readonly Paper[] => (mainUnits(units) === "mm" ? METRIC : INCH);

/** Papers that are named when asked for and never chosen: 14 × 8.5 in (from memory). */
const ON_REQUEST: readonly Paper[] = [{ name: "Legal", width: 355.6, height: 215.9 }];

const PAPERS: readonly Paper[] = [...METRIC, ...INCH, ...ON_REQUEST];

/**
 * The units of the series that a paper belongs to.
 *
 * @example
 * seriesOf("Letter"); // "in"
 */
export const seriesOf = (name: PaperName): "mm" | "in" =>
  METRIC.some((paper) => paper.name === name) ? "mm" : "in";

/**
 * A standard paper, lying.
 *
 * @example
 * paperNamed("A4"); // { name: "A4", width: 297, height: 210 }
 */
export function paperNamed(name: PaperName): Paper {
  const found = PAPERS.find((paper) => paper.name === name);
  invariant(found !== undefined, `${name} is a standard paper`);
  return found;
}

/** Two sizes of a side are one and the same paper within this, mm: less than the 1.5 mm that it may be cut off by (ISO 216, from memory). */
const SAME_SIZE = 0.5;

/**
 * The standard paper of a size, lying or standing, within 0.5 mm; undefined where there is none.
 *
 * @example
 * standardPaper({ width: 210, height: 297 }); // { name: "A4", width: 297, height: 210 }
 */
export function standardPaper(size: Sides): Paper | undefined {
  return PAPERS.find((paper) => samePaper(paper, size));
}

interface Sides {
  readonly width: number;
  readonly height: number;
}

/**
 * The shorter side of a paper and the longer one, mm.
 *
 * @example
 * sidesOf({ width: 297, height: 210 }); // { short: 210, long: 297 }
 */
export const sidesOf = ({ width, height }: Sides): { readonly short: number; readonly long: number } => ({
  short: Math.min(width, height),
  long: Math.max(width, height),
});

/**
 * Whether both are the same paper, however they lie: within 0.5 mm either side.
 *
 * @example
 * samePaper({ width: 297, height: 210 }, { width: 210.3, height: 297 }); // true
 */
export function samePaper(a: Sides, b: Sides): boolean {
  const [first, second] = [sidesOf(a), sidesOf(b)];
  return Math.abs(first.short - second.short) <= SAME_SIZE && Math.abs(first.long - second.long) <= SAME_SIZE;
}

/**
 * A page of paper, in mm of what will be measured on it; without a name where it is of no standard size. With a
 * correction the file's page, which is the paper, is the size times the factors: where a printer prints small, less of
 * the drawing goes on a page.
 */
export interface PaperSize {
  readonly name?: PaperName;
  readonly width: number;
  readonly height: number;
  readonly correction?: PrintCorrection;
}

/** Sides closer than this are those of a square, mm. */
const SQUARE = 1e-6;

/**
 * The page as it is written to a file, mm: the size of the paper itself.
 *
 * @example
 * fileSize({ width: 168, height: 297, correction: { across: 1.25, up: 1 } }); // { width: 210, height: 297 }
 */
export const fileSize = ({ width, height, correction }: PaperSize): Sides => ({
  width: width * (correction?.across ?? 1),
  height: height * (correction?.up ?? 1),
});

/** The same sheet lying and standing. */
export function bothWays(paper: PaperSize): PaperSize[] {
  const turned = turnedPaper(paper);
  const { width, height } = fileSize(paper);
  // Which way a square lies in the printer cannot be told, so a correction of its sides stays where it is.
  if (Math.abs(width - height) < SQUARE) return [paper];
  return width > height ? [paper, turned] : [turned, paper];
}

/**
 * The same sheet standing.
 *
 * @example
 * standingPaper({ width: 297, height: 210 }); // { width: 210, height: 297 }
 */
export const standingPaper = (paper: PaperSize): PaperSize => bothWays(paper).at(-1) ?? paper;

function turnedPaper({ width, height, correction, ...rest }: PaperSize): PaperSize {
  const turned = { ...rest, width: height, height: width };
  return correction === undefined
    ? turned
    : { ...turned, correction: { across: correction.up, up: correction.across } };
}

/**
 * A paper as the command and the shop file write it: its name, or its sides where it has none.
 *
 * @example
 * paperWord({ name: "ANSI C", width: 558.8, height: 431.8 }); // "ansi-c"
 * paperWord({ width: 300, height: 600 }); // "300x600mm"
 */
export function paperWord(paper: PaperSize): string {
  if (paper.name !== undefined) return paper.name.toLowerCase().replaceAll(" ", "-");
  const { short, long } = sidesOf(fileSize(paper));
  return `${formatNumber(short, 0.01)}x${formatNumber(long, 0.01)}mm`;
}
