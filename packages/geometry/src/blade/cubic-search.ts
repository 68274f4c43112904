import type { Cubic } from "../plane/segment.js";
import { CubicCurve } from "./cubic-curve.js";
import { END_SLACK } from "./edge-element.js";

/** Points of the curve that are tried first, less one. */
const SEEDS = 12;
const FINE = 30;

/** Share of |C′|² below which the slope at a foot says that the curve's centre of curvature is close by. */
const NEAR_FOCAL = 0.2;

/** The nearest point of a cubic, from nothing known: between even seeds every least distance is settled. */
export class CubicSearch extends CubicCurve {
  foot = 0;
  private readonly seedX = new Float64Array(SEEDS + 1);
  private readonly seedY = new Float64Array(SEEDS + 1);
  private readonly seedDX = new Float64Array(SEEDS + 1);
  private readonly seedDY = new Float64Array(SEEDS + 1);

  constructor(segment: Cubic) {
    super(segment);
    for (let i = 0; i <= SEEDS; i++) {
      const t = i / SEEDS;
      this.seedX[i] = ((this.ax * t + this.bx) * t + this.cx) * t + this.dx;
      this.seedY[i] = ((this.ay * t + this.by) * t + this.cy) * t + this.dy;
      this.seedDX[i] = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
      this.seedDY[i] = (3 * this.ay * t + 2 * this.by) * t + this.cy;
    }
  }

  /** The least distance from (x, y), looked for all along the curve; the parameter found is in `foot`. */
  protected search(x: number, y: number): number {
    let best = Number.POSITIVE_INFINITY;
    let bestFoot = 0;
    const take = (d: number): void => {
      if (d >= best) return;
      best = d;
      bestFoot = this.foot;
    };
    let before = this.seedSlope(x, y, 0);
    let bendBefore = this.seedBend(x, y, 0);
    if (before > 0) take(this.pastEnd(x, y, 0));
    for (let i = 1; i <= SEEDS; i++) {
      const after = this.seedSlope(x, y, i);
      const bend = this.seedBend(x, y, i);
      const from = (i - 1) / SEEDS;
      const to = i / SEEDS;
      if (before <= 0 && after > 0) {
        // The distance stops falling and grows: there is a least one between.
        take(this.settle(x, y, from + before / (before - after) / SEEDS, from, to));
        if (this.slope < NEAR_FOCAL * this.speed2) this.searchFinely(x, y, i, take);
      } else if (before > 0 ? after > 0 && bendBefore < 0 && bend > 0 : bendBefore > 0 && bend < 0) {
        // The slope turns back on its way, perhaps past zero: beyond a focal point feet come in close pairs.
        const turn = this.turnOfSlope(x, y, from, to);
        this.evaluate(x, y, turn);
        if (before > 0 && this.g < 0) take(this.settle(x, y, (turn + to) / 2, turn, to));
        if (before <= 0 && this.g > 0) take(this.settle(x, y, (from + turn) / 2, from, turn));
      }
      before = after;
      bendBefore = bend;
    }
    if (before <= 0) take(this.pastEnd(x, y, 1));
    this.foot = bestFoot;
    return best;
  }

  /** (C − p)·C′ at a seed: below 0 where the distance falls along the curve. */
  private seedSlope(x: number, y: number, i: number): number {
    return (
      ((this.seedX[i] as number) - x) * (this.seedDX[i] as number) +
      ((this.seedY[i] as number) - y) * (this.seedDY[i] as number)
    );
  }

  /** Derivative of that slope by the parameter, at a seed. */
  private seedBend(x: number, y: number, i: number): number {
    const dx = this.seedDX[i] as number;
    const dy = this.seedDY[i] as number;
    const t = i / SEEDS;
    return (
      dx * dx +
      dy * dy +
      ((this.seedX[i] as number) - x) * (6 * this.ax * t + 2 * this.bx) +
      ((this.seedY[i] as number) - y) * (6 * this.ay * t + 2 * this.by)
    );
  }

  /** Near a focal point several least distances may lie between two seeds; looks at each, from seed i − 2 to i + 1. */
  private searchFinely(x: number, y: number, i: number, take: (d: number) => void): void {
    const from = Math.max(0, (i - 2) / SEEDS);
    const step = (Math.min(1, (i + 1) / SEEDS) - from) / FINE;
    this.evaluate(x, y, from);
    let before = this.g;
    for (let k = 1; k <= FINE; k++) {
      const t = from + k * step;
      this.evaluate(x, y, t);
      const after = this.g;
      if (before <= 0 && after > 0) take(this.settle(x, y, t - step / 2, t - step, t));
      before = after;
    }
  }

  /** Parameter between two seeds at which the slope is greatest or least. */
  private turnOfSlope(x: number, y: number, from: number, to: number): number {
    let low = from;
    let high = to;
    this.evaluate(x, y, from);
    const rising = this.slope > 0;
    for (let pass = 0; pass < 30; pass++) {
      const t = (low + high) / 2;
      this.evaluate(x, y, t);
      if (this.slope > 0 === rising) low = t;
      else high = t;
    }
    return (low + high) / 2;
  }

  /** Newton held inside a bracket that has a least distance in it. */
  private settle(x: number, y: number, start: number, from: number, to: number): number {
    let low = from;
    let high = to;
    let t = start;
    for (let pass = 0; pass < 80; pass++) {
      this.evaluate(x, y, t);
      if (this.g === 0) break;
      if (this.g < 0) low = t;
      else high = t;
      let next = t - this.g / this.slope;
      if (!(this.slope > 0 && next >= low && next <= high)) {
        next = (low + high) / 2;
      }
      const moved = Math.abs(next - t);
      t = next;
      if (moved < 4e-16 || high - low < 4e-16) break;
    }
    this.foot = t;
    return this.distanceAt(x, y, t);
  }

  /** The least distance lies past this end: counted only within the slack. */
  private pastEnd(x: number, y: number, end: 0 | 1): number {
    this.evaluate(x, y, end);
    if (Math.abs(this.g) > (END_SLACK * this.speed2) / this.size + END_SLACK * Math.sqrt(this.speed2)) {
      return Number.POSITIVE_INFINITY;
    }
    this.foot = end;
    return this.distanceAt(x, y, end);
  }
}
