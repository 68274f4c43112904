/** Values of several functions at a point; undefined where they have none. */
export type Sampled = (point: readonly number[]) => readonly number[] | undefined;

/** Ends of a range of each variable. */
export interface Box {
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** Times that a step is halved towards a centre where there is no value at its end. */
const MOST_HALVINGS = 6;

/**
 * Several functions of the same variables near a point, each as a quadratic: value, slopes and bends.
 *
 * @example
 * const model = QuadraticModel.around(([x = 0, y = 0]) => [x * x + x * y], [1, 1], 0.1, { low: [0, 0], high: [2, 2] });
 * model?.valueAt(0, [2, 2]); // 8
 */
export class QuadraticModel {
  readonly centre: readonly number[];
  readonly values: readonly number[];
  /** Of each function, by each variable, at the centre. */
  readonly slopes: readonly (readonly number[])[];
  /** Second derivatives of each function. */
  readonly bends: readonly (readonly (readonly number[])[])[];

  private constructor(
    centre: readonly number[],
    values: readonly number[],
    slopes: readonly (readonly number[])[],
    bends: readonly (readonly (readonly number[])[])[],
  ) {
    this.centre = centre;
    this.values = values;
    this.slopes = slopes;
    this.bends = bends;
  }

  /**
   * Takes the functions at a centre, at two steps along each variable and at one along each two of them: the quadratic through
   * all these points. Steps stay inside the box.
   *
   * @returns undefined where there is no value at the centre, or none near it.
   */
  static around(
    sample: Sampled,
    centre: readonly number[],
    step: number,
    box: Box,
  ): QuadraticModel | undefined {
    const values = sample(centre);
    if (values === undefined) return undefined;
    const lines = centre.map((_, i) => sampleLine(sample, centre, i, step, box));
    const known = lines.filter((line) => line !== undefined);
    if (known.length < lines.length) return undefined;
    const slopes: number[][] = values.map(() => []);
    const bends: number[][][] = values.map(() => centre.map(() => centre.map(() => 0)));
    for (const [i, line] of known.entries()) {
      for (const [f, value] of values.entries()) {
        const [slope, bend] = parabola(line, value, f);
        (slopes[f] as number[])[i] = slope;
        put(bends, f, i, i, bend);
      }
    }
    for (const [i, first] of known.entries()) {
      for (const [j, second] of known.slice(0, i).entries()) {
        const [a, b] = [first.near.step, second.near.step];
        const both = sample(moved(moved(centre, i, a), j, b));
        if (both === undefined) continue;
        for (const [f, value] of values.entries()) {
          const bend =
            ((both[f] ?? 0) - (first.near.values[f] ?? 0) - (second.near.values[f] ?? 0) + value) / (a * b);
          put(bends, f, i, j, bend);
          put(bends, f, j, i, bend);
        }
      }
    }
    return new QuadraticModel(centre, values, slopes, bends);
  }

  /**
   * The same bends around another centre, with value and slopes taken anew.
   *
   * @returns undefined as in `around`.
   */
  recentred(sample: Sampled, centre: readonly number[], step: number, box: Box): QuadraticModel | undefined {
    const values = sample(centre);
    if (values === undefined) return undefined;
    const slopes: number[][] = values.map(() => []);
    for (const i of centre.keys()) {
      const near = nearSample(sample, centre, i, inward(centre, i, step, box));
      if (near === undefined) return undefined;
      for (const [f, value] of values.entries()) {
        const bend = this.bends[f]?.[i]?.[i] ?? 0;
        (slopes[f] as number[])[i] = ((near.values[f] ?? 0) - value) / near.step - (bend * near.step) / 2;
      }
    }
    return new QuadraticModel(centre, values, slopes, this.bends);
  }

  valueAt(f: number, point: readonly number[]): number {
    const slopes = this.slopes[f] ?? [];
    const bends = this.bends[f] ?? [];
    let value = this.values[f] ?? 0;
    for (const [i, c] of this.centre.entries()) {
      const by = (point[i] ?? 0) - c;
      let half = 0;
      for (const [j, other] of this.centre.entries())
        half += (bends[i]?.[j] ?? 0) * ((point[j] ?? 0) - other);
      value += by * ((slopes[i] ?? 0) + half / 2);
    }
    return value;
  }

  slopesAt(f: number, point: readonly number[]): number[] {
    const bends = this.bends[f] ?? [];
    return this.centre.map((_, i) =>
      this.centre.reduce(
        (slope, c, j) => slope + (bends[i]?.[j] ?? 0) * ((point[j] ?? 0) - c),
        this.slopes[f]?.[i] ?? 0,
      ),
    );
  }
}

interface Sample {
  readonly step: number;
  readonly values: readonly number[];
}

interface SampledLine {
  readonly near: Sample;
  readonly other: Sample;
}

const moved = (point: readonly number[], i: number, by: number): number[] =>
  point.map((value, k) => (k === i ? value + by : value));

function put(bends: number[][][], f: number, i: number, j: number, value: number): void {
  const row = bends[f]?.[i];
  if (row !== undefined) row[j] = value;
}

/** A step toward the inside of the box, no longer than there is room for. */
function inward(centre: readonly number[], i: number, step: number, { low, high }: Box): number {
  const here = centre[i] ?? 0;
  const [down, up] = [here - (low[i] ?? here), (high[i] ?? here) - here];
  return up >= Math.min(step, down) ? Math.min(step, up) : -Math.min(step, down);
}

function nearSample(sample: Sampled, centre: readonly number[], i: number, step: number): Sample | undefined {
  for (let halved = step, pass = 0; pass < MOST_HALVINGS; halved /= 2, pass++) {
    const values = sample(moved(centre, i, halved));
    if (values !== undefined) return { step: halved, values };
  }
  return undefined;
}

function sampleLine(
  sample: Sampled,
  centre: readonly number[],
  i: number,
  step: number,
  box: Box,
): SampledLine | undefined {
  const first = inward(centre, i, step, box);
  const near = nearSample(sample, centre, i, first);
  if (near === undefined) return undefined;
  const here = centre[i] ?? 0;
  const hasRoom = here - near.step >= (box.low[i] ?? here) && here - near.step <= (box.high[i] ?? here);
  const other = nearSample(sample, centre, i, hasRoom ? -near.step : near.step / 2);
  return other === undefined ? undefined : { near, other };
}

/** Slope and second derivative of the parabola through the centre and the two samples of a line. */
function parabola({ near, other }: SampledLine, value: number, f: number): readonly [number, number] {
  const a = ((near.values[f] ?? 0) - value) / near.step;
  const b = ((other.values[f] ?? 0) - value) / other.step;
  const bend = (2 * (a - b)) / (near.step - other.step);
  return [a - (bend * near.step) / 2, bend];
}
