import type { Finding } from "@scantling/geometry";
import type { CardPanel } from "@scantling/render";
import type { Job } from "../load.js";
import { firstSentence } from "../report/findings.js";
import { panel, words } from "./card-blocks.js";

/** A note of this code says what is ground off afterwards. */
const TOLD_TOO = "taper-stop-far-off";

/** Warnings that matter where the work is done, the first sentence of each; what stops the job stands in the head. */
export const mindPanel = (findings: readonly Finding[], job: Job): CardPanel[] =>
  panel(
    "Mind",
    "",
    findings
      .filter(({ severity, code }) => severity === "warn" || code === TOLD_TOO)
      .map((finding) => words(firstSentence(finding, job))),
  );
