import type { Finding } from "@scantling/geometry";
import { type AskAnswer, isFailed, type Verdict } from "./asks.js";
import { EXIT, type ExitCode } from "./exit-code.js";
import { isStop } from "./report/findings.js";

/** The worst of the asks that are not wishes; `not-met` where a finding says stop. */
export function verdictOf(answers: readonly AskAnswer[], findings: readonly Finding[]): Verdict {
  if (findings.some(isStop) || answers.some(isFailed)) return "not-met";
  return answers.some(({ ask, verdict }) => verdict === "at-risk" && !ask.should) ? "at-risk" : "met";
}

/** At risk is a warning, not a failure. */
export function exitCodeOf(verdict: Verdict): ExitCode {
  return verdict === "not-met" ? EXIT.notMet : EXIT.done;
}
