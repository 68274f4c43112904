// All sheets of a job, through the same way as the command goes: models, contents, pages.
import type { PieceState } from "@scantling/geometry";
import { type Drawing, layOutSheet, type PaperChoice } from "@scantling/render";
import { drawCard } from "../../../packages/cli/src/commands/jobsheet.js";
import { setupOf } from "../../../packages/cli/src/forge-setup.js";
import { nodeIo } from "../../../packages/cli/src/io/node-io.js";
import { loadJob } from "../../../packages/cli/src/load.js";
import { type Measured, measure } from "../../../packages/cli/src/measure.js";
import { paperChoiceOf } from "../../../packages/cli/src/paper-choice.js";
import { type MadeSheet, makeSheets } from "../../../packages/cli/src/sheets/make-sheets.js";
import { SHEET_NAMES } from "../../../packages/cli/src/sheets/sheet-names.js";
import { planBars } from "../../../packages/cli/src/stock-report.js";
import { pageFaults } from "./page-faults.js";

/** Papers that the sheets are laid out for; `fit` is a page of the sheet's own size. */
export const PAPERS = ["a4", "letter", "a3", "fit"] as const;
export type PaperWord = (typeof PAPERS)[number];

/** An example's knife, weighed. */
export async function exampleJob(path: string, units: "mm" | "in"): Promise<Measured> {
  return measure(await loadJob(nodeIo(), path, { units }));
}

/** A sheet's pages, and whether anything on them is measured. */
export interface SheetPages {
  readonly name: string;
  readonly trueSize: boolean;
  readonly pages: readonly Drawing[];
}

/** Every sheet of a job before it is on paper; a pattern of all size states with a line to saw along as one more. */
export async function everySheet(measured: Measured): Promise<readonly MadeSheet[]> {
  const bars = planBars(measured);
  const states: readonly PieceState[] = ["forged", "ready", "finished"];
  const [plain, nested] = await Promise.all([
    makeSheets(measured, SHEET_NAMES, { states: ["finished"], cutOffset: 0 }, bars),
    makeSheets(measured, ["pattern"], { states, cutOffset: 0.8 }, bars),
  ]);
  return [...plain, ...nested];
}

/** What is wrong with sheets on one paper, the bench card among them; and how many pages were looked at. */
export async function setFaults(
  measured: Measured,
  sheets: readonly MadeSheet[],
  paper: PaperWord,
): Promise<{ readonly faults: string[]; readonly pages: number }> {
  const choice = paperChoiceOf(measured.job, paper, "smallest");
  const size = choice.kind === "paper" ? { paper: choice.paper } : {};
  const faults: string[] = [];
  let count = 0;
  const look = (name: string, trueSize: boolean, pages: readonly Drawing[]): void => {
    count += pages.length;
    faults.push(...pageFaults(pages, { ...size, trueSize }).map((fault) => `${name} on ${paper}: ${fault}`));
  };
  for (const sheet of sheets) {
    if ("missing" in sheet) continue;
    const { trueSize } = sheet.contents[0] ?? { trueSize: false };
    look(sheet.name, trueSize, pagesOf(sheet, choice));
  }
  if (choice.kind === "paper") {
    look("jobsheet", false, await drawCard(measured, setupOf(measured, planBars(measured)), paper));
  }
  return { faults, pages: count };
}

function pagesOf(sheet: Extract<MadeSheet, { contents: unknown }>, choice: PaperChoice): readonly Drawing[] {
  return layOutSheet(sheet.contents, choice);
}
