import type { Approach } from "./approach.js";
import { isBetter, NO_MISS } from "./approach.js";
import type { FitScale, Sizes } from "./fit-scale.js";
import { type Band, halfSquares, worstMiss } from "./misses.js";
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
/** A model's own error that a setting is given before it is passed over without weighing, in scales. */
const MODEL_ERROR = 0.05;
const MOST_WEIGHINGS = 150;
/** Settings that are weighed where none meets the asks. */
const MISSED_WEIGHINGS = 16;
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
  const candidates = combinations(scale, near, fineness).map((settings): Candidate => {
    const changes = settings.map(({ change }) => change);
    const figures = bands.map((_, f) => model.valueAt(f, changes));
    return { settings, changes, change: halfSquares(changes), miss: Math.max(0, worstMiss(bands, figures)) };
  });
  const likely = candidates.filter(({ miss }) => miss <= MODEL_ERROR).sort((a, b) => a.change - b.change);
  const isHopeless = near.miss > NO_MISS || likely.length === 0;
  const tried = isHopeless
    ? [...candidates].sort((a, b) => a.miss - b.miss || a.change - b.change).slice(0, MISSED_WEIGHINGS)
    : likely.slice(0, MOST_WEIGHINGS);
  let best: Settled | undefined;
  for (const { settings, changes } of tried) {
    const sizes = settings.map((setting) => setting.sizes);
    const figures = scale.figuresOf(sizes);
    if (figures === undefined) continue;
    const found: Settled = { sizes, changes, figures, miss: worstMiss(bands, figures), fineness };
    if (isBetter(found, best)) best = found;
    // They come in the order of their changes: the first that meets the asks has the least.
    if (!isHopeless && found.miss <= NO_MISS) return found;
  }
  return best;
}

/** Every way to set all dimensions, from the settings nearest to the answer and the drawing. */
function combinations(scale: FitScale, near: Approach, fineness: number): readonly (readonly Setting[])[] {
  const all = scale.dimensions.map((each) => settingsOf(each, fineness));
  const isAll = all.reduce((product, settings) => product * settings.length, 1) <= MOST_SETTINGS;
  const each = Math.max(2, Math.floor(MOST_SETTINGS ** (1 / Math.max(1, all.length))) - 1);
  const chosen = isAll ? all : all.map((settings, i) => nearest(settings, near.changes[i] ?? 0, each));
  return chosen.reduce<readonly (readonly Setting[])[]>(
    (before, settings) => before.flatMap((first) => settings.map((setting) => [...first, setting])),
    [[]],
  );
}

function nearest(settings: readonly Setting[], change: number, count: number): readonly Setting[] {
  const close = [...settings]
    .sort((a, b) => Math.abs(a.change - change) - Math.abs(b.change - change))
    .slice(0, count);
  const drawn = settings.find(({ sizes }) => sizes === undefined);
  return drawn === undefined || close.includes(drawn) ? close : [...close, drawn];
}
