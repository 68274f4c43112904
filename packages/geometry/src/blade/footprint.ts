import { pathBounds } from "../plane/bounds.js";
import { splitAtXExtremes } from "../plane/monotone.js";
import type { Path } from "../plane/path.js";
import { type Cubic, derivativeAt, pointAt, type Segment } from "../plane/segment.js";

/** A piece of the outline that runs one way along x, as a height over x. */
export class BoundaryPiece {
  readonly segment: Segment;
  /** Index of its segment in the outline's path. */
  readonly index: number;
  readonly x0: number;
  readonly x1: number;
  /** Whether the outline stands upright at the lower and at the upper x. */
  readonly uprightAt0: boolean;
  readonly uprightAt1: boolean;
  /** Index of the edge element that this piece is, −1 where it is no edge. */
  edgeElement = -1;
  private readonly forward: boolean;
  private readonly arcSide: number;
  /** Straight pieces: dy/dx, and length of the line over a unit of x. */
  private readonly slope: number;
  private readonly stretch: number;
  /** The station last asked for and the parameter there: height and foot of one station are asked for one after the other. */
  private lastX = Number.NaN;
  private lastT = 0;

  constructor(segment: Segment, index: number) {
    this.segment = segment;
    this.index = index;
    this.forward = segment.to.x >= segment.from.x;
    this.x0 = Math.min(segment.from.x, segment.to.x);
    this.x1 = Math.max(segment.from.x, segment.to.x);
    this.slope = (segment.to.y - segment.from.y) / (segment.to.x - segment.from.x);
    this.stretch = Math.sqrt(1 + this.slope * this.slope);
    const steep = (t: number): boolean => {
      const d = derivativeAt(segment, t);
      return Math.abs(d.x) < 1e-3 * Math.abs(d.y);
    };
    const curved = segment.kind !== "line";
    this.uprightAt0 = curved && steep(this.forward ? 0 : 1);
    this.uprightAt1 = curved && steep(this.forward ? 1 : 0);
    const middle = pointAt(segment, 0.5);
    this.arcSide = segment.kind === "arc" ? Math.sign(middle.y - segment.centre.y) || 1 : 0;
  }

  /** y of the outline at x, mm; x must lie in [x0, x1]. */
  heightAt(x: number): number {
    const s = this.segment;
    if (x === s.from.x) return s.from.y;
    if (x === s.to.x) return s.to.y;
    switch (s.kind) {
      case "line":
        return s.from.y + (x - s.from.x) * this.slope;
      case "arc": {
        const dx = x - s.centre.x;
        return s.centre.y + this.arcSide * Math.sqrt(Math.max(0, s.radius * s.radius - dx * dx));
      }
      case "cubic":
        return cubicHeight(s, this.parameterAt(s, x));
    }
  }

  /** Parameter of the point at x as the edge element counts it, mm along a straight piece, 0 to 1 along a cubic. */
  footAt(x: number): number {
    const s = this.segment;
    switch (s.kind) {
      case "line":
        return Math.abs(x - s.from.x) * this.stretch;
      case "arc":
        return 0;
      case "cubic":
        return this.parameterAt(s, x);
    }
  }

  /** Along the tangent from the last station, or along the chord. */
  private guess(s: Cubic, x: number): number {
    const t = this.lastT;
    const u = 1 - t;
    const slope =
      3 *
      (u * u * (s.control1.x - s.from.x) +
        2 * u * t * (s.control2.x - s.control1.x) +
        t * t * (s.to.x - s.control2.x));
    const guess = t + (x - this.lastX) / slope;
    return guess >= 0 && guess <= 1 ? guess : (x - s.from.x) / (s.to.x - s.from.x);
  }

  private parameterAt(s: Cubic, x: number): number {
    if (x !== this.lastX) {
      this.lastT = cubicParameter(s, x, this.forward, this.guess(s, x));
      this.lastX = x;
    }
    return this.lastT;
  }

  /** dy/dx of the outline at x. */
  slopeAt(x: number): number {
    const s = this.segment;
    switch (s.kind) {
      case "line":
        return this.slope;
      case "arc":
        return -(x - s.centre.x) / (this.heightAt(x) - s.centre.y);
      case "cubic": {
        const d = derivativeAt(s, this.parameterAt(s, x));
        return d.y / d.x;
      }
    }
  }
}

