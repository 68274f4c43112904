import type { Finding } from "@scantling/geometry";
import { radiansToDegrees } from "@scantling/geometry/units";
import { type AskAnswer, limitsOf, type Verdict } from "../asks.js";
import type { OrderConflicts } from "../conflict/ask-conflict.js";
import { ASK_KINDS } from "../file/ask-fields.js";
import type { Measured } from "../measure.js";
import { conflictJson } from "./conflict-json.js";
import { findingJson } from "./findings.js";
import { hardnessJson } from "./hardness-text.js";
import { materialsJson } from "./materials.js";
import { mendingJson } from "./mending-text.js";

/**
 * What was asked and what was found, for programs: `scantling/check/1`. `verdict` of the whole is the worst of the
 * asks that are not wishes, and `not-met` where a finding says stop that is not accepted. Each ask's `standing` parts what is
 * `met` further; a hardness is `not-computed`. `conflicts` has what cannot hold together, with what each ask would have to be.
 */
export function checkJson(
  measured: Measured,
  findings: readonly Finding[],
  verdict: Verdict,
  conflicts: OrderConflicts,
): unknown {
  const { answers, job } = measured;
  return {
    schema: "scantling/check/1",
    verdict,
    asks: [...answers.map((answer) => askJson(answer, measured)), ...hardnessJson(measured)],
    ...conflictJson(conflicts),
    materials: materialsJson(job.spec),
    findings: findings.map((finding) => findingJson(finding, job)),
  };
}

const UNITS = { mass: "G", length: "Mm", angle: "Deg", count: "" } as const;

/** A limit that there is not is `null`. */
function askJson(answer: AskAnswer, measured: Measured): unknown {
  const { ask, figure, verdict, standing, margin, band, limitInBand } = answer;
  const kind = ASK_KINDS[ask.name];
  const unit = UNITS[kind];
  const shown = (value: number): number => (kind === "angle" ? radiansToDegrees(value) : value);
  const { atLeast, atMost } = limitsOf(ask.test);
  const finite = (value: number): number | null => (Number.isFinite(value) ? shown(value) : null);
  return {
    ask: ask.name,
    verdict,
    should: ask.should,
    [`value${unit}`]: shown(figure.value),
    [`interval${unit}`]: (figure.interval ?? [figure.value, figure.value]).map(shown),
    [`atLeast${unit}`]: finite(atLeast),
    [`atMost${unit}`]: finite(atMost),
    [`margin${unit}`]: shown(margin),
    [`band${unit}`]: shown(band),
    limitInBand,
    standing,
    ...(ask.at === undefined ? {} : { at: ask.at }),
    ...(ask.up === undefined ? {} : { upMm: ask.up }),
    ...mendingJson(answer, measured),
  };
}
