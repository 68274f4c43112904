import { type Box, QuadraticModel } from "../numeric/quadratic-model.js";
import type { FitScale } from "./fit-scale.js";
import { leastChange } from "./least-change.js";
import { leastMiss } from "./least-miss.js";
import { type Band, clamped, halfSquares, missOfAll, NO_MISS, worstOf } from "./misses.js";

/** Where a search has come to: changes between what the bench can set. */
export interface Approach {
  readonly changes: readonly number[];
  /** Exact figures there, in their scales. */
  readonly figures: readonly number[];
  /** What is missed of the asks in all; 0 where all are met. */
  readonly miss: number;
  /** The model that led there. */
  readonly model: QuadraticModel;
}

/** Steps of the first model and of later ones, as shares of a range. */
const FIRST_STEP = 0.1;
const LATER_STEP = 0.02;
const MOST_ROUNDS = 32;
/** Every so many rounds the bends are taken anew: those from far away hold up the last digits. */
const FRESH_EVERY = 6;
/** A round that moves less than this, as a share of a range, was the last. */
const ARRIVED = 1e-7;
/** From this round on each goes half as far as the one before: two that take turns meet. */
const CALM_FROM = 8;

/**
 * The least change that meets the asks, or the least worst miss and the least change for it. The knife is weighed around a
 * place, the answer looked for on that model, the knife weighed anew there, and so on until both agree.
 *
 * @param from - where it begins.
 * @param known - a model from an earlier search; left out: one is made around `from`.
 * @param isQuick - whether the first place that meets the asks will do, whatever the change.
 * @returns undefined where no knife can be measured there.
 */
export function approach(
  scale: FitScale,
  bands: readonly Band[],
  from: readonly number[],
  known?: QuadraticModel,
  isQuick = false,
): Approach | undefined {
  const start = clamped(scale.box, from);
  let model = known ?? QuadraticModel.around(scale.sampled, start, FIRST_STEP, scale.box);
  if (model === undefined) return undefined;
  let best = approached(scale, bands, model.centre, model);
  let reach = 1;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    if (isQuick && best !== undefined && best.miss <= NO_MISS) break;
    const { centre } = model;
    const next = searchModel(model, bands, within(scale.box, centre, reach));
    const here = approached(scale, bands, next, model);
    if (here !== undefined && isBetter(here, best)) best = here;
    const moved = Math.max(0, ...next.map((value, i) => Math.abs(value - (centre[i] ?? 0))));
    if (here !== undefined && round > 0 && moved < ARRIVED) break;
    if (round >= CALM_FROM || here === undefined) reach = Math.max(ARRIVED, Math.min(reach, moved) / 2);
    if (here === undefined) continue;
    const isStale = round % FRESH_EVERY === FRESH_EVERY - 1;
    const recentred: QuadraticModel | undefined = isStale
      ? QuadraticModel.around(scale.sampled, next, LATER_STEP, scale.box)
      : model.recentred(scale.sampled, next, LATER_STEP, scale.box);
    if (recentred === undefined) break;
    model = recentred;
  }
  return best;
}

/** Both searches on one model: first to where the asks are missed least, then to the least change for that. */
export function searchModel(model: QuadraticModel, bands: readonly Band[], box: Box): readonly number[] {
  const figureAt = (point: readonly number[]): number[] => bands.map((_, f) => model.valueAt(f, point));
  const starts = [
    clamped(box, model.centre),
    clamped(
      box,
      model.centre.map(() => 0),
    ),
    middleOf(box),
  ];
  let best: readonly number[] | undefined;
  let bestMiss = Number.POSITIVE_INFINITY;
  for (const start of starts) {
    const near = leastMiss({ model, bands, box }, start);
    const figures = figureAt(near);
    const miss = missOfAll(bands, figures);
    if (miss > bestMiss + NO_MISS) continue;
    const point = leastChange({ model, bands: relaxed(bands, figures), box }, near);
    const isLess = miss < bestMiss - NO_MISS || best === undefined || halfSquares(point) < halfSquares(best);
    if (isLess) [best, bestMiss] = [point, Math.min(miss, bestMiss)];
  }
  return best ?? clamped(box, model.centre);
}

/** Bands in which figures lie that miss some of them, and a hair more. */
function relaxed(bands: readonly Band[], figures: readonly number[]): readonly Band[] {
  return bands.map((band) => {
    const by = worstOf(bands, figures, band.isHard === true) * (1 + NO_MISS);
    return by === 0 ? band : { ...band, low: band.low - by, high: band.high + by };
  });
}

const middleOf = ({ low, high }: Box): number[] => low.map((least, i) => (least + (high[i] ?? least)) / 2);

const within = ({ low, high }: Box, centre: readonly number[], reach: number): Box => ({
  low: low.map((least, i) => Math.max(least, (centre[i] ?? 0) - reach)),
  high: high.map((most, i) => Math.min(most, (centre[i] ?? 0) + reach)),
});

function approached(
  scale: FitScale,
  bands: readonly Band[],
  changes: readonly number[],
  model: QuadraticModel,
): Approach | undefined {
  const figures = scale.figuresOf(scale.sizesAt(changes));
  return figures === undefined ? undefined : { changes, figures, miss: missOfAll(bands, figures), model };
}

/** Whether one place is better than another: a lesser miss, or as little of one with a lesser change. */
export function isBetter(
  a: Pick<Approach, "miss" | "changes">,
  b: Pick<Approach, "miss" | "changes"> | undefined,
): boolean {
  if (b === undefined) return true;
  const [first, second] = [Math.max(NO_MISS, a.miss), Math.max(NO_MISS, b.miss)];
  if (first !== second) return first < second;
  return halfSquares(a.changes) < halfSquares(b.changes);
}