function cubicParameter(s: Cubic, x: number, forward: boolean, guess: number): number {
  const c = 3 * (s.control1.x - s.from.x);
  const b = 3 * (s.control2.x - 2 * s.control1.x + s.from.x);
  const a = s.to.x - 3 * s.control2.x + 3 * s.control1.x - s.from.x;
  let low = 0;
  let high = 1;
  let t = guess;
  for (let pass = 0; pass < 80; pass++) {
    const value = ((a * t + b) * t + c) * t + s.from.x - x;
    if (value === 0) return t;
    if (value < 0 === forward) low = t;
    else high = t;
    const slope = (3 * a * t + 2 * b) * t + c;
    let next = t - value / slope;
    if (!(next > low && next < high)) next = (low + high) / 2;
    const moved = Math.abs(next - t);
    t = next;
    if (moved < 1e-16) break;
    if (moved < 1e-6 && Math.abs(slope) > 1e-3) {
      // Newton doubles its digits: one more step is the last that can change anything.
      t -= (((a * t + b) * t + c) * t + s.from.x - x) / ((3 * a * t + 2 * b) * t + c);
      break;
    }
  }
  return Math.min(1, Math.max(0, t));
}

function cubicHeight(s: Cubic, t: number): number {
  const u = 1 - t;
  return (
    u * u * u * s.from.y + 3 * u * u * t * s.control1.y + 3 * u * t * t * s.control2.y + t * t * t * s.to.y
  );
}

/** Between two x the outline stands over the station in the same pieces: pairs of lower and upper boundary. */
export interface FootprintInterval {
  readonly x0: number;
  readonly x1: number;
  readonly spans: readonly { readonly lower: BoundaryPiece; readonly upper: BoundaryPiece }[];
}

/** A closed outline as a region over x: which of its pieces bound a station from below and above. */
export class Footprint {
  readonly intervals: readonly FootprintInterval[];
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;

  constructor(path: Path) {
    const pieces = path.segments.flatMap((segment, index) =>
      splitAtXExtremes(segment)
        .filter((part) => part.from.x !== part.to.x)
        .map((part) => new BoundaryPiece(part, index)),
    );
    const xs = distinct(pieces.flatMap((piece) => [piece.x0, piece.x1]));
    const intervals: FootprintInterval[] = [];
    for (let i = 0; i + 1 < xs.length; i++) {
      const x0 = xs[i] as number;
      const x1 = xs[i + 1] as number;
      const middle = (x0 + x1) / 2;
      const over = pieces
        .filter((piece) => piece.x0 < middle && piece.x1 > middle)
        .map((piece) => ({ piece, y: piece.heightAt(middle) }))
        .sort((a, b) => a.y - b.y);
      const spans: { lower: BoundaryPiece; upper: BoundaryPiece }[] = [];
      for (let k = 0; k + 1 < over.length; k += 2) {
        spans.push({
          lower: (over[k] as { piece: BoundaryPiece }).piece,
          upper: (over[k + 1] as { piece: BoundaryPiece }).piece,
        });
      }
      intervals.push({ x0, x1, spans });
    }
    this.intervals = intervals;
    this.minX = xs[0] ?? 0;
    this.maxX = xs[xs.length - 1] ?? 0;
    const bounds = pathBounds(path);
    this.minY = bounds.minY;
    this.maxY = bounds.maxY;
  }

  /** The interval over x; at a break the one ahead of it (toward the tip), at the very tip the last. */
  intervalAt(x: number): FootprintInterval | undefined {
    const { intervals } = this;
    let low = 0;
    let high = intervals.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (x >= (intervals[middle] as FootprintInterval).x0) low = middle;
      else high = middle - 1;
    }
    const interval = intervals[low];
    return interval !== undefined && x >= interval.x0 && x <= interval.x1 ? interval : undefined;
  }

  /** Highest point of the outline at x, mm; undefined where there is no steel. */
  topAt(x: number): number | undefined {
    const interval = this.intervalAt(x);
    const span = interval?.spans[interval.spans.length - 1];
    return span?.upper.heightAt(x);
  }

  /** Height of the outline at x, over all its intervals and not over gaps between them, mm. */
  heightAt(x: number): number {
    return this.spansAt(x).reduce((sum, [low, high]) => sum + high - low, 0);
  }

  /** Height intervals of the outline at x, from below, mm. */
  spansAt(x: number): readonly (readonly [number, number])[] {
    const interval = this.intervalAt(x);
    return interval === undefined
      ? []
      : interval.spans.map(({ lower, upper }) => [lower.heightAt(x), upper.heightAt(x)] as const);
  }
}

/** Sorted, with values that differ only by rounding taken as one. */
export function distinct(values: readonly number[]): number[] {
  const sorted = values.slice().sort((a, b) => a - b);
  const kept: number[] = [];
  for (const value of sorted) {
    const last = kept[kept.length - 1];
    if (last === undefined || value - last > 1e-11 * Math.max(1, Math.abs(value))) kept.push(value);
  }
  return kept;
}
