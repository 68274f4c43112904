import { join, resolve } from "node:path";
import { writeOutput } from "../deliver.js";
import { drawPattern } from "../draw-pattern.js";
import type { ExitCode } from "../exit-code.js";
import { setupOf } from "../forge-setup.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { measure } from "../measure.js";
import type { CommonOptions } from "../options.js";
import { showPath } from "../read-input.js";
import { checkJson } from "../report/check-json.js";
import { jsonText, reportText } from "../report/documents.js";
import { headingLines } from "../report/heading.js";
import { patternJson } from "../report/pattern-json.js";
import { planJson } from "../report/plan-json.js";
import { planSummary } from "../report/plan-summary.js";
import { setupJson } from "../report/setup-json.js";
import { setupText } from "../report/setup-text.js";
import { stockJson } from "../report/stock-json.js";
import { weighJson } from "../report/weigh-json.js";
import { allFindings, planBars } from "../stock-report.js";
import { exitCodeOf, verdictOf } from "../verdict.js";

/**
 * `scantling plan FILE`, the main job: weight, bars, forge card, checks and the true-size pattern into one folder (`NAME-plan`
 * unless `--out` names another), and the summary on standard output. The files are written even where an ask is not
 * met, for they show why.
 */
export async function plan(io: Io, file: string, options: CommonOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  const bars = planBars(measured);
  const findings = allFindings(measured, bars);
  const verdict = verdictOf(measured.answers, findings);
  const sheet = await drawPattern(measured);
  const card = setupOf(measured, bars);

  const folder = options.out ?? `${measured.job.name}-plan`;
  const pathOf = (name: string): string => showPath(io, join(resolve(io.cwd, folder), name));
  const names = [
    sheet.name,
    "setup.txt",
    "summary.txt",
    "weigh.json",
    "stock.json",
    "check.json",
    "setup.json",
  ];
  const drawing = pathOf(sheet.name);
  const summary = reportText(
    planSummary({ measured, bars, findings, sheet, drawing, files: names.map(pathOf) }),
  );
  const documents = {
    weigh: weighJson(measured),
    stock: stockJson(bars, measured.job),
    check: checkJson(measured.answers, findings, verdict, measured.job),
    setup: setupJson(card, measured.job),
  };
  const files = await writeOutput(
    io,
    folder,
    [
      sheet,
      {
        name: "setup.txt",
        content: reportText([...headingLines(measured), "", ...setupText(card, bars, measured.job)]),
      },
      { name: "summary.txt", content: summary },
      { name: "weigh.json", content: jsonText(documents.weigh) },
      { name: "stock.json", content: jsonText(documents.stock) },
      { name: "check.json", content: jsonText(documents.check) },
      { name: "setup.json", content: jsonText(documents.setup) },
    ],
    options,
  );
  const pattern = patternJson(sheet, drawing);
  io.stdout.write(options.json ? jsonText(planJson({ ...documents, pattern, files })) : summary);
  return exitCodeOf(verdict);
}
