import type { Finding } from "@scantling/geometry";
import type { AskAnswer } from "../asks.js";
import type { Job } from "../load.js";
import { askRemarks, askTable } from "./asks-text.js";
import { bySeverity, findingLines } from "./findings.js";

/** What was asked, one by one, and everything that was found, with where each limit comes from. */
export function checkText(answers: readonly AskAnswer[], findings: readonly Finding[], job: Job): string[] {
  const remarks = askRemarks(answers);
  return [
    "ASKED",
    ...askTable(answers, job.units),
    ...(remarks.length > 0 ? ["", ...remarks] : []),
    "",
    "FOUND",
    ...(findings.length === 0 ? ["Nothing to warn of."] : []),
    ...bySeverity(findings).flatMap((finding) => findingLines(finding, job, { basis: true })),
  ];
}
