import type { Finding } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import type { AskAnswer } from "../asks.js";
import { askRemarks, askTable } from "./asks-text.js";
import { bySeverity, findingLines } from "./findings.js";

/** What was asked, one by one, and everything that was found, with where each limit comes from. */
export function checkText(
  answers: readonly AskAnswer[],
  findings: readonly Finding[],
  units: FileUnits,
): string[] {
  const remarks = askRemarks(answers);
  return [
    "ASKED",
    ...askTable(answers, units),
    ...(remarks.length > 0 ? ["", ...remarks] : []),
    "",
    "FOUND",
    ...(findings.length === 0 ? ["Nothing to warn of."] : []),
    ...bySeverity(findings).flatMap((finding) => findingLines(finding, units, { basis: true })),
  ];
}
