import type { Finding } from "@scantling/geometry";
import type { Measured } from "../measure.js";
import { askRemarks, askTable, withinBandRemark } from "./asks-text.js";
import { bySeverity, findingLines } from "./findings.js";
import { hardnessRows } from "./hardness-text.js";
import { mendingLines } from "./mending-text.js";

/** What was asked, one by one, and everything that was found, with where each limit comes from. */
export function checkText(measured: Measured, findings: readonly Finding[]): string[] {
  const { answers, job } = measured;
  const { units } = job;
  const remarks = [...askRemarks(answers, units), ...withinBandRemark(answers, units)];
  return [
    "ASKED",
    ...askTable(answers, units, hardnessRows(measured, units)),
    ...(remarks.length > 0 ? ["", ...remarks] : []),
    ...mendingLines(measured),
    "",
    "FOUND",
    ...(findings.length === 0 ? ["Nothing to warn of."] : []),
    ...bySeverity(findings).flatMap((finding) => findingLines(finding, job, { basis: true })),
  ];
}
