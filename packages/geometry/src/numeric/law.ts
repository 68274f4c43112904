import { invariant } from "../errors/errors.js";

/** A station of a law: a place on the axis and the value there. */
export interface LawPoint {
  readonly at: number;
  readonly is: number;
}

/**
 * A quantity along an axis, given at stations: a constant, straight between stations, or a monotone cubic
 * (shape-preserving Hermite). Outside the first and last station the end value holds.
 */
export class Law {
  readonly points: readonly LawPoint[];
  /** Slopes at the stations; undefined for straight laws. */
  private readonly slopes: readonly number[] | undefined;
  private readonly constant: boolean;
  /** Places where the law is not smooth. */
  readonly breaks: readonly number[];
  /** Places and values once more: laws are asked for millions of values. */
  private readonly at: Float64Array;
  private readonly is: Float64Array;

  private constructor(points: readonly LawPoint[], slopes: readonly number[] | undefined) {
    this.points = points;
    this.slopes = slopes;
    this.at = Float64Array.from(points, (point) => point.at);
    this.is = Float64Array.from(points, (point) => point.is);
    const first = points[0];
    invariant(first !== undefined, "a law has at least one station");
    this.constant = points.every((point) => point.is === first.is);
    this.breaks = this.constant ? [] : points.map((point) => point.at);
  }

  static constant(value: number): Law {
    return new Law([{ at: 0, is: value }], undefined);
  }

  /** Straight between stations. Stations need not be sorted; two at one place are a step there. */
  static straight(points: readonly LawPoint[]): Law {
    return new Law(
      [...points].sort((a, b) => a.at - b.at),
      undefined,
    );
  }

  /**
   * Monotone cubic between stations: no overshoot between any two of them.
   *
   * Source: F. N. Fritsch, J. Butland, "A method for constructing local monotone piecewise cubic interpolants",
   * SIAM J. Sci. Stat. Comput. 5 (1984): weighted harmonic mean of the neighbouring slopes inside, limited
   * three-point slopes at the ends.
   */
  static smooth(points: readonly LawPoint[]): Law {
    const sorted = [...points].sort((a, b) => a.at - b.at);
    return new Law(sorted, sorted.length < 3 ? undefined : monotoneSlopes(sorted));
  }

  /** Value at x. */
  valueAt(x: number): number {
    const { at, is } = this;
    const last = at.length - 1;
    if (this.constant || x <= (at[0] as number)) return is[0] as number;
    if (x >= (at[last] as number)) return is[last] as number;
    let i = 0;
    while (i < last - 1 && x > (at[i + 1] as number)) i++;
    const from = at[i] as number;
    const value = is[i] as number;
    const delta = (is[i + 1] as number) - value;
    const h = (at[i + 1] as number) - from;
    const u = (x - from) / h;
    if (this.slopes === undefined) return value + delta * u;
    const p = this.slopes[i] as number;
    const q = this.slopes[i + 1] as number;
    return value + u * (h * p + u * (3 * delta - h * (2 * p + q) + u * (h * (p + q) - 2 * delta)));
  }

  /** First derivative at x; 0 outside the stations. */
  slopeAt(x: number): number {
    const points = this.points;
    const count = points.length;
    const first = points[0] as LawPoint;
    const last = points[count - 1] as LawPoint;
    if (this.constant || x < first.at || x > last.at) return 0;
    let i = 0;
    while (i < count - 2 && x > (points[i + 1] as LawPoint).at) i++;
    const a = points[i] as LawPoint;
    const b = points[i + 1] as LawPoint;
    const h = b.at - a.at;
    if (h === 0) return 0;
    const delta = b.is - a.is;
    if (this.slopes === undefined) return delta / h;
    const u = (x - a.at) / h;
    const p = this.slopes[i] as number;
    const q = this.slopes[i + 1] as number;
    return (h * p + u * (2 * (3 * delta - h * (2 * p + q)) + u * 3 * (h * (p + q) - 2 * delta))) / h;
  }

  /** Whether the law is straight between its breaks. */
  get isStraight(): boolean {
    return this.constant || this.slopes === undefined;
  }

  /** Greatest and least station value; a law never leaves this range. */
  get range(): { readonly min: number; readonly max: number } {
    const values = this.points.map((point) => point.is);
    return { min: Math.min(...values), max: Math.max(...values) };
  }

  /** The larger of the law and a least value, at every place. */
  atLeast(least: number): Law {
    const points: LawPoint[] = [];
    const slopes: number[] = [];
    const add = (at: number, is: number, slope: number): void => {
      points.push({ at, is });
      slopes.push(slope);
    };
    this.points.forEach((point, i) => {
      const before = this.points[i - 1];
      if (before !== undefined && before.is < least !== point.is < least && before.at < point.at) {
        const at = this.placeOf(least, before, point);
        const slope = this.slopeAt(at);
        // Twice: level on one side of the place, the law's own slope on the other.
        add(at, least, before.is < least ? 0 : slope);
        add(at, least, before.is < least ? slope : 0);
      }
      add(point.at, Math.max(point.is, least), point.is < least ? 0 : (this.slopes?.[i] ?? 0));
    });
    return new Law(points, this.slopes === undefined ? undefined : slopes);
  }

  /** Where the law passes a value between two neighbouring stations on either side of it. */
  private placeOf(value: number, before: LawPoint, after: LawPoint): number {
    if (this.slopes === undefined) {
      return before.at + ((value - before.is) / (after.is - before.is)) * (after.at - before.at);
    }
    let low = before.at;
    let high = after.at;
    for (let pass = 0; pass < 60; pass++) {
      const at = (low + high) / 2;
      if (this.valueAt(at) < value === before.is < value) low = at;
      else high = at;
    }
    return (low + high) / 2;
  }

  /** The same law with every value changed. */
  map(change: (value: number) => number): Law {
    const points = this.points.map((point) => ({ at: point.at, is: change(point.is) }));
    return this.slopes === undefined ? new Law(points, undefined) : Law.smooth(points);
  }
}

function monotoneSlopes(points: readonly LawPoint[]): number[] {
  const n = points.length;
  const h: number[] = [];
  const secant: number[] = [];
  for (let i = 0; i < n - 1; i++) {
    const a = points[i] as LawPoint;
    const b = points[i + 1] as LawPoint;
    h.push(b.at - a.at);
    secant.push((b.is - a.is) / (b.at - a.at));
  }
  const slopes: number[] = [
    endSlope(h[0] as number, h[1] as number, secant[0] as number, secant[1] as number),
  ];
  for (let i = 1; i < n - 1; i++) {
    const s0 = secant[i - 1] as number;
    const s1 = secant[i] as number;
    if (s0 * s1 <= 0) {
      slopes.push(0);
      continue;
    }
    const w0 = 2 * (h[i] as number) + (h[i - 1] as number);
    const w1 = (h[i] as number) + 2 * (h[i - 1] as number);
    slopes.push((w0 + w1) / (w0 / s0 + w1 / s1));
  }
  slopes.push(
    endSlope(h[n - 2] as number, h[n - 3] as number, secant[n - 2] as number, secant[n - 3] as number),
  );
  return slopes;
}

/** Three-point slope at an end, limited so that the first interval keeps its shape. */
function endSlope(h0: number, h1: number, s0: number, s1: number): number {
  const slope = ((2 * h0 + h1) * s0 - h0 * s1) / (h0 + h1);
  if (slope * s0 <= 0) return 0;
  if (s0 * s1 <= 0 && Math.abs(slope) > 3 * Math.abs(s0)) return 3 * s0;
  return slope;
}
