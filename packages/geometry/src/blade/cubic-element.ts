import type { Cubic } from "../plane/segment.js";
import { CubicSearch } from "./cubic-search.js";
import type { EdgeElement, FootFrame } from "./edge-element.js";

/** Least share of the normal that must point along x for its crossing with a station to keep its digits. */
const LEAN = 0.02;

/** A cubic that is monotone in x. */
export class CubicElement extends CubicSearch implements EdgeElement {
  readonly maxCurvature: number;
  readonly minCurvature: number;
  readonly footAtStart = 0;
  readonly footAtEnd = 1;

  constructor(segment: Cubic) {
    super(segment);
    let max = Number.NEGATIVE_INFINITY;
    let min = Number.POSITIVE_INFINITY;
    const steps = 32;
    for (let i = 0; i <= steps; i++) {
      const kappa = this.curvature(i / steps);
      max = Math.max(max, kappa);
      min = Math.min(min, kappa);
    }
    this.minCurvature = min;
    // A sampled maximum lies a little low; the use of it (is a focal point near?) is a coarse question.
    this.maxCurvature = max > 0 ? max * 1.05 : max;
  }

  distance(x: number, y: number, hint: number): number {
    return this.distanceNear(x, y, hint, false);
  }

  distanceInside(x: number, y: number, hint: number): number {
    return this.distanceNear(x, y, hint, true);
  }

  /** @param roughly - the distance is wanted to its last digits, the foot only so far as that takes it. */
  private distanceNear(x: number, y: number, hint: number, roughly: boolean): number {
    if (hint >= -1e-6 && hint <= 1 + 1e-6) {
      const local = this.nearHint(x, y, hint, roughly);
      if (local < Number.POSITIVE_INFINITY) return local;
    }
    return this.search(x, y);
  }

  /** Share of the unit normal at t that points along x. */
  private lean(t: number): number {
    const x1 = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
    const y1 = (3 * this.ay * t + 2 * this.by) * t + this.cy;
    return y1 / Math.sqrt(x1 * x1 + y1 * y1);
  }

  /**
   * How near the stretch from ta to tb comes to a place where the curve is level and {@link stand} fails: its length over
   * the way that is left to there. Infinite where it is no use at all.
   */
  levelRatio(ta: number, tb: number): number {
    const a = this.lean(ta);
    const b = this.lean(tb);
    const least = Math.min(Math.abs(a), Math.abs(b));
    return a * b > 0 && least > LEAN ? Math.abs(a - b) / least : Number.POSITIVE_INFINITY;
  }

  /** Height of the point of the last {@link stand}, its distance from the edge, and how the height goes with t. */
  standY = 0;
  standV = 0;
  standSlope = 0;

  /**
   * The point of station x whose nearest point on the curve is at t: where the normal from there meets the station. No
   * search is needed, the other way round than {@link distance}.
   */
  stand(x: number, t: number): void {
    const x2 = 6 * this.ax * t + 2 * this.bx;
    const y2 = 6 * this.ay * t + 2 * this.by;
    const x1 = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
    const y1 = (3 * this.ay * t + 2 * this.by) * t + this.cy;
    const ahead = ((this.ax * t + this.bx) * t + this.cx) * t + this.dx - x;
    const square = x1 * x1 + y1 * y1;
    const over = 1 / y1;
    this.standY = ((this.ay * t + this.by) * t + this.cy) * t + this.dy + ahead * x1 * over;
    this.standV = Math.abs(ahead * over) * Math.sqrt(square);
    this.standSlope = (square + ahead * (x2 - x1 * y2 * over)) * over;
  }

  /** Newton from a foot close by; infinity where it does not settle at once, so that the full search decides. */
  private nearHint(x: number, y: number, hint: number, roughly: boolean): number {
    let t = hint;
    for (let pass = 0; pass < 8; pass++) {
      this.evaluate(x, y, t);
      if (this.slope < 0.02 * this.speed2) return Number.POSITIVE_INFINITY;
      const step = this.g / this.slope;
      if (Math.abs(step) > 0.2) return Number.POSITIVE_INFINITY;
      t -= step;
      // The step after one of 1e-8 would be of 1e-16.
      if (Math.abs(step) < (roughly ? 1e-3 : 1e-8)) {
        const d = this.distanceAt(x, y, t);
        // What is left of the parameter is of the size of the step's square, and the distance feels only the square of that.
        const left = (3 * this.speed2 * step * step) / this.slope;
        if (left * left * this.slope <= 1e-15 * d * d || Math.abs(step) < 1e-8) {
          this.foot = t;
          return d;
        }
      }
    }
    return Number.POSITIVE_INFINITY;
  }

