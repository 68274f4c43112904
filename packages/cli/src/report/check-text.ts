import type { Finding } from "@scantling/geometry";
import { isFailed } from "../asks.js";
import type { OrderConflicts } from "../conflict/ask-conflict.js";
import { askWords } from "../conflict/conflict-findings.js";
import type { Measured } from "../measure.js";
import { commandLines } from "../shell-words.js";
import { askRemarks, askTable, withinBandRemark } from "./asks-text.js";
import { bySeverity, findingLines } from "./findings.js";
import { hardnessRows } from "./hardness-text.js";
import { wrap } from "./layout.js";
import { mendingLines } from "./mending-text.js";

/** What was asked, one by one, and everything that was found, with where each limit comes from. */
export function checkText(
  measured: Measured,
  findings: readonly Finding[],
  conflicts: OrderConflicts,
): string[] {
  const { answers, job } = measured;
  const { units } = job;
  const remarks = [
    ...askRemarks(answers, units),
    ...withinBandRemark(answers, units),
    ...conflictRemark(conflicts),
  ];
  return [
    "ASKED",
    ...askTable(answers, units, hardnessRows(measured, units)),
    ...(remarks.length > 0 ? ["", ...remarks] : []),
    ...mendingLines(measured),
    "",
    "FOUND",
    ...(findings.length === 0 ? ["Nothing to warn of."] : []),
    ...bySeverity(findings).flatMap((finding) => findingLines(finding, job, { basis: true })),
    ...nextStep(measured, conflicts),
  ];
}

/** Where asks are not met by sizes that could be others. What cannot be had at all has been told. */
function nextStep({ answers, job }: Measured, { conflicts }: OrderConflicts): string[] {
  const isOpen = answers.some((answer) => isFailed(answer) && answer.ask.name !== "layers");
  if (!isOpen || conflicts.length > 0 || job.fromStdin) return [];
  return [
    "",
    "To look for sizes that meet what is asked:",
    ...commandLines(["scantling", "fit", job.knife.fileName]),
  ];
}

/** What cannot be had together, in a line; how far each has to give way stands with the findings. */
function conflictRemark({ conflicts, search }: OrderConflicts): string[] {
  const several = conflicts.filter(({ asks }) => asks.length > 1);
  const sets = several.map(({ asks }) => askWords(asks));
  // Another wood may do what no usual change of a size does.
  const by = several.every(({ kind }) => kind === "changes") ? " by the usual changes" : "";
  return [
    ...(sets.length === 0
      ? []
      : wrap(`CANNOT ALL HOLD${by}: ${sets.join("; ")}. What would settle it: below, under FOUND.`)),
    ...(search === "stopped"
      ? wrap(
          "Whether what is asked can all hold was not looked into to its end; scantling fit FILE looks further.",
        )
      : []),
  ];
}
