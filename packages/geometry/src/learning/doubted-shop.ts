import type { Banded } from "../stock/shop.js";
import { OF_OWN, type Sample } from "./estimate.js";
import { type FigurePath, figureOf, withBand } from "./figures.js";
import { isFar, type Middle, middleOfJobs, middleOfOwn } from "./outliers.js";
import { NORMAL_LIMIT } from "./student.js";
import { centred, errorInWorking, fromWorking, toWorking } from "./working-scale.js";

/** One job alone may be slipped; two that say the same are hardly slipped alike. */
const DOUBTERS = 2;
/** Jobs that outvote another one which the shop's figure speaks for. Judgement: two on either side settle nothing. */
const OUTVOTE = 3;
/** Standard deviations beyond which a job is off the shop's figure to one side, rather than about it. Judgement. */
const ASIDE = 1;

/**
 * What a job is held against while there are few: the shop's own figure, unless jobs off it to one side agree among themselves.
 * Then it is the figure that is doubted, and those jobs take its place. The figure's band is doubted along with it: how far jobs
 * lie apart is taken from the usual one.
 *
 * @param jobs - One mean each.
 *
 * @example
 * const own = { value: 0.024, low: 0.02, high: 0.03 };
 * const jobs = [0.008, 0.009, 0.01].map((value) => ({ value, error: 0 }));
 * Math.exp(middleOfFew("losses.scalePerHeat", own, jobs).centre); // 0.009
 */
export function middleOfFew(of: FigurePath, own: Banded, jobs: readonly Sample[]): Middle {
  const { spreading } = figureOf(of);
  const shops = middleOfOwn(own, spreading);
  // Only its width counts.
  const usual = withBand(of, own.value);
  const apart = (centred(usual, spreading)?.deviation ?? 0) * Math.sqrt(OF_OWN.scatter);
  const doubters = mostAgreeing(jobs, shops, apart);
  if (doubters.length < DOUBTERS) return shops;
  const theirs = middleOfJobs(usual, doubters, spreading);
  const middle = { value: fromWorking(theirs.centre, spreading), error: 0 };
  const outvoted = doubters.length >= OUTVOTE && isFar(middle, shops);
  return { ...theirs, ofJobs: false, ...(outvoted ? {} : { besides: shops }) };
}

/**
 * The greatest number of jobs off the shop's figure to one side that all agree with one of them: no farther apart than two jobs
 * usually lie, and their scales can tell.
 */
function mostAgreeing(jobs: readonly Sample[], shops: Middle, apart: number): readonly Sample[] {
  const { spreading, centre, deviation } = shops;
  const working = ({ value }: Sample): number => toWorking(value, spreading);
  const error = (job: Sample): number => errorInWorking(job.value, job.error, spreading);
  const agree = (one: Sample, other: Sample): boolean =>
    Math.abs(working(one) - working(other)) <=
    NORMAL_LIMIT * Math.hypot(apart, apart, error(one), error(other));
  const groups = [-1, 1].flatMap((side) => {
    const off = jobs.filter((job) => side * (working(job) - centre) > ASIDE * deviation);
    return off.map((one) => off.filter((other) => agree(one, other)));
  });
  const most = Math.max(0, ...groups.map((group) => group.length));
  // Of groups as great, the one nearest to the shop's figure: no answer may depend on the order of records.
  const distance = (group: readonly Sample[]): number =>
    group.reduce((sum, job) => sum + Math.abs(working(job) - centre), 0);
  return groups.filter(({ length }) => length === most).sort((a, b) => distance(a) - distance(b))[0] ?? [];
}
