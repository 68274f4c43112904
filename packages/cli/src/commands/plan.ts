import { join, resolve } from "node:path";
import { invariant } from "@scantling/geometry";
import type { Drawing } from "@scantling/render";
import { setupSheet } from "../card/setup-sheet.js";
import { orderConflicts } from "../conflict/order-conflicts.js";
import { writeOutput } from "../deliver.js";
import type { ExitCode } from "../exit-code.js";
import { setupOf } from "../forge-setup.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { type Measured, measure } from "../measure.js";
import { STATE_WORDS } from "../models/pattern-model.js";
import type { CommonOptions } from "../options.js";
import { showPath } from "../read-input.js";
import { checkJson } from "../report/check-json.js";
import { jsonText, reportText } from "../report/documents.js";
import { patternJson } from "../report/pattern-json.js";
import { planJson } from "../report/plan-json.js";
import { planSummary } from "../report/plan-summary.js";
import { type Setup, setupJson } from "../report/setup-json.js";
import { stockJson } from "../report/stock-json.js";
import { weighJson } from "../report/weigh-json.js";
import { type DrawnSheets, drawSheets } from "../sheets/draw-sheets.js";
import { SHEET_NAMES } from "../sheets/sheet-names.js";
import { type DrawingFile, drawingFiles } from "../sheets/write-drawings.js";
import { allFindings, type Bars, planBars } from "../stock-report.js";
import { exitCodeOf, verdictOf } from "../verdict.js";
import { cardFile, drawCard } from "./jobsheet.js";
import { allSheets, tellMissing } from "./pattern.js";

/**
 * `scantling plan FILE`, the main job: weight, bars, forge card, checks and the true-size pattern into one folder (`NAME-plan`
 * unless `--out` names another), and the summary on standard output. The files are written even where an ask is not
 * met, for they show why.
 */
export async function plan(io: Io, file: string, options: CommonOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  const bars = planBars(measured);
  const conflicts = orderConflicts(measured);
  const findings = allFindings(measured, bars, conflicts);
  const verdict = verdictOf(measured.answers, findings);
  const card = setupOf(measured, bars);
  const drawings = await drawAll(measured, bars, card);

  const folder = options.out ?? `${measured.job.name}-plan`;
  const pathOf = (name: string): string => showPath(io, join(resolve(io.cwd, folder), name));
  const names = [
    ...drawings.files.map((file) => file.name),
    "setup.txt",
    "summary.txt",
    "weigh.json",
    "stock.json",
    "check.json",
    "setup.json",
  ];
  const [drawing = "", sheets = "", jobsheet = ""] = names.map(pathOf);
  const { page: sheet } = drawings;
  const summary = reportText(
    planSummary({
      measured,
      bars,
      findings,
      sheet,
      drawing,
      sheets,
      card: jobsheet,
      files: names.map(pathOf),
    }),
  );
  const documents = {
    weigh: weighJson(measured),
    stock: stockJson(bars, measured.job),
    check: checkJson(measured, findings, verdict, conflicts),
    setup: setupJson(card, measured.job),
  };
  const files = await writeOutput(
    io,
    folder,
    [
      ...drawings.files,
      {
        name: "setup.txt",
        content: reportText(setupSheet(measured, card, bars)),
      },
      { name: "summary.txt", content: summary },
      { name: "weigh.json", content: jsonText(documents.weigh) },
      { name: "stock.json", content: jsonText(documents.stock) },
      { name: "check.json", content: jsonText(documents.check) },
      { name: "setup.json", content: jsonText(documents.setup) },
    ],
    options,
  );
  const pattern = patternJson(
    [{ sheet: "pattern", drawing: sheet, format: "svg", file: drawing }],
    [STATE_WORDS.finished],
    drawings.missing,
  );
  tellMissing(io, drawings.missing);
  io.stdout.write(options.json ? jsonText(planJson({ ...documents, pattern, files })) : summary);
  return exitCodeOf(verdict);
}

/** The pattern as it is traced, every sheet for the shop's printer, and the bench card. */
async function drawAll(
  measured: Measured,
  bars: Bars,
  setup: Setup,
): Promise<{ files: DrawingFile[]; page: Drawing; missing: DrawnSheets["missing"] }> {
  const { name } = measured.job;
  const wishes = { states: ["finished"], cutOffset: 0 } as const;
  const { drawn } = await drawSheets(measured, { ...wishes, sheets: ["pattern"], format: "svg" }, bars);
  const pages = drawn.flatMap((sheet) => sheet.pages);
  const [page] = pages;
  invariant(page !== undefined, "every knife has a pattern");
  const all = await drawSheets(measured, { ...wishes, sheets: SHEET_NAMES, format: "pdf" }, bars);
  const card = await drawCard(measured, setup);
  const sheets = allSheets(measured.job);
  const files = await Promise.all([
    drawingFiles([{ name: `${name}.pattern`, pages: [page] }], "svg", sheets),
    drawingFiles(
      all.drawn.map((sheet) => ({ name: sheet.suffix, pages: sheet.pages })),
      "pdf",
      sheets,
    ),
    drawingFiles([cardFile(measured.job, card)], "pdf", sheets),
  ]);
  return { files: files.flat(), page, missing: all.missing };
}
