// Volume integrals of a knife's steel by strips square to x: adaptive Gauss–Kronrod quadrature over stations, each
// station again adaptive between the places where the surface changes its formula. Nothing of it comes from the kernel.
import type { KnifeSpec, Outline } from "@scantling/geometry";
import { K21, missed } from "./kronrod.js";
import { type StripModel, stripModel } from "./model.js";
import { StationSums } from "./station.js";

/** 1, x, y, x², y², z², xy, z, yz, zx over the steel about the heel, mm³ to mm⁵. */
export const COUNT = 10;

export interface StripSums {
  readonly value: Float64Array;
  /** What the strips may have missed, by their own estimate. */
  readonly error: Float64Array;
  /** Sizes that the errors are seen against: the positive integrals themselves, and what bounds the others by them. */
  readonly scale: Float64Array;
  /** Whether two nearest points of the edge meet in a ridge somewhere inside the steel. */
  readonly ridged: boolean;
  readonly stations: number;
  readonly points: number;
}

/** A few stations for a first look. */
const LOOKS = 50;

/** The estimate is made this much larger: on random knives the truth was up to seven times as far off as it said. */
const SAFETY = 8;

/** How far inside its ends, as a share of it, a panel's structure is looked at: they are where it has just changed. */
const ENDS = 1e-3;

/** What a change of structure inside a panel may do, as a share of how much its stations vary. */
const UNCUT = 1e-4;

/** In a panel narrower than this, mm, it does nothing: where rounding alone changes the structure there is no end of it. */
const NARROW = 1e-4;

interface Panel {
  /** Stations that it is mapped between, and the part of 0…1 that it takes of that map. */
  readonly from: number;
  readonly to: number;
  readonly u0: number;
  readonly u1: number;
  readonly value: Float64Array;
  readonly error: Float64Array;
  /** Greatest error against its scale, of the quadrature over stations alone: the stations have their own. */
  readonly worst: number;
  /** Two neighbouring stations with different structure, if there are any. */
  readonly change: readonly [number, number] | undefined;
}

/** @param tolerance - aimed-at error of every integral against its scale */
export function sumStrips(spec: KnifeSpec, outline: Outline, tolerance: number, mostPanels = 400): StripSums {
  return new Strips(stripModel(spec, outline), tolerance).sum(mostPanels);
}

class Strips {
  private readonly model: StripModel;
  private readonly station: StationSums;
  private readonly tolerance: number;
  private stations = 0;
  private scale: Float64Array = new Float64Array(COUNT).fill(1);

  constructor(model: StripModel, tolerance: number) {
    this.model = model;
    this.station = new StationSums(model);
    this.tolerance = tolerance;
  }

  sum(mostPanels: number): StripSums {
    const { breaks } = this.model;
    this.look();
    const panels: Panel[] = [];
    for (let i = 0; i + 1 < breaks.length; i++) {
      panels.push(this.panel(breaks[i] as number, breaks[i + 1] as number, 0, 1));
    }
    while (panels.length < mostPanels) {
      const all = panels.reduce((sum, panel) => sum + panel.worst, 0);
      if (all <= this.tolerance) break;
      panels.sort((a, b) => a.worst - b.worst);
      const worst = panels.pop();
      if (worst === undefined) break;
      panels.push(...this.split(worst));
    }
    const value = total(panels, "value");
    return {
      value,
      error: total(panels, "error").map((e) => SAFETY * e),
      scale: scales(value),
      ridged: this.station.thickness.ridged,
      stations: this.stations,
      points: this.station.thickness.points,
    };
  }

  /** A first look by a few stations, for the sizes of the integrals. */
  private look(): void {
    const { from, to } = this.model;
    const rough = new Float64Array(COUNT);
    for (let k = 0; k < LOOKS; k++) {
      const x = from + ((to - from) * (k + 0.5)) / LOOKS;
      this.station.at(x, 1);
      ratesOf(this.station.sums, x, false).forEach((rate, i) => {
        rough[i] = (rough[i] as number) + (rate * (to - from)) / LOOKS;
      });
    }
    this.scale = scales(rough);
    this.station.holdAgainst(this.scale, to - from);
  }

  private worstOf(error: Float64Array): number {
    let worst = 0;
    for (let i = 0; i < COUNT; i++) worst = Math.max(worst, (error[i] as number) / (this.scale[i] as number));
    return worst;
  }

  /** Where the structure changes, or else in the middle. */
  private split({ from, to, u0, u1, change }: Panel): Panel[] {
    if (change !== undefined) {
      const x = this.locate(...change);
      const a = mapped(from, to, u0);
      const b = mapped(from, to, u1);
      const least = 1e-9 * (b - a);
      if (x - a > least && b - x > least) {
        return [this.panel(a, x, 0, 1), this.panel(x, b, 0, 1)];
      }
    }
    const middle = (u0 + u1) / 2;
    return [this.panel(from, to, u0, middle), this.panel(from, to, middle, u1)];
  }

