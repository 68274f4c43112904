import type { Drawing, TileOptions } from "@scantling/render";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import type { Measured } from "../measure.js";
import { paperChoiceOf } from "../paper-choice.js";
import type { Bars } from "../stock-report.js";
import { makeSheets, type SheetWishes } from "./make-sheets.js";
import { inPaperTerms } from "./paper-terms.js";
import type { SheetName } from "./sheet-names.js";
import type { DrawingFormat } from "./write-drawings.js";

/** What is drawn, and on what. */
export interface DrawWishes extends SheetWishes {
  readonly sheets: readonly SheetName[];
  readonly format: DrawingFormat;
  readonly paper?: string;
  readonly tiling?: TileOptions;
}

/** The pages of one sheet. */
export interface DrawnSheet {
  readonly sheet: SheetName;
  /** `pattern`, `pattern-forged`: how its files are called behind the job's name. */
  readonly suffix: string;
  readonly pages: readonly Drawing[];
}

/** What was drawn, and which sheets there are none of, with the reason. */
export interface DrawnSheets {
  readonly drawn: readonly DrawnSheet[];
  readonly missing: readonly { readonly sheet: SheetName; readonly reason: string }[];
}

/**
 * Draws sheets on paper: a DXF on a page of its own, an SVG on the smallest paper that holds it, a PDF on the shop's
 * paper, unless a paper is asked for.
 *
 * @param bars - The planned bars where they are known already.
 * @throws {CommandFailure} exit code 2 where a sheet cannot be put on that paper.
 */
export async function drawSheets(measured: Measured, wishes: DrawWishes, bars?: Bars): Promise<DrawnSheets> {
  const made = await makeSheets(measured, wishes.sheets, wishes, bars);
  const { layOutSheet } = await import("@scantling/render");
  const paper = wishes.format === "dxf" ? "fit" : wishes.paper;
  const choice = paperChoiceOf(measured.job, paper, wishes.format === "pdf" ? "shop-paper" : "smallest");
  const drawn: DrawnSheet[] = [];
  const missing: DrawnSheets["missing"][number][] = [];
  for (const sheet of made) {
    if ("missing" in sheet) {
      missing.push({ sheet: sheet.name, reason: sheet.missing });
      continue;
    }
    const pages = inPaperTerms(() => layOutSheet(sheet.contents, choice, wishes.tiling), whatToDo);
    if (wishes.format === "pdf") refuseLongPages(pages);
    drawn.push({ sheet: sheet.name, suffix: suffixOf(sheet.name, wishes), pages });
  }
  return { drawn, missing };
}

/** A pattern of other states than the finished one, or with a line beside its outline, says so in its name. */
function suffixOf(name: SheetName, { states, cutOffset }: SheetWishes): string {
  const ofStates = name === "pattern" || name === "mirrored";
  const others = states.filter((state) => states.length > 1 || state !== "finished");
  return ofStates ? [name, ...others, ...(cutOffset === 0 ? [] : ["offset"])].join("-") : name;
}

/** The longest side of a page that PDF readers take: 14 400 points of 1/72 in, 5080 mm (from memory). */
const LONGEST_PDF_SIDE = 5080;

function refuseLongPages(pages: readonly Drawing[]): void {
  const longest = Math.max(...pages.map(({ width, height }) => Math.max(width, height)));
  if (longest <= LONGEST_PDF_SIDE) return;
  throw new CommandFailure(
    EXIT.usage,
    "page-too-long",
    `this sheet's own page would be ${Math.ceil(longest)} mm long, and a PDF page is ${LONGEST_PDF_SIDE} mm at the most`,
    "Leave out --paper fit, so that the sheet is cut into pages, or take --format svg.",
  );
}

const whatToDo = (code: string): string =>
  code === "tile-limits"
    ? "Give --margin and --overlap within these limits, or leave them out."
    : "Give a larger paper, such as --paper a3, or --paper fit for a page of the sheet's own size.";