  frame(x: number, y: number, out: FootFrame): void {
    const t = this.foot;
    const x1 = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
    const y1 = (3 * this.ay * t + 2 * this.by) * t + this.cy;
    const speed = Math.hypot(x1, y1);
    const px = x - (((this.ax * t + this.bx) * t + this.cx) * t + this.dx);
    const py = y - (((this.ay * t + this.by) * t + this.cy) * t + this.dy);
    const side = x1 * py - y1 * px < 0 ? -1 : 1;
    out.normalX = (-y1 / speed) * side;
    out.normalY = (x1 / speed) * side;
  }

  /** y component of the unit normal at the last foot, on the side of (x, y). */
  private normalY(x: number, y: number): number {
    const t = this.foot;
    const x1 = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
    const y1 = (3 * this.ay * t + 2 * this.by) * t + this.cy;
    const px = x - (((this.ax * t + this.bx) * t + this.cx) * t + this.dx);
    const py = y - (((this.ay * t + this.by) * t + this.cy) * t + this.dy);
    return ((x1 * py - y1 * px < 0 ? -1 : 1) * x1) / Math.sqrt(x1 * x1 + y1 * y1);
  }

  heightAtDistance(
    x: number,
    v: number,
    y0: number,
    v0: number,
    y1: number,
    v1: number,
    footAt1: number,
  ): number {
    const y = this.onOffset(x, v, (v - v0) / (v1 - v0), footAt1);
    if (y >= Math.min(y0, y1) && y <= Math.max(y0, y1)) return y;
    return this.searchHeight(x, v, y0, v0, y1, v1);
  }

  /**
   * y at which the curve moved v to its left stands over x, the foot being between the last one found and `footAt1`. There x
   * grows with the parameter wherever v is less than the radius of curvature, so that the place is the only one.
   *
   * @returns NaN where that is not sure or not found at once.
   */
  private onOffset(x: number, v: number, share: number, footAt1: number): number {
    if (!(this.maxCurvature * v < 0.98)) return Number.NaN;
    const from = Math.min(this.foot, footAt1) - 1e-9;
    const to = Math.max(this.foot, footAt1) + 1e-9;
    let t = this.foot + (footAt1 - this.foot) * share;
    for (let pass = 0; pass < 8; pass++) {
      const x1 = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
      const y1 = (3 * this.ay * t + 2 * this.by) * t + this.cy;
      const bend = x1 * (6 * this.ay * t + 2 * this.by) - y1 * (6 * this.ax * t + 2 * this.bx);
      const square = x1 * x1 + y1 * y1;
      const overSpeed = 1 / Math.sqrt(square);
      const gap = ((this.ax * t + this.bx) * t + this.cx) * t + this.dx - v * y1 * overSpeed - x;
      const step = gap / (x1 * (1 - (v * bend * overSpeed) / square));
      t -= step;
      if (!(t >= from && t <= to)) return Number.NaN;
      if (Math.abs(step) < 1e-8) {
        this.foot = t;
        const dx = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
        const dy = (3 * this.ay * t + 2 * this.by) * t + this.cy;
        return (
          ((this.ay * t + this.by) * t + this.cy) * t + this.dy + (v * dx) / Math.sqrt(dx * dx + dy * dy)
        );
      }
    }
    return Number.NaN;
  }

  private searchHeight(x: number, v: number, y0: number, v0: number, y1: number, v1: number): number {
    let low = y0;
    let high = y1;
    let y = y0 + ((v - v0) / (v1 - v0)) * (y1 - y0);
    const rising = v1 > v0;
    let hint = this.foot;
    for (let pass = 0; pass < 30; pass++) {
      const d = this.distance(x, y, hint);
      if (d === Number.POSITIVE_INFINITY) return y;
      hint = this.foot;
      if (d < v === rising) low = y;
      else high = y;
      let next = y - (d - v) / this.normalY(x, y);
      if (!(next > Math.min(low, high) && next < Math.max(low, high))) next = (low + high) / 2;
      const moved = Math.abs(next - y);
      y = next;
      if (moved < 1e-12) break;
    }
    return y;
  }

  focalDistance(va: number, vb: number): number {
    const kappa = this.curvature(Math.min(1, Math.max(0, this.foot)));
    if (kappa === 0) return Number.POSITIVE_INFINITY;
    const radius = 1 / kappa;
    return Math.min(Math.abs(radius - va), Math.abs(radius - vb));
  }
}
