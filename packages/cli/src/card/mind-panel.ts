import type { Finding } from "@scantling/geometry";
import type { CardPanel } from "@scantling/render";
import type { Job } from "../load.js";
import { firstTwoSentences } from "../report/findings.js";
import { panel, words } from "./card-blocks.js";

/** A note of this code says what is ground off afterwards. */
const TOLD_TOO = "taper-stop-far-off";

/** Warnings that matter where the work is done, what is wrong and what to do about it; what stops the job stands in the head. */
export const mindPanel = (findings: readonly Finding[], job: Job): CardPanel[] =>
  panel(
    "Mind",
    "",
    findings
      .filter(({ severity, code }) => severity === "warn" || code === TOLD_TOO)
      .map((finding) => words(firstTwoSentences(finding, job))),
  );
