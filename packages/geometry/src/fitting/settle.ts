import type { Approach } from "./approach.js";
import { isBetter } from "./approach.js";
import type { FitScale, Sizes } from "./fit-scale.js";
import { type Band, halfSquares, missOfAll, NO_MISS } from "./misses.js";
import { type Setting, settingsOf } from "./settings.js";

/** A knife that can be set at the bench. */
export interface Settled {
  readonly sizes: Sizes;
  readonly changes: readonly number[];
  /** Exact figures, in their scales. */
  readonly figures: readonly number[];
  readonly miss: number;
  /** Which of the steps of each size were enough: 0 is the coarsest. */
  readonly fineness: number;
}

/** Coarse, fine, and as fine as a caliper shows. */
const FINENESSES = [0, 1, 2] as const;
/** Settings that are looked at together: all there are where these are enough, else the ones around the answer. */
const MOST_SETTINGS = 60_000;
/** The same where the asks cannot be met, and most settings of one dimension: what lies right around the nearest knife. */
const MISSED_SETTINGS = 500;
const MISSED_EACH = 6;
/** A model's own error that a setting is given before it is passed over without weighing, in scales. */
const MODEL_ERROR = 0.05;
const MOST_WEIGHINGS = 150;
/** Settings that are weighed where none meets the asks. */
const MISSED_WEIGHINGS = 16;
/** What a quick weighing may be off the one that counts, in scales. */
const WEIGHING_ERROR = 1e-3;
/** How much farther from the asks than in between steps a knife may come out that misses them anyway, in scales. */
const ROUNDING_MISS = 0.5;

/**
 * Rounds an answer to what can be set: of all settings, or of those around it, the least change that meets the asks when it is
 * weighed, or the least miss. Where no coarse setting does, finer steps are tried.
 *
 * @returns undefined where no setting makes a knife.
 */
export function settle(scale: FitScale, bands: readonly Band[], near: Approach): Settled | undefined {
  const enough = near.miss > NO_MISS ? near.miss + ROUNDING_MISS : NO_MISS;
  let best: Settled | undefined;
  for (const fineness of FINENESSES) {
    const found = settleIn(scale, bands, near, fineness);
    if (found !== undefined && isBetter(found, best)) best = found;
    if (best !== undefined && best.miss <= enough) break;
  }
  return best;
}

interface Candidate {
  readonly settings: readonly Setting[];
  readonly changes: readonly number[];
  readonly change: number;
  /** What the model says. */
  readonly miss: number;
}

function settleIn(
  scale: FitScale,
  bands: readonly Band[],
  near: Approach,
  fineness: number,
): Settled | undefined {
  const { model } = near;
  const candidates = (among: readonly (readonly Setting[])[]): readonly Candidate[] =>
    among.map((settings): Candidate => {
      const changes = settings.map(({ change }) => change);
      const figures = bands.map((_, f) => model.valueAt(f, changes));
      return { settings, changes, change: halfSquares(changes), miss: missOfAll(bands, figures) };
    });
  const all = scale.dimensions.map((each) => settingsOf(each, fineness));
  const isSmall = all.reduce((product, settings) => product * settings.length, 1) <= MOST_SETTINGS;
  const many = isSmall
    ? all
    : all.map((settings, i) => nearest(settings, near.changes[i], eachOf(MOST_SETTINGS, all)));
  const likely =
    near.miss > NO_MISS ? [] : candidates(combined(many)).filter(({ miss }) => miss <= MODEL_ERROR);
  const few = all.map((settings, i) =>
    nearest(settings, near.changes[i], Math.min(MISSED_EACH, eachOf(MISSED_SETTINGS, all))),
  );
  const isHopeless = likely.length === 0;
  const tried = isHopeless
    ? candidates(combined(few))
        .toSorted((x, y) => x.miss - y.miss || x.change - y.change)
        .slice(0, MISSED_WEIGHINGS)
    : likely.toSorted((x, y) => x.change - y.change).slice(0, MOST_WEIGHINGS);
  let best: Settled | undefined;
  for (const { settings, changes } of tried) {
    const sizes = settings.map((setting) => setting.sizes);
    const settled = (figures: readonly number[] | undefined): Settled | undefined =>
      figures && { sizes, changes, figures, miss: missOfAll(bands, figures), fineness };
    const quick = settled(scale.figuresOf(sizes));
    if (quick === undefined) continue;
    if (isHopeless || quick.miss > WEIGHING_ERROR) {
      if (isBetter(quick, best)) best = quick;
      continue;
    }
    // They come in the order of their changes: the first that meets the asks has the least.
    const exact = settled(scale.weighed(sizes));
    if (exact !== undefined && exact.miss <= NO_MISS) return exact;
    if (exact !== undefined && isBetter(exact, best)) best = exact;
  }
  const weighed = best && scale.weighed(best.sizes);
  return best && weighed && { ...best, figures: weighed, miss: missOfAll(bands, weighed) };
}

/** How many settings of each dimension make so many of all together. */
const eachOf = (most: number, all: readonly unknown[]): number =>
  Math.max(2, Math.floor(most ** (1 / Math.max(1, all.length))) - 1);

/** Every way to set all dimensions. */
const combined = (all: readonly (readonly Setting[])[]): readonly (readonly Setting[])[] =>
  all.reduce<readonly (readonly Setting[])[]>(
    (before, settings) => before.flatMap((first) => settings.map((setting) => [...first, setting])),
    [[]],
  );

/** The settings nearest to a change, and the drawing. */
function nearest(settings: readonly Setting[], change = 0, count = settings.length): readonly Setting[] {
  const close = [...settings]
    .sort((a, b) => Math.abs(a.change - change) - Math.abs(b.change - change))
    .slice(0, count);
  const drawn = settings.find(({ sizes }) => sizes === undefined);
  return drawn === undefined || close.includes(drawn) ? close : [...close, drawn];
}
