import {
  checkSheath,
  type Finding,
  findingLimits,
  GeometryError,
  type HardnessAnswer,
  type Issue,
  type Judging,
  type Knife,
  type KnifeWeight,
  SpecError,
  slipIssues,
  type WeightInterval,
  weighInterval,
  weighKnife,
} from "@scantling/geometry";
import { type AskAnswer, type AskedFigure, answerAsk } from "./asks.js";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import { type Ask, BUILT_CHECKS, buildKnife, FileError, placeIssues } from "./file/index.js";
import type { Job } from "./load.js";
import { hardnessOf } from "./order-findings.js";
import { missingSizes, sizeFigure, whereGround } from "./size-intervals.js";
import { SIZE_SLIPS } from "./size-slips.js";
import { stackFigures } from "./stack-figures.js";

/** A job with everything that is computed of the knife alone. */
export interface Measured {
  readonly job: Job;
  readonly knife: Knife;
  readonly weight: KnifeWeight;
  readonly interval: WeightInterval;
  readonly findings: readonly Finding[];
  readonly answers: readonly AskAnswer[];
  /** What tables say of the hardness that was asked for; left out where it was not. */
  readonly hardness?: HardnessAnswer;
}

/**
 * Weighs the knife, with its interval, and holds it against what was asked.
 *
 * @throws {FileError} where the knife breaks rules.
 * @throws {CommandFailure} exit code 3 where it makes geometry that cannot be built.
 */
export function measure(job: Job): Measured {
  return inFileTerms(job, () => {
    const knife = builtOf(job);
    // What this knife's own file asks of its sheath is part of the order; the shop's is looked at where one is drawn.
    const own = job.knife.sheath;
    const wrong = checkSheath(knife, job.sheath, own).filter(({ path }) =>
      Object.keys(own).some((name) => path === `sheath.${name}`),
    );
    if (wrong.length > 0) throw new SpecError(wrong);
    const weight = weighKnife(knife);
    const interval = weighInterval(job.spec, job.knife.tolerances, job.tolerances);
    const asks = job.knife.order.asks.map((ask) => whereGround(ask, knife));
    const figureOf = figuresOf(job, knife, asks, weight, interval);
    const hardness = hardnessOf(job, knife);
    return {
      job,
      knife,
      weight,
      interval,
      findings: knife.findings,
      ...(hardness === undefined ? {} : { hardness }),
      answers: asks.flatMap((ask) => {
        const figure = figureOf(ask);
        return figure === undefined ? [] : [answerAsk(ask, figure)];
      }),
    };
  });
}

/** The knife; where it breaks rules, slips of the pen come first, for the rules may be broken by them alone. */
function builtOf(job: Job): Knife {
  const judging = judgingOf(job);
  try {
    return buildKnife(job.spec, judging);
  } catch (error) {
    if (!(error instanceof SpecError)) throw error;
    const slips = slipIssues(job.spec, judging, SIZE_SLIPS);
    throw new SpecError([...slips, ...error.issues], error.hidesMore);
  }
}

/** What the knife of a job is judged by: the type that was ordered, the shop's limits. */
export const judgingOf = ({ knife: { order }, shop: { limits } }: Job): Judging => ({
  limits: findingLimits(limits.findings),
  ...(order.type === undefined ? {} : { type: order.type }),
  ...(limits.types === undefined ? {} : { ranges: limits.types }),
});

/** What the asks are held against. */
function figuresOf(
  job: Job,
  knife: Knife,
  asks: readonly Ask[],
  weight: KnifeWeight,
  interval: WeightInterval,
): (ask: Ask) => AskedFigure | undefined {
  const { tolerances } = job.knife;
  // Every ask has its figure, or the file is refused.
  const ofStack = stackFigures(job, knife, missingSizes(knife, asks));
  return (ask) => {
    switch (ask.name) {
      case "mass":
        return { value: weight.knife.mass, interval: interval.massInterval };
      case "balance":
        return { value: weight.knife.balanceFromHeel, interval: interval.balanceInterval };
      case "layers":
      case "coreLine":
        return ofStack[ask.name];
      default:
        return sizeFigure(knife, { ...ask, name: ask.name }, tolerances, job.tolerances);
    }
  };
}

/** Runs a computation on the knife; what it finds wrong is told with the lines of the file that say so. */
export function inFileTerms<T>(job: Job, compute: () => T): T {
  try {
    return compute();
  } catch (error) {
    if (error instanceof SpecError) {
      const problems = placeInJob(error.issues, job);
      throw new FileError(job.knife.fileName, problems, error.hidesMore ? BUILT_CHECKS : undefined);
    }
    if (error instanceof GeometryError) {
      throw new CommandFailure(
        EXIT.file,
        error.code,
        `${job.knife.fileName} describes a knife that cannot be built: ${error.message}`,
        "Check the outline and the sizes around it; scantling check FILE lists the rules that are broken.",
        { file: job.knife.fileName },
      );
    }
    throw error;
  }
}

/** Allowances and sizes of the sheath may come from the shop file: what is wrong with those is told there. */
function placeInJob(issues: readonly Issue[], { knife, shopPlaces, units }: Job) {
  return issues.flatMap((issue) => {
    const inShop =
      shopPlaces !== undefined &&
      /^(?:allowances|sheath)\b/u.test(issue.path) &&
      knife.positionOf(issue.path) === undefined &&
      shopPlaces.positionOf(issue.path) !== undefined;
    return placeIssues([issue], inShop ? shopPlaces : knife, units);
  });
}
