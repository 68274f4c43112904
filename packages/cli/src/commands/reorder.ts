import { deliverReport } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import type { Planned } from "../file/record-file.js";
import type { Io } from "../io/io.js";
import { type Job, loadJob } from "../load.js";
import { measure } from "../measure.js";
import type { ReorderOptions } from "../options.js";
import { findRecord } from "../record/find-record.js";
import { jobOfTexts, textsOf, tryMeasured } from "../record/job-then.js";
import { type JobTexts, plannedOf } from "../record/planned.js";
import { reorder as compare } from "../record/reorder.js";
import { jsonText, reportText } from "../report/documents.js";
import { headingLines } from "../report/heading.js";
import { reorderJson } from "../report/reorder-json.js";
import { reorderText, todayText } from "../report/reorder-text.js";
import { allFindings, planBars } from "../stock-report.js";
import { exitCodeOf, verdictOf } from "../verdict.js";
import { version } from "../version.js";

/**
 * `scantling reorder FILE`: an order made before, planned with today's knife file, shop file and program, against the plan that
 * its record keeps; which input moved what, and what came out of it the first time. Exit codes as of `check`, for today's plan.
 */
export async function reorder(io: Io, file: string, options: ReorderOptions): Promise<ExitCode> {
  const { existing, shown, knife } = await findRecord(io, file);
  const measured = measure(await loadJob(io, knife, options));
  if (existing === undefined) throw noRecord(shown);
  const { planned } = existing.file;
  if (planned === undefined) throw noPlan(shown);

  const { job } = measured;
  const program = version();
  const bars = planBars(measured);
  const today = plannedOf(measured, { on: io.today(), program, files: textsOf(job) }, options.plan, bars);
  const found = compare(planned, today, planner(job, { on: io.today(), program }));
  const findings = allFindings(measured, bars);
  const verdict = verdictOf(measured.answers, findings);
  const report = options.json
    ? {
        name: "reorder.json",
        content: jsonText(reorderJson(found, existing.file, { job, verdict, findings })),
      }
    : {
        name: "reorder.txt",
        content: reportText([
          ...headingLines(measured),
          "",
          ...reorderText(found, existing.file, job),
          "",
          ...todayText(measured.answers, findings, job),
        ]),
      };
  await deliverReport(io, report, options);
  return exitCodeOf(verdict);
}

/** Plans kept texts by today's program. A place that their rack has no plan for gives none. */
function planner(today: Job, head: Pick<Planned, "on" | "program">) {
  const names = { knife: "the knife file as it was", shop: "the shop file as it was" };
  return (files: JobTexts, place: number | undefined): Planned | undefined => {
    const measured = tryMeasured(() => jobOfTexts(files, today, names));
    if (measured === undefined) return undefined;
    try {
      return plannedOf(measured, { ...head, files }, place);
    } catch (error) {
      if (error instanceof CommandFailure) return undefined;
      throw error;
    }
  };
}

const noRecord = (shown: string): CommandFailure =>
  new CommandFailure(
    EXIT.file,
    "no-record",
    `there is no ${shown}, so nothing is known of how it was planned before`,
    "scantling plan FILE plans it; scantling record FILE begins its record.",
    { file: shown },
  );

const noPlan = (shown: string): CommandFailure =>
  new CommandFailure(
    EXIT.file,
    "no-plan-kept",
    `${shown} keeps no plan: it was begun by hand`,
    "scantling plan FILE plans it today; scantling record FILE lists what came out.",
    { file: shown },
  );