  /** A place between two stations where the structure stops being that of the first. */
  private locate(a: number, b: number): number {
    let low = a;
    let high = b;
    const first = this.structureAt(a);
    for (let i = 0; i < 60 && high - low > 1e-12 * (this.model.to - this.model.from); i++) {
      const middle = (low + high) / 2;
      if (this.structureAt(middle) === first) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  }

  private structureAt(x: number): number {
    this.station.at(x, 0);
    return this.station.structure;
  }

  private panel(from: number, to: number, u0: number, u1: number): Panel {
    const { nodes, fine: wf, coarse: wc } = K21;
    const { station } = this;
    const fine = new Float64Array(COUNT);
    const coarse = new Float64Array(COUNT);
    const inner = new Float64Array(COUNT);
    const all: Float64Array[] = [];
    const weights: number[] = [];
    let xBefore = mapped(from, to, u0 + (u1 - u0) * ENDS);
    let before = this.structureAt(xBefore);
    let change: readonly [number, number] | undefined;
    for (let k = 0; k < nodes.length; k++) {
      const u = u0 + (u1 - u0) * (nodes[k] as number);
      const x = mapped(from, to, u);
      const stretch = (u1 - u0) * (to - from) * 6 * u * (1 - u);
      station.at(x, this.tolerance / 10);
      this.stations++;
      if (station.structure !== before && change === undefined) change = [xBefore, x];
      before = station.structure;
      xBefore = x;
      const rates = ratesOf(station.sums, x, false);
      const misses = ratesOf(station.errors, x, true);
      for (let i = 0; i < COUNT; i++) {
        const rate = stretch * (rates[i] as number);
        rates[i] = rate;
        fine[i] = (fine[i] as number) + (wf[k] as number) * rate;
        coarse[i] = (coarse[i] as number) + (wc[k] as number) * rate;
        inner[i] = (inner[i] as number) + (wf[k] as number) * stretch * (misses[i] as number);
      }
      all.push(rates);
      weights.push(wf[k] as number);
    }
    const last = mapped(from, to, u1 - (u1 - u0) * ENDS);
    if (change === undefined && this.structureAt(last) !== before) change = [xBefore, last];
    const uncut = last - mapped(from, to, u0) > NARROW ? UNCUT : 0;
    const error = new Float64Array(COUNT);
    for (let i = 0; i < COUNT; i++) {
      const mean = fine[i] as number;
      let variation = 0;
      for (let k = 0; k < all.length; k++) {
        variation += (weights[k] as number) * Math.abs((all[k]?.[i] ?? 0) - mean);
      }
      const gap = Math.abs(mean - (coarse[i] as number));
      // Across a change of structure the two rules may agree by chance: such a panel is to be cut there.
      error[i] = change === undefined ? missed(gap, variation) : Math.max(gap, uncut * variation);
    }
    const worst = this.worstOf(error);
    for (let i = 0; i < COUNT; i++) error[i] = (error[i] as number) + (inner[i] as number);
    return { from, to, u0, u1, value: fine, error, worst, change };
  }
}

/** Nodes gather at both ends of a map, which takes the roots out of what happens there. */
const mapped = (from: number, to: number, u: number): number =>
  u < 0.5 ? from + (to - from) * u * u * (3 - 2 * u) : to - (to - from) * (1 - u) * (1 - u) * (1 + 2 * u);

/** Rates per mm of x of the ten integrals; of errors the sums of their sizes. */
function ratesOf(s: Float64Array, x: number, errors: boolean): Float64Array {
  const at = (i: number): number => s[i] as number;
  const sign = errors ? 1 : -1;
  const far = errors ? Math.abs(x) : x;
  const m = at(0) + at(6);
  const my = at(1) + at(7);
  const z = at(3) + sign * at(9);
  return Float64Array.of(
    m,
    far * m,
    my,
    x * x * m,
    at(2) + at(8),
    at(5) + at(11),
    far * my,
    z,
    at(4) + sign * at(10),
    far * z,
  );
}

function total(panels: readonly Panel[], key: "value" | "error"): Float64Array {
  const sum = new Float64Array(COUNT);
  for (const panel of panels) {
    for (let i = 0; i < COUNT; i++) sum[i] = (sum[i] as number) + (panel[key][i] as number);
  }
  return sum;
}

/** By Schwarz: |∫xy|² ≤ ∫x²·∫y² and so on, so an integral that may be nothing has the size of its bound. */
export function scales(value: Float64Array): Float64Array {
  const [v = 0, , , xx = 0, yy = 0, zz = 0] = value;
  const root = (a: number, b: number): number => Math.sqrt(Math.abs(a * b));
  return Float64Array.of(
    v,
    root(v, xx),
    root(v, yy),
    xx,
    yy,
    Math.abs(zz),
    root(xx, yy),
    root(v, zz),
    root(yy, zz),
    root(xx, zz),
  );
}
