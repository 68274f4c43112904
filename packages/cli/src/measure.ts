import {
  checkSheath,
  type Finding,
  GeometryError,
  type Issue,
  type Knife,
  type KnifeWeight,
  SpecError,
  type WeightInterval,
  weighInterval,
  weighKnife,
} from "@scantling/geometry";
import { type AskAnswer, type AskedFigure, answerAsk } from "./asks.js";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import { type AskName, buildKnife, FileError, placeIssues } from "./file/index.js";
import type { Job } from "./load.js";
import { sizeFigures } from "./size-intervals.js";
import { sizesOf } from "./sizes.js";
import { stackFigures } from "./stack-figures.js";

/** A job with everything that is computed of the knife alone. */
export interface Measured {
  readonly job: Job;
  readonly knife: Knife;
  readonly weight: KnifeWeight;
  readonly interval: WeightInterval;
  readonly findings: readonly Finding[];
  readonly answers: readonly AskAnswer[];
}

/**
 * Weighs the knife, with its interval, and holds it against what was asked.
 *
 * @throws {FileError} where the knife breaks rules.
 * @throws {CommandFailure} exit code 3 where it makes geometry that cannot be built.
 */
export function measure(job: Job): Measured {
  return inFileTerms(job, () => {
    const knife = buildKnife(job.spec);
    // What this knife's own file asks of its sheath is part of the order; the shop's is looked at where one is drawn.
    const own = job.knife.sheath;
    const wrong = checkSheath(knife, job.sheath, own).filter(({ path }) =>
      Object.keys(own).some((name) => path === `sheath.${name}`),
    );
    if (wrong.length > 0) throw new SpecError(wrong);
    const weight = weighKnife(knife);
    const interval = weighInterval(job.spec, job.knife.tolerances, job.tolerances);
    const figures = figuresOf(job, knife, weight, interval);
    return {
      job,
      knife,
      weight,
      interval,
      findings: knife.findings,
      answers: job.knife.order.asks.flatMap((ask) => {
        const figure = figures[ask.name];
        return figure === undefined ? [] : [answerAsk(ask, figure)];
      }),
    };
  });
}

/** What the asks are held against. */
function figuresOf(
  job: Job,
  knife: Knife,
  weight: KnifeWeight,
  interval: WeightInterval,
): Partial<Record<AskName, AskedFigure>> {
  return {
    mass: { value: weight.knife.mass, interval: interval.massInterval },
    balance: { value: weight.knife.balanceFromHeel, interval: interval.balanceInterval },
    ...sizeFigures(knife, sizesOf(knife.outline), job.knife.tolerances, job.tolerances),
    // Every ask of a stack has its figure, or the file is refused.
    ...stackFigures(job, knife),
  };
}

/** Runs a computation on the knife; what it finds wrong is told with the lines of the file that say so. */
export function inFileTerms<T>(job: Job, compute: () => T): T {
  try {
    return compute();
  } catch (error) {
    if (error instanceof SpecError) throw new FileError(job.knife.fileName, placeInJob(error.issues, job));
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
