import { orderConflicts } from "../conflict/order-conflicts.js";
import { deliverReport } from "../deliver.js";
import type { ExitCode } from "../exit-code.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { measure } from "../measure.js";
import type { CommonOptions } from "../options.js";
import { checkJson } from "../report/check-json.js";
import { checkText } from "../report/check-text.js";
import { jsonText, reportText } from "../report/documents.js";
import { headingLines } from "../report/heading.js";
import { allFindings, planBars } from "../stock-report.js";
import { exitCodeOf, verdictOf } from "../verdict.js";

/** `scantling check FILE`: what was asked, one by one, and every warning with the number behind it. */
export async function check(io: Io, file: string, options: CommonOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  const { answers } = measured;
  const conflicts = orderConflicts(measured);
  const findings = allFindings(measured, planBars(measured), conflicts);
  const verdict = verdictOf(answers, findings);
  const report = options.json
    ? { name: "check.json", content: jsonText(checkJson(measured, findings, verdict, conflicts)) }
    : {
        name: "check.txt",
        content: reportText([...headingLines(measured), "", ...checkText(measured, findings, conflicts)]),
      };
  await deliverReport(io, report, options);
  return exitCodeOf(verdict);
}
