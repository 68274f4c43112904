import type { Banded } from "../stock/shop.js";
import type { Candidate } from "./candidate.js";
import { type Estimate, estimate, estimateAnew, type Sample } from "./estimate.js";
import {
  type FigurePath,
  figureOf,
  hoursAnew,
  type OwnFigure,
  ownFigure,
  type PresentShop,
  withBand,
} from "./figures.js";
import { type HeldOut, holdOut } from "./held-out.js";
import { jobsOf, type LearntJob } from "./learnt-job.js";
import { median } from "./outliers.js";
import { type LeftOut, screen } from "./screen.js";

/** What the records say of one figure of the shop. */
export interface LearntFigure {
  readonly path: FigurePath;
  /** What it was held together with: the shop's own figure, before anything was learnt into it. */
  readonly own: Banded;
  /** Whether the shop has no such figure yet, and the jobs' own middle stood in for it. */
  readonly isNew: boolean;
  readonly estimate: Estimate;
  /** The jobs that count. */
  readonly jobs: readonly LearntJob[];
  /** How well each job is foretold from the others; undefined with fewer than three jobs. */
  readonly heldOut: HeldOut | undefined;
  /** The same figure by steel, where at least two steels have jobs enough. */
  readonly bySteel: readonly { readonly steel: string; readonly jobs: number; readonly value: number }[];
}

/** What is held together with the records: the shop as it is, and its own figures from before it learnt. */
export interface LearningShop extends PresentShop {
  /** Figures of which the file keeps what stood there before it was learnt: in place of what stands there now. */
  readonly before?: Partial<Record<FigurePath, Banded>>;
  /** Figures that the shop had none of before they were learnt: the jobs alone stand for them again. */
  readonly learntAnew?: readonly FigurePath[];
}

/** What is known of one figure, and what was left out. */
export interface FigureAnswer {
  /** Undefined where no record tells of it, or the shop has switched it off. */
  readonly figure: LearntFigure | undefined;
  readonly leftOut: readonly LeftOut[];
}

/**
 * What records say of one figure, held together with the shop's own.
 *
 * @param candidates - All of this figure.
 *
 * @example
 * const shop = { shop: DEFAULT_SHOP, allowances: { face: 0.5, afterHardening: 0.1 }, hours: {} };
 * learnFigure("losses.scalePerHeat", [], shop); // { figure: undefined, leftOut: [] }
 */
export function learnFigure(
  path: FigurePath,
  candidates: readonly Candidate[],
  shop: LearningShop,
): FigureAnswer {
  if (candidates.length === 0) return { figure: undefined, leftOut: [] };
  const given = givenFigure(path, shop);
  if (given === "off") return { figure: undefined, leftOut: [] };
  const isNew = given === "none";
  const ownOf = (jobs: readonly Sample[]): Banded => (isNew ? middleOf(path, jobs) : given);
  const { kept, leftOut } = screen(path, isNew ? ownOf : given, candidates);
  const jobs = jobsOf(kept);
  // No figure, and nothing that could be computed.
  if (isNew && jobs.length === 0) return { figure: undefined, leftOut };
  const { spreading } = figureOf(path);
  const foretell = (from: readonly Sample[]): Estimate =>
    (isNew ? estimateAnew : estimate)(ownOf(from), from, spreading);
  return {
    figure: {
      path,
      own: ownOf(jobs),
      isNew,
      estimate: foretell(jobs),
      jobs,
      heldOut: holdOut(foretell, jobs, spreading),
      bySteel: bySteel(path, ownOf(jobs), jobs),
    },
    leftOut,
  };
}

/** The shop's own figure from before it learnt. */
function givenFigure(path: FigurePath, shop: LearningShop): OwnFigure {
  if (shop.learntAnew?.includes(path)) return "none";
  return shop.before?.[path] ?? ownFigure(path, shop);
}

/** Where the shop has no figure: the middle of some jobs, with a band about it; no number without any. */
const middleOf = (path: FigurePath, jobs: readonly Sample[]): Banded => {
  const middle = median(jobs.map(({ value }) => value));
  return figureOf(path).quantity === "hours" ? hoursAnew(middle) : withBand(path, middle);
};

/** Fewer jobs of a steel say nothing of it. */
const JOBS_OF_STEEL = 3;

function bySteel(path: FigurePath, own: Banded, jobs: readonly LearntJob[]): LearntFigure["bySteel"] {
  const steels = [...new Set(jobs.flatMap(({ steel }) => steel ?? []))].sort();
  const enough = steels.flatMap((steel) => {
    const its = jobs.filter((job) => job.steel === steel);
    const { ofJobs } = estimate(own, its, figureOf(path).spreading);
    return its.length < JOBS_OF_STEEL || ofJobs === undefined
      ? []
      : [{ steel, jobs: its.length, value: ofJobs }];
  });
  return enough.length < 2 ? [] : enough;
}
