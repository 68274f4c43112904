import { spreadPoints } from "../numeric/spread-points.js";
import { type Approach, approach, isBetter } from "./approach.js";
import type { FitDimension } from "./dimension.js";
import type { FitAsk, FitProblem, FittedDimension, FittedKnife, SearchBounds } from "./fit-problem.js";
import { FitScale } from "./fit-scale.js";
import { type Band, halfSquares, missOf, missOfAll, NO_MISS } from "./misses.js";
import { type Settled, settle } from "./settle.js";

const byName = <T extends { readonly name: string }>(items: readonly T[]): readonly T[] =>
  [...items].sort((a, b) => (a.name < b.name ? -1 : 1));

const NO_BAND: Band = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };

type Asked =
  | { readonly only: readonly FitAsk[] }
  | { readonly ask: FitAsk; readonly low: number; readonly high: number }
  | Readonly<Record<string, never>>;

/** Searches on one problem: the knife is never weighed twice for the same sizes. */
export class FitSearch {
  private readonly problem: FitProblem;
  private readonly scale: FitScale;
  /** In the order of their names: the answer must not hang on how they are listed. */
  private readonly dimensions: readonly FitDimension[];
  private readonly asks: readonly FitAsk[];

  private readonly isQuick: boolean;

  /**
   * @param bounds - with them it is asked whether the asks can be met, not by how little a change.
   */
  constructor(problem: FitProblem, bounds?: SearchBounds) {
    this.isQuick = bounds !== undefined;
    this.problem = problem;
    this.dimensions = byName(problem.dimensions);
    this.asks = byName(problem.asks);
    this.scale = new FitScale(problem.spec, this.dimensions, this.asks, bounds?.mostKnives);
  }

  /** Whether it has had to stop looking: what it found may not be the last word. */
  get isSpent(): boolean {
    return this.scale.isSpent;
  }

  /**
   * What is asked, for a search: all asks alike; `only` some of them; or one with other limits that may be missed, while the
   * rest has to hold.
   */
  bands(asked: Asked = {}): readonly Band[] {
    return this.asks.map((ask): Band => {
      const { atLeast = Number.NEGATIVE_INFINITY, atMost = Number.POSITIVE_INFINITY, scale } = ask;
      if ("only" in asked && !asked.only.includes(ask)) return NO_BAND;
      if ("ask" in asked && asked.ask === ask) return { low: asked.low / scale, high: asked.high / scale };
      return { low: atLeast / scale, high: atMost / scale, isHard: "ask" in asked || ask.holds === true };
    });
  }

  /**
   * Looks from the drawing first; where the asks are not met from there, from the ends of all ranges too, and last from the best
   * of many places, since a figure that does not move where it stands may well move elsewhere.
   */
  nearest(bands: readonly Band[]): Approach | undefined {
    const { box } = this.scale;
    let best: Approach | undefined;
    const places = [() => box.low.map(() => 0), () => box.low, () => box.high, () => this.bestPlace(bands)];
    for (const placeOf of places) {
      const place = placeOf();
      const model = best?.model.recentred(this.scale.sampled, place, RECENTRED_STEP, box);
      const found = approach(this.scale, bands, place, model, this.isQuick);
      if (found !== undefined && isBetter(found, best)) best = found;
      if (best !== undefined && best.miss <= NO_MISS) break;
    }
    return best;
  }

  /** Of places spread evenly over all ranges the one where the asks are missed least. */
  private bestPlace(bands: readonly Band[]): readonly number[] {
    const { box, dimensions } = this.scale;
    let best: readonly number[] = box.low.map(() => 0);
    let least = Number.POSITIVE_INFINITY;
    for (const shares of spreadPoints(dimensions.length, PLACES)) {
      const place = shares.map((share, i) => {
        const [low, high] = [box.low[i] ?? 0, box.high[i] ?? 0];
        return low + share * (high - low);
      });
      const figures = this.scale.figuresOf(this.scale.sizesAt(place));
      const miss = figures === undefined ? Number.POSITIVE_INFINITY : missOfAll(bands, figures);
      if (miss < least) [best, least] = [place, miss];
    }
    return best;
  }

  /** Looks on from a place that another search came to. */
  onward(bands: readonly Band[], from: Approach): Approach {
    const model = from.model.recentred(this.scale.sampled, from.changes, RECENTRED_STEP, this.scale.box);
    return approach(this.scale, bands, from.changes, model, this.isQuick) ?? from;
  }

  /**
   * Looks on from a place, and where that does not lead to what is wanted looks everywhere: that something cannot be met is never
   * said after a look around alone.
   */
  anywhere(
    bands: readonly Band[],
    from: Approach,
    isEnough: (place: Approach) => boolean = ({ miss }) => miss <= NO_MISS,
  ): Approach {
    const near = this.onward(bands, from);
    if (isEnough(near)) return near;
    const found = this.nearest(bands);
    return found !== undefined && isBetter(found, near) ? found : near;
  }

  /** A knife that can be set at the bench. */
  settled(bands: readonly Band[], near: Approach): FittedKnife | undefined {
    const found = settle(this.scale, bands, near);
    return found === undefined ? undefined : this.knifeOf(found);
  }

  /** The figure of an ask at a place, in its own unit. */
  figureAt({ figures }: Pick<Approach, "figures">, ask: FitAsk): number {
    return (figures[this.asks.indexOf(ask)] ?? Number.NaN) * ask.scale;
  }

  /** Asks that are missed at a place, beyond rounding. */
  missed({ figures }: Pick<Approach, "figures">): readonly FitAsk[] {
    return this.bands().flatMap((band, i) => {
      const ask = this.asks[i];
      return ask !== undefined && missOf(band, figures[i] ?? Number.NaN) > NO_MISS ? [ask] : [];
    });
  }

  /** The same of a knife that was settled. */
  missedBy({ figures }: FittedKnife): readonly FitAsk[] {
    const { asks } = this.problem;
    const inScale = this.asks.map((ask) => (figures[asks.indexOf(ask)] ?? Number.NaN) / ask.scale);
    return this.missed({ figures: inScale });
  }

  figureOf({ figures }: FittedKnife, ask: FitAsk): number {
    return figures[this.problem.asks.indexOf(ask)] ?? Number.NaN;
  }

  /** The greatest miss of any ask at figures in their scales, 0 where all are met: whatever counts more, in a search or here. */
  worstMiss(figures: readonly number[]): number {
    const misses = this.bands().map((band, i) => missOf(band, figures[i] ?? Number.NaN));
    return missFrom(Math.max(0, ...misses));
  }

  private knifeOf({ sizes, changes, figures, fineness }: Settled): FittedKnife {
    const { spec, dimensions, asks } = this.problem;
    return {
      spec: this.scale.vary(spec, sizes),
      dimensions: dimensions.map((dimension): FittedDimension => {
        const found = sizes[this.dimensions.indexOf(dimension)];
        return found === undefined ? { dimension } : { dimension, sizes: found };
      }),
      figures: asks.map((ask) => this.figureAt({ figures }, ask)),
      change: halfSquares(changes),
      miss: this.worstMiss(figures),
      fineness,
    };
  }
}

/** Step of the slopes where a model is taken to another place, as a share of a range. */
const RECENTRED_STEP = 0.05;

/** Places that are looked at where nothing else has led to the asks. */
const PLACES = 48;

/** What is no more than rounding is no miss. */
const missFrom = (miss: number): number => (miss <= NO_MISS ? 0 : miss);
