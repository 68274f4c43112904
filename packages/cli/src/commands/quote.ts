import { dayOfDate, invariant } from "@scantling/geometry";
import { writeOutput } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { FAR_OFF, isInReach } from "../file/date-fields.js";
import { refuseIdle } from "../idle-options.js";
import type { Io } from "../io/io.js";
import { type Job, loadJob } from "../load.js";
import { measure } from "../measure.js";
import { makeCustomerModel } from "../models/customer-model.js";
import type { QuoteOptions } from "../options.js";
import { customerFiles } from "../quote/customer-files.js";
import { makeQuote } from "../quote/quote.js";
import { hasNoSheet } from "../quote/quote-findings.js";
import { jsonText, reportText } from "../report/documents.js";
import { findingCounts } from "../report/findings.js";
import { headingLines } from "../report/heading.js";
import { quoteJson } from "../report/quote-json.js";
import { quoteText } from "../report/quote-text.js";
import { allFindings, knifeFindings, planBars } from "../stock-report.js";
import { exitCodeOf, verdictOf } from "../verdict.js";

/** `scantling quote FILE`: price, hours and dates for the smith; with `--out` the customer's sheet too. */
export async function quote(io: Io, file: string, options: QuoteOptions): Promise<ExitCode> {
  if (options.out === undefined) {
    refuseIdle({
      given: { "--paper": options.paper },
      says: (option) => `${option} is for the customer's sheet, and that is written only with --out`,
      todo: "Add --out DIR, or leave it out.",
    });
  }
  const measured = measure(await loadJob(io, file, options));
  const bars = planBars(measured);
  const madeDay = todayOf(io);
  const made = makeQuote(measured, bars, {
    madeDay,
    beginDay: beginOf(measured.job, options, madeDay),
    ...(options.plan === undefined ? {} : { place: options.plan }),
  });
  const folder = hasNoSheet(made) ? undefined : options.out;
  const files =
    folder === undefined ? [] : await customerFiles(measured.job, makeCustomerModel(made), options.paper);
  const paths = folder === undefined ? [] : await writeOutput(io, folder, files, options);
  io.stderr.write(paths.map((path) => `Wrote ${path}\n`).join(""));
  io.stdout.write(
    options.json
      ? jsonText(quoteJson(made, paths))
      : reportText([...headingLines(measured), "", ...quoteText(made)]),
  );
  for (const counts of findingCounts(knifeFindings(measured))) io.stderr.write(`${counts}\n`);
  const findings = [...allFindings(measured, bars), ...made.findings];
  return exitCodeOf(verdictOf(measured.answers, findings));
}

function todayOf(io: Io): number {
  const day = dayOfDate(io.today());
  invariant(day !== undefined, "the machine's date is a date");
  return day;
}

/** The day of `--from`, else that of the order, else today. */
function beginOf({ knife }: Job, { from }: QuoteOptions, today: number): number {
  if (from === undefined) return knife.order.started ?? today;
  const day = dayOfDate(from.trim());
  if (day !== undefined && isInReach(day)) return day;
  throw new CommandFailure(
    EXIT.usage,
    day === undefined ? "no-date" : "date-far-off",
    day === undefined ? `--from "${from}" is no date` : `--from ${from}: ${FAR_OFF}`,
    "Write it year-month-day: --from 2026-12-01.",
  );
}
