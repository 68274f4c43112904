import type { Banded, StageNeed } from "@scantling/geometry";
import { describeIssue, radiansToDegrees } from "@scantling/geometry/units";
import { ASK_KINDS, type AskName } from "../file/index.js";
import type { AskCost, AsWeighed, ReadingReport, SimilarReport } from "../gate-costs.js";
import type { GateReport, GateStackReport } from "../gate-report.js";
import type { Job } from "../load.js";
import { findingJson } from "./findings.js";

/**
 * A weigh-in for programs: `scantling/gate/1`. `verdict` is `enough`, `enough-at-usual-losses`, `not-sure`, `short`, or
 * `questioned` where the mass is one that steel cannot have: then it is not used, and spare and verdict are not told. Where a
 * mass rose a little, `usedG` and `spareG` are of the most steel that it can be, `usedLeastG` and `spareLeastG` of the least.
 */
export function gateJson(report: GateReport, job: Job): unknown {
  const { stage, masses, plan, stack, targets, found, extra, similar, readings, findings } = report;
  const { asWeighed } = report;
  const tare = masses.tare ?? 0;
  return {
    schema: "scantling/gate/1",
    stage,
    verdict: found?.verdict ?? "questioned",
    plan:
      plan === undefined
        ? null
        : {
            number: plan.number,
            bar: plan.plan.bar.name,
            bars: plan.plan.bars,
            cutLengthMm: plan.plan.cutLength,
          },
    stack: stack === undefined ? null : stackJson(stack),
    scaleG: masses.scale,
    tareG: masses.tare ?? null,
    netG: masses.scale - tare,
    before: masses.before.map((one) => ({ stage: one.stage, massG: one.mass })),
    usedG: found?.mass ?? null,
    usedLeastG: found?.least ?? null,
    spareG: found?.spare ?? null,
    spareLeastG: found?.leastSpare ?? null,
    spareBandG: found?.spareBand ?? null,
    knifeBandG: found === undefined ? null : { plus: found.knifeBand.plus, minus: found.knifeBand.minus },
    extraHeats: extra === undefined ? null : { count: extra.count, perHeatG: extra.massPerHeat },
    targets: targets.map((one) => ({ stage: one.stage, ...needJson(one.need) })),
    similar: similar.map((one) => similarJson(one, job)),
    asWeighed: asWeighed === undefined ? null : asWeighedJson(asWeighed),
    readings: readings.map((one) => readingJson(one, job)),
    findings: findings.map((finding) => findingJson(finding, job)),
  };
}

/** The stack of a blade of two or more steels: what its bars and its billet after each weld need. */
const stackJson = ({ plan, need }: GateStackReport): object => ({
  kind: plan.stack.kind,
  bars: plan.bars.reduce((sum, { pieces }) => sum + pieces, 0),
  ...(Number.isFinite(plan.cutLength) ? { cutLengthMm: plan.cutLength, massG: plan.mass } : {}),
  ...(need === undefined
    ? {}
    : {
        ...lengthJson(need.length),
        steels: need.steels.map((one) => ({ steel: one.steel, pieces: one.pieces, ...needJson(one.need) })),
        afterWelds: need.welds.map(needJson),
      }),
});

const lengthJson = ({ value, low, high }: Banded): object => ({
  neededLengthMm: value,
  neededLengthLowMm: low,
  neededLengthHighMm: high,
});

/** `null` where a stage's need cannot be told without a plan. */
const needJson = (need: StageNeed | undefined): object => ({
  neededG: need?.value ?? null,
  neededLowG: need?.low ?? null,
  neededHighG: need?.high ?? null,
});

function similarJson(one: SimilarReport, job: Job): unknown {
  if (!one.possible)
    return {
      change: one.change,
      possible: false,
      code: one.issue.code,
      message: describeIssue(one.issue, "mm"),
    };
  return {
    change: one.change,
    possible: true,
    share: one.share,
    fromMm: one.from,
    toMm: one.to,
    byMm: one.from - one.to,
    toBeSureMm: one.toBeSure ?? null,
    ...needJson(one.need),
    ...costJson(one.cost, job),
  };
}

const asWeighedJson = ({ lightBy, knifeMass, mass, others }: AsWeighed): object => ({
  lightByG: lightBy,
  knifeMassG: knifeMass,
  mass:
    mass === undefined
      ? null
      : {
          verdict: mass.answer.verdict,
          was: mass.was,
          valueG: mass.answer.figure.value,
          marginG: mass.answer.margin,
        },
  notTold: others.map(({ ask, verdict }) => ({ ask: ask.name, asDrawn: verdict })),
});

const SUFFIXES = { mass: "G", length: "Mm", angle: "Deg", count: "" } as const;

const shownAs = (name: AskName, value: number): number =>
  ASK_KINDS[name] === "angle" ? radiansToDegrees(value) : value;

function costJson({ answers, knifeMass, open, stops }: AskCost, job: Job): object {
  return {
    knifeMassG: knifeMass,
    asks: answers.map(({ ask, figure, verdict, margin }) => ({
      ask: ask.name,
      verdict,
      was: open.find(({ answer }) => answer.ask === ask)?.was ?? "met",
      [`value${SUFFIXES[ASK_KINDS[ask.name]]}`]: shownAs(ask.name, figure.value),
      [`margin${SUFFIXES[ASK_KINDS[ask.name]]}`]: shownAs(ask.name, margin),
    })),
    stops: stops.map((finding) => findingJson(finding, job)),
  };
}

function readingJson({ cost, ...one }: ReadingReport, job: Job): unknown {
  return {
    xMm: one.x,
    thicknessMm: one.thickness,
    targetMm: one.target,
    finishedMm: one.finished,
    kept: one.kept,
    questioned: one.questioned,
    leftPerFaceMm: one.questioned ? null : one.left.inAll,
    leftBeforeHardeningMm: one.questioned ? null : one.left.beforeHardening,
    leftAfterHardeningMm: one.questioned ? null : one.left.afterHardening,
    ...(cost === undefined ? {} : costJson(cost, job)),
  };
}
