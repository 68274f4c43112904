import { invariant } from "@scantling/geometry";
import type { PrintCorrection } from "./drawing.js";

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
export const papersFor = (units: "mm" | "in"): readonly Paper[] => (units === "mm" ? METRIC : INCH);

/** Every standard paper, by its name. */
const PAPERS: readonly Paper[] = [...METRIC, ...INCH];

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

/**
 * A sheet of paper as it lies in the printer, in mm of what will be measured on it; without a name where it is of no
 * standard size. On a printer that prints small, what a page holds is a little more than its size.
 */
export interface PaperSize {
  readonly name?: PaperName;
  readonly width: number;
  readonly height: number;
  readonly correction?: PrintCorrection;
}

/** The same sheet lying and standing. */
export function bothWays(paper: PaperSize): PaperSize[] {
  const turned = turnedPaper(paper);
  if (paper.width === paper.height) return [paper];
  return paper.width > paper.height ? [paper, turned] : [turned, paper];
}

function turnedPaper({ width, height, correction, ...rest }: PaperSize): PaperSize {
  const turned = { ...rest, width: height, height: width };
  return correction === undefined
    ? turned
    : { ...turned, correction: { across: correction.up, up: correction.across } };
}
