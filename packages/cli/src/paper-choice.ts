import type { FileUnits } from "@scantling/geometry/units";
import {
  correctedPaper,
  type PaperChoice,
  type PaperCorrection,
  type PaperSize,
  paperNamed,
  papersFor,
  seriesOf,
  standardPaper,
} from "@scantling/render";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import { type PaperGiven, readPaper, type ShopFile } from "./file/index.js";

/** What is known of the paper at hand; every job is such a source. */
export interface PaperSource {
  /** Units of the sheets; sides without a unit are in those of the shop file, where there is one. */
  readonly units: FileUnits;
  readonly shopPlaces: Pick<ShopFile, "units" | "paper" | "printer"> | undefined;
}

/** The word of `--paper` for a page of the sheet's own size. */
const OWN = "fit";

/** Whether `--paper` asks for a page of the sheet's own size. */
const isOwnPage = (given: string): boolean => given.trim().toLowerCase() === OWN;

/**
 * What sheets are laid out for: the paper of `--paper`, set right for the printer where that was measured on it.
 *
 * @param given - `a4`, `letter`, `300x600`, … or `fit`; undefined where the option is left out.
 * @param otherwise - What that means then: the smallest paper that holds the sheet on one page (SVG), or the shop's own
 *   paper on as many pages as it takes (PDF).
 * @throws {CommandFailure} exit code 2 where it is no paper.
 *
 * @example
 * layOutSheet(contents, paperChoiceOf(job, options.paper, options.format === "pdf" ? "shop-paper" : "smallest"));
 */
export function paperChoiceOf(
  source: PaperSource,
  given: string | undefined,
  otherwise: "smallest" | "shop-paper",
): PaperChoice {
  if (given !== undefined && isOwnPage(given)) return { kind: "own" };
  if (given !== undefined || otherwise === "shop-paper") {
    return { kind: "paper", paper: correctedPaper(plainPaper(source, given, [OWN]), printerOf(source)) };
  }
  const printer = printerOf(source);
  const { name } = plainPaper(source, undefined);
  const series = name === undefined ? source.units : seriesOf(name);
  return { kind: "smallest", papers: papersFor(series).map((paper) => correctedPaper(paper, printer)) };
}

/**
 * The paper that was asked for, else the shop's, else A4, or Letter for sheets in inches; lying or standing as it was
 * given, and as the printer takes it: without a correction.
 *
 * @throws {CommandFailure} exit code 2 where it is no paper.
 */
export function plainPaper(
  { units, shopPlaces }: PaperSource,
  given: string | undefined,
  otherWords: readonly string[] = [],
): PaperSize {
  if (given !== undefined) return paperSizeOf(paperFrom(given, shopPlaces?.units ?? units, otherWords));
  if (shopPlaces?.paper !== undefined) return paperSizeOf(shopPlaces.paper);
  return paperNamed(units === "mm" ? "A4" : "Letter");
}

/** What was measured of the printer, with the sizes of the papers. */
export const printerOf = ({ shopPlaces }: PaperSource): PaperCorrection[] =>
  (shopPlaces?.printer ?? []).map((entry) => ({ ...entry, paper: paperSizeOf(entry.paper) }));

/** A paper with its size, and with its name where it is a standard one. */
export function paperSizeOf(given: PaperGiven): PaperSize {
  if ("name" in given) return paperNamed(given.name);
  return standardPaper(given) ?? given;
}

function paperFrom(given: string, units: FileUnits, otherWords: readonly string[]): PaperGiven {
  const wrong: string[] = [];
  const paper = readPaper(given, units, (_, message) => wrong.push(message), otherWords);
  if (paper !== undefined) return paper;
  throw new CommandFailure(
    EXIT.usage,
    "unknown-paper",
    `--paper: ${wrong.join("; ")}`,
    "Give a paper by its name or its sides: --paper a4, --paper 300x600mm.",
  );
}
