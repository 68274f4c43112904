import type { Banded } from "../stock/shop.js";
import type { Candidate } from "./candidate.js";
import { type Estimate, estimate, type Sample } from "./estimate.js";
import { type FigurePath, figureOf, ownFigure, type PresentShop, withBand } from "./figures.js";
import { type HeldOut, holdOut } from "./held-out.js";
import { median } from "./outliers.js";
import { type KeptCandidate, type LeftOut, screen } from "./screen.js";

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

/** What one job comes to for a figure: the mean of all its places. */
export interface LearntJob extends Sample {
  readonly file: string;
  readonly on: string;
  readonly steel?: string;
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
  const given = shop.learntAnew?.includes(path) ? undefined : (shop.before?.[path] ?? ownFigure(path, shop));
  const own = given ?? ofJobsAlone(path, candidates);
  // A loss that is switched off, or nothing that could be computed.
  if (own === undefined) return { figure: undefined, leftOut: [] };
  const { kept, leftOut } = screen(path, own, candidates);
  const jobs = jobsOf(kept);
  const { spreading } = figureOf(path);
  return {
    figure: {
      path,
      own,
      isNew: given === undefined,
      estimate: estimate(own, jobs, spreading),
      jobs,
      heldOut: holdOut(own, jobs, spreading),
      bySteel: bySteel(path, own, jobs),
    },
    leftOut,
  };
}

/** Hours that the shop has none of: the middle of the jobs, with the band of hours. Other figures always have a default. */
function ofJobsAlone(path: FigurePath, candidates: readonly Candidate[]): Banded | undefined {
  if (figureOf(path).quantity !== "hours") return undefined;
  const values = candidates.flatMap(({ compute, readings }) => {
    const outcome = compute(readings.map(({ value }) => value));
    return "value" in outcome ? [outcome.value] : [];
  });
  return values.length === 0 ? undefined : withBand(path, median(values));
}

/** One sample a job: the mean of what all its places say, for those share the hand and the fire. */
function jobsOf(kept: readonly KeptCandidate[]): LearntJob[] {
  const files = [...new Set(kept.map(({ candidate }) => candidate.file))].sort();
  return files.map((file): LearntJob => {
    const own = kept.filter(({ candidate }) => candidate.file === file);
    const mean = (numbers: readonly number[]): number =>
      numbers.reduce((total, one) => total + one, 0) / numbers.length;
    const { steel } = own[0]?.candidate ?? {};
    return {
      file,
      on:
        own
          .map(({ candidate }) => candidate.on)
          .sort()
          .at(-1) ?? "",
      ...(steel === undefined ? {} : { steel }),
      value: mean(own.map(({ value }) => value)),
      error: Math.sqrt(mean(own.map(({ candidate }) => candidate.error ** 2)) / own.length),
    };
  });
}

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
