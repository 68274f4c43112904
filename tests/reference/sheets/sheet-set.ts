// All sheets of a job, through the same way as the command goes: models, contents, pages.
import type { PieceState } from "@scantling/geometry";
import { type Drawing, layOutSheet } from "@scantling/render";
import { drawCard } from "../../../packages/cli/src/commands/jobsheet.js";
import { setupOf } from "../../../packages/cli/src/forge-setup.js";
import { nodeIo } from "../../../packages/cli/src/io/node-io.js";
import { type Job, loadJob } from "../../../packages/cli/src/load.js";
import type { Measured } from "../../../packages/cli/src/measure.js";
import { paperChoiceOf } from "../../../packages/cli/src/paper-choice.js";
import type { Setup } from "../../../packages/cli/src/report/setup-json.js";
import { type MadeSheet, makeSheets } from "../../../packages/cli/src/sheets/make-sheets.js";
import { SHEET_NAMES } from "../../../packages/cli/src/sheets/sheet-names.js";
import { planBars } from "../../../packages/cli/src/stock-report.js";
import { pageFaults, shortenedWords } from "./page-faults.js";

/** A paper by its word, `fit` for a page of the sheet's own size. */
export type PaperWord = "a4" | "letter" | "a3" | "fit";

const io = nodeIo();

/** A knife file of the repository with its shop. */
export const jobOf = (path: string, units?: "mm" | "in"): Promise<Job> =>
  loadJob(io, path, units === undefined ? {} : { units });

/** Every sheet of a job before it is on paper, and what the bench card is made of. */
export interface SheetSet {
  readonly measured: Measured;
  readonly sheets: readonly MadeSheet[];
  readonly setup: Setup;
}

/** Every sheet of a job; a pattern of all size states with a line to saw along as one more. */
export async function sheetSet(measured: Measured): Promise<SheetSet> {
  const bars = planBars(measured);
  const states: readonly PieceState[] = ["forged", "ready", "finished"];
  const plain = await makeSheets(measured, SHEET_NAMES, { states: ["finished"], cutOffset: 0 }, bars);
  const nested = await makeSheets(measured, ["pattern"], { states, cutOffset: 0.8 }, bars);
  return { measured, sheets: [...plain, ...nested], setup: setupOf(measured, bars) };
}

/** The sheets that the set has, by name. */
export const namesOf = ({ sheets }: SheetSet): string[] =>
  sheets.flatMap((sheet) => ("contents" in sheet ? [sheet.name] : []));

/**
 * What is wrong with the sheets on a paper, the bench card among them.
 *
 * @param options - `whole`: words that are cut off are a fault too; those of an order may be as long as its writer likes.
 */
export async function setFaults(
  { measured, sheets, setup }: SheetSet,
  paper: PaperWord,
  { whole = false }: { readonly whole?: boolean } = {},
): Promise<string[]> {
  const choice = paperChoiceOf(measured.job, paper, "smallest");
  const size = choice.kind === "paper" ? { paper: choice.paper } : {};
  const faultsOf = (name: string, trueSize: boolean, pages: readonly Drawing[]): string[] =>
    [...pageFaults(pages, { ...size, trueSize }), ...(whole ? shortenedWords(pages) : [])].map(
      (fault) => `${name} on ${paper}: ${fault}`,
    );
  const faults = sheets.flatMap((sheet) => {
    if ("missing" in sheet) return [];
    const trueSize = sheet.contents.some((content) => content.trueSize);
    return faultsOf(sheet.name, trueSize, layOutSheet(sheet.contents, choice));
  });
  // A bench card has no size of its own.
  if (choice.kind !== "paper") return faults;
  return [...faults, ...faultsOf("jobsheet", false, await drawCard(measured, setup, paper))];
}
