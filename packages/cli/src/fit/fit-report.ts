import {
  type Finding,
  type FitAnswer,
  type FitAsk,
  type FitProblem,
  fitFigureInterval,
  fitKnife,
  invariant,
  type KnifeSpec,
  knifeFigure,
} from "@scantling/geometry";
import { type AskAnswer, type AskedFigure, answerAsk, isFailed, limitsOf } from "../asks.js";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { type Measured, measure } from "../measure.js";
import { isStop } from "../report/findings.js";
import { knifeFindings } from "../stock-report.js";
import type { FitChanges } from "./changes.js";
import { askKey } from "./order-targets.js";
import type { FitTarget } from "./targets.js";

/** A target before and after. */
export interface FittedTarget {
  readonly target: FitTarget;
  readonly before: AskAnswer<FitTarget>;
  readonly after: AskAnswer<FitTarget>;
}

/** What came of it. */
export interface FitReport {
  readonly changes: FitChanges;
  readonly answer: FitAnswer;
  /** The fitted knife, or the nearest to it, measured like any other. */
  readonly fitted: Measured;
  readonly targets: readonly FittedTarget[];
  /** Whether every target is met; with the whole band, where that was asked. */
  readonly isMet: boolean;
  readonly isSure: boolean;
  /** Asks of the order that the fitted knife does not meet and that were not looked after: others took their place, or they were missed before. */
  readonly missed: readonly AskAnswer[];
  /** Findings that the knife as drawn does not have. */
  readonly findings: readonly Finding[];
}

/** Whether the change brings something that stops the work. */
export const hasNewStop = ({ findings }: FitReport): boolean => findings.some(isStop);

/** Bands depend on the knife: they are taken anew so often until the fitted knife's own hold. */
const MOST_SURE_ROUNDS = 5;
/** How much more than the band is left where a round was not enough. */
const SURE_MORE = 1.02;
/** Limits that may not be reached themselves are kept away from by this; more than what is counted as equal. mm, g, rad. */
const OFF_LIMIT = 2e-5;

/**
 * Fits a knife to targets.
 *
 * @param isSure - whether the whole band has to lie inside what is asked.
 * @throws {CommandFailure} exit code 4 where no knife can be built in the ranges.
 */
export function fitReport(
  drawn: Measured,
  changes: FitChanges,
  targets: readonly FitTarget[],
  isSure: boolean,
): FitReport {
  const before = targets.map((target) => answerOf(target, drawn));
  let margins: readonly Margin[] = targets.map(() => NO_MARGIN);
  if (isSure) margins = before.map(marginOf);
  for (let round = 1; ; round++) {
    const answer = fitKnife(problemOf(changes, targets, margins, before));
    if (answer === undefined) throw nothingBuilt();
    const fitted = measure({ ...drawn.job, spec: withoutNothing(answer.knife.spec, changes) });
    const after = targets.map((target) => answerOf(target, fitted));
    const isMet =
      answer.isMet && after.every(({ verdict }) => verdict === "met" || (!isSure && verdict !== "not-met"));
    if (isSure && answer.isMet && !isMet && round < MOST_SURE_ROUNDS) {
      margins = margins.map((margin, i) => wider(margin, after[i]));
      continue;
    }
    return {
      changes,
      answer,
      fitted,
      targets: targets.map((target, i) => ({
        target,
        before: before[i] as AskAnswer<FitTarget>,
        after: after[i] as AskAnswer<FitTarget>,
      })),
      isMet,
      isSure,
      missed: fitted.answers.filter(
        (answer) =>
          isFailed(answer) &&
          !targets.some((target) => target.source === "order" && target.path === answer.ask.path),
      ),
      findings: newFindings(drawn, fitted),
    };
  }
}

/** What is left between a figure and its limits. */
interface Margin {
  readonly minus: number;
  readonly plus: number;
}

const NO_MARGIN: Margin = { minus: 0, plus: 0 };

function marginOf({ figure }: AskAnswer<FitTarget>): Margin {
  const [low, high] = figure.interval ?? [figure.value, figure.value];
  return { minus: figure.value - low, plus: high - figure.value };
}

function wider({ minus, plus }: Margin, after: AskAnswer<FitTarget> | undefined): Margin {
  const own = after === undefined ? NO_MARGIN : marginOf(after);
  return { minus: Math.max(minus, SURE_MORE * own.minus), plus: Math.max(plus, SURE_MORE * own.plus) };
}

function problemOf(
  { spec, dimensions }: FitChanges,
  targets: readonly FitTarget[],
  margins: readonly Margin[],
  before: readonly AskAnswer<FitTarget>[],
): FitProblem {
  return {
    spec,
    dimensions,
    asks: targets.map((target, i) => fitAskOf(target, margins[i], before[i]?.verdict !== "not-met")),
  };
}

/**
 * A target as an ask of a fit, its limits drawn in by a margin.
 *
 * @param holds - what the drawing meets is not given up for what it does not.
 */
export function fitAskOf(
  { name, figure, scale, test }: FitTarget,
  { minus, plus }: Margin = NO_MARGIN,
  holds = false,
): FitAsk {
  const { atLeast, atMost, inclusive } = limitsOf(test);
  const off = inclusive ? 0 : OFF_LIMIT;
  return {
    name,
    figure,
    scale,
    holds,
    ...(Number.isFinite(atLeast) ? { atLeast: atLeast + minus + off } : {}),
    ...(Number.isFinite(atMost) ? { atMost: atMost - plus - off } : {}),
  };
}

/** A target held against a measured knife. */
function answerOf(target: FitTarget, measured: Measured): AskAnswer<FitTarget> {
  return answerAsk(target, figureOf(target, measured));
}

function figureOf(
  { name, figure }: FitTarget,
  { weight, interval, knife, job, answers }: Measured,
): AskedFigure {
  switch (figure.kind) {
    case "mass":
      return { value: weight.knife.mass, interval: interval.massInterval };
    case "balance":
      return { value: weight.knife.balanceFromHeel, interval: interval.balanceInterval };
    case "own": {
      const known = answers.find(({ ask }) => askKey(ask) === name);
      invariant(known !== undefined, `${name} is an ask of the order`);
      return known.figure;
    }
    default:
      return {
        value: knifeFigure(figure, knife),
        interval: fitFigureInterval(job.spec, figure, job.knife.tolerances, job.tolerances),
      };
  }
}

/** A weight of nothing that was to be added is not there. */
function withoutNothing(spec: KnifeSpec, { part }: FitChanges): KnifeSpec {
  const { handle } = spec;
  if (part === undefined || handle?.parts === undefined) return spec;
  const parts = handle.parts.filter(({ mass, name }) => mass > 0 || name !== part.name);
  return { ...spec, handle: { ...handle, parts } };
}

function newFindings(before: Measured, after: Measured): readonly Finding[] {
  const key = ({ severity, code, path }: Finding): string => `${severity} ${code} ${path}`;
  const known = new Set(knifeFindings(before).map(key));
  return knifeFindings(after).filter((finding) => !known.has(key(finding)));
}

const nothingBuilt = (): CommandFailure =>
  new CommandFailure(
    EXIT.notMet,
    "no-knife-in-ranges",
    "no knife in these ranges keeps its own rules",
    "Give other ranges with --change; those of scantling check FILE tell what a change would break.",
  );
