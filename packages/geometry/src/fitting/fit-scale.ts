import type { KnifeSpec } from "../blade/spec.js";
import type { Box, Sampled } from "../numeric/quadratic-model.js";
import { drawnAt, type FitDimension, sizesAt, withDimension } from "./dimension.js";
import { FigureReader, type FitFigure } from "./figures.js";

/** What is to be asked of a figure, and in what steps a miss of it is counted. */
export interface MeasuredFigure {
  readonly figure: FitFigure;
  /** In the figure's own unit: misses of different figures are compared in these. */
  readonly scale: number;
}

/** Sizes of each dimension; undefined for one that stays as drawn. */
export type Sizes = readonly (readonly number[] | undefined)[];

/**
 * Figures of a knife over the changes of its dimensions. A change is counted from the drawing, in widths of the dimension's own
 * range; figures are counted in their scales. Whatever was measured once is known from then on.
 */
export class FitScale {
  readonly dimensions: readonly FitDimension[];
  readonly box: Box;
  private readonly reader: FigureReader;
  private readonly scales: readonly number[];
  private readonly known = new Map<string, readonly number[] | undefined>();
  private readonly sound = new Map<string, boolean>();
  private readonly most: number;
  private hasRefused = false;

  /**
   * @param most - knives that are measured; from then on there is none but those that are known.
   */
  constructor(
    spec: KnifeSpec,
    dimensions: readonly FitDimension[],
    figures: readonly MeasuredFigure[],
    most = Number.POSITIVE_INFINITY,
  ) {
    this.dimensions = dimensions;
    this.most = most;
    this.reader = new FigureReader(
      spec,
      figures.map(({ figure }) => figure),
    );
    this.scales = figures.map(({ scale }) => scale);
    this.box = {
      low: dimensions.map((each) => this.changeTo(each, each.least)),
      high: dimensions.map((each) => this.changeTo(each, each.most)),
    };
  }

  /** Whether a knife was not measured because enough of them had been. */
  get isSpent(): boolean {
    return this.hasRefused;
  }

  /** The change that leads to a value of a dimension. */
  changeTo(dimension: FitDimension, value: number): number {
    return (value - drawnAt(dimension)) / (dimension.most - dimension.least);
  }

  /** Sizes after changes. */
  sizesAt(changes: readonly number[]): Sizes {
    return this.dimensions.map((each, i) =>
      sizesAt(each, drawnAt(each) + (changes[i] ?? 0) * (each.most - each.least)),
    );
  }

  /** The figures in their scales; of knives that may break rules, for slopes. */
  readonly sampled: Sampled = (changes) => this.measured(this.sizesAt(changes));

  /** The figures of a knife with these sizes, in their scales; undefined where it breaks a rule. */
  figuresOf(sizes: Sizes): readonly number[] | undefined {
    const figures = this.measured(sizes);
    return figures !== undefined && this.isSound(sizes) ? figures : undefined;
  }

  /** The same as it is weighed in the end. */
  weighed(sizes: Sizes): readonly number[] | undefined {
    const values = this.reader.weigh((spec) => this.vary(spec, sizes));
    return values?.map((value, i) => value / (this.scales[i] ?? 1));
  }

  private measured(sizes: Sizes): readonly number[] | undefined {
    const key = keyOf(sizes);
    if (!this.known.has(key)) {
      if (this.known.size >= this.most) {
        this.hasRefused = true;
        return undefined;
      }
      const values = this.reader.read((spec) => this.vary(spec, sizes));
      this.known.set(
        key,
        values?.map((value, i) => value / (this.scales[i] ?? 1)),
      );
    }
    return this.known.get(key);
  }

  private isSound(sizes: Sizes): boolean {
    const key = keyOf(sizes);
    const known = this.sound.get(key) ?? this.reader.isSound((spec) => this.vary(spec, sizes));
    this.sound.set(key, known);
    return known;
  }

  /** A description with the sizes in it. */
  vary(spec: KnifeSpec, sizes: Sizes): KnifeSpec {
    return this.dimensions.reduce((before, each, i) => withDimension(before, each, sizes[i]), spec);
  }
}

const keyOf = (sizes: Sizes): string => sizes.map((values) => values?.join(" ") ?? "-").join(";");
