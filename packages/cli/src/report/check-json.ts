import type { Finding } from "@scantling/geometry";
import { type AskAnswer, limitsOf, type Verdict } from "../asks.js";
import { ASK_KINDS } from "../file/ask-fields.js";
import type { Job } from "../load.js";
import { findingJson } from "./findings.js";
import { materialsJson } from "./materials.js";

/**
 * What was asked and what was found, for programs: `scantling/check/1`. `verdict` of the whole is the worst of the
 * asks that are not wishes, and `not-met` where a finding says stop.
 */
export function checkJson(
  answers: readonly AskAnswer[],
  findings: readonly Finding[],
  verdict: Verdict,
  job: Job,
): unknown {
  return {
    schema: "scantling/check/1",
    verdict,
    asks: answers.map(askJson),
    materials: materialsJson(job.spec),
    findings: findings.map((finding) => findingJson(finding, job)),
  };
}

const UNITS = { mass: "G", length: "Mm", count: "" } as const;

/** A limit that there is not is `null`. */
function askJson({ ask, figure, verdict, margin, band, limitInBand }: AskAnswer): unknown {
  const unit = UNITS[ASK_KINDS[ask.name]];
  const { atLeast, atMost } = limitsOf(ask.test);
  const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);
  return {
    ask: ask.name,
    verdict,
    should: ask.should,
    [`value${unit}`]: figure.value,
    [`interval${unit}`]: figure.interval ?? [figure.value, figure.value],
    [`atLeast${unit}`]: finite(atLeast),
    [`atMost${unit}`]: finite(atMost),
    [`margin${unit}`]: margin,
    [`band${unit}`]: band,
    limitInBand,
  };
}
