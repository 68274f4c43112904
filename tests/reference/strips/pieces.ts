// Pieces of an edge run, each with the distance to its own feet.
import type { Segment, Vec2 } from "@scantling/geometry";

type Arc = Extract<Segment, { kind: "arc" }>;
type Cubic = Extract<Segment, { kind: "cubic" }>;

/** How far past its end, mm, a piece still has feet: the error is of second order, and no gap is left at a joint. */
const SLACK = 1e-9;

export interface Piece {
  /** How fast the distance last asked for grows with y. */
  slope: number;
  /** Upright box that the piece lies in: least and greatest x, then y. */
  readonly box: readonly [number, number, number, number];
  /** Distance to the nearest foot inside the piece, infinite where there is none. */
  distance(x: number, y: number): number;
  /** The same where it is known that there is a foot near the one of the last call. */
  again(x: number, y: number): number;
}

const EVERYWHERE = [
  Number.NEGATIVE_INFINITY,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  Number.POSITIVE_INFINITY,
] as const;

/** A little more than what holds all of the points. */
function boxAround(points: readonly Vec2[]): readonly [number, number, number, number] {
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  return [Math.min(...xs) - SLACK, Math.max(...xs) + SLACK, Math.min(...ys) - SLACK, Math.max(...ys) + SLACK];
}

export class PointPiece implements Piece {
  slope = 1;
  readonly box = EVERYWHERE;
  private readonly at: Vec2;
  constructor(at: Vec2) {
    this.at = at;
  }
  distance(x: number, y: number): number {
    const dx = x - this.at.x;
    const dy = y - this.at.y;
    const d = Math.sqrt(dx * dx + dy * dy);
    this.slope = d === 0 ? 1 : dy / d;
    return d;
  }
  again(x: number, y: number): number {
    return this.distance(x, y);
  }
}

export class StraightPiece implements Piece {
  slope = 1;
  readonly box = EVERYWHERE;
  private readonly px: number;
  private readonly py: number;
  private readonly dx: number;
  private readonly dy: number;
  private readonly from: number;
  private readonly to: number;
  constructor(at: Vec2, direction: Vec2, from: number, to: number) {
    this.px = at.x;
    this.py = at.y;
    this.dx = direction.x;
    this.dy = direction.y;
    this.from = from - SLACK;
    this.to = to + SLACK;
  }
  distance(x: number, y: number): number {
    const along = (x - this.px) * this.dx + (y - this.py) * this.dy;
    return along < this.from || along > this.to ? Number.POSITIVE_INFINITY : this.again(x, y);
  }
  again(x: number, y: number): number {
    const across = (y - this.py) * this.dx - (x - this.px) * this.dy;
    this.slope = across >= 0 ? this.dx : -this.dx;
    return Math.abs(across);
  }
}

export class ArcPiece implements Piece {
  slope = 1;
  readonly box = EVERYWHERE;
  private readonly arc: Arc;
  private readonly startTangent: Vec2;
  private readonly endTangent: Vec2;
  constructor(arc: Arc, startTangent: Vec2, endTangent: Vec2) {
    if (Math.abs(arc.sweep) > Math.PI) throw new Error("an arc of the edge turns half round at most");
    this.arc = arc;
    this.startTangent = startTangent;
    this.endTangent = endTangent;
  }
  distance(x: number, y: number): number {
    const { arc, startTangent: a, endTangent: b } = this;
    if ((x - arc.from.x) * a.x + (y - arc.from.y) * a.y < -SLACK) return Number.POSITIVE_INFINITY;
    if ((x - arc.to.x) * b.x + (y - arc.to.y) * b.y > SLACK) return Number.POSITIVE_INFINITY;
    return this.again(x, y);
  }
  again(x: number, y: number): number {
    const { centre, radius, sweep } = this.arc;
    const dx = x - centre.x;
    const dy = y - centre.y;
    const out = Math.sqrt(dx * dx + dy * dy);
    const gap = out - radius;
    const inside = Math.abs(gap) < 1e-9 ? sweep > 0 : gap < 0;
    this.slope = out === 0 ? 0 : (inside ? -dy : dy) / out;
    return Math.abs(gap);
  }
}

const SAMPLES = 12;

export class CubicPiece implements Piece {
  slope = 1;
  readonly box: readonly [number, number, number, number];
  private t = 0.5;
  private readonly x0: number;
  private readonly y0: number;
  private readonly ax: number;
  private readonly ay: number;
  private readonly bx: number;
  private readonly by: number;
  private readonly cx: number;
  private readonly cy: number;
  /** Whether feet may come in twos, a nearest and a farthest. */
  private readonly tight: boolean;
  private readonly slack: number;
  constructor({ from, control1, control2, to }: Cubic, tight: boolean) {
    this.box = boxAround([from, control1, control2, to]);
    this.x0 = from.x;
    this.y0 = from.y;
    this.cx = 3 * (control1.x - from.x);
    this.cy = 3 * (control1.y - from.y);
    this.bx = 3 * (control2.x - 2 * control1.x + from.x);
    this.by = 3 * (control2.y - 2 * control1.y + from.y);
    this.ax = to.x - 3 * control2.x + 3 * control1.x - from.x;
    this.ay = to.y - 3 * control2.y + 3 * control1.y - from.y;
    this.tight = tight;
    this.slack = SLACK * Math.hypot(to.x - from.x, to.y - from.y);
  }

  /** (C(t) − P)·C′(t): half the slope of the squared distance. */
  private pull(t: number, x: number, y: number): number {
    const ex = ((this.ax * t + this.bx) * t + this.cx) * t + this.x0 - x;
    const ey = ((this.ay * t + this.by) * t + this.cy) * t + this.y0 - y;
    return (
      ex * ((3 * this.ax * t + 2 * this.bx) * t + this.cx) +
      ey * ((3 * this.ay * t + 2 * this.by) * t + this.cy)
    );
  }

  distance(x: number, y: number): number {
    const start = this.pull(0, x, y);
    const end = this.pull(1, x, y);
    if (start <= this.slack && end >= -this.slack) {
      if (this.tight) return this.bracketed(0, 1, x, y);
      if (!(this.t > 0 && this.t < 1)) this.t = 0.5;
      return this.again(x, y);
    }
    if (!this.tight) return Number.POSITIVE_INFINITY;
    let best = Number.POSITIVE_INFINITY;
    let slope = 1;
    let foot = 0;
    let before = start;
    for (let i = 1; i <= SAMPLES; i++) {
      const after = i === SAMPLES ? end : this.pull(i / SAMPLES, x, y);
      let low = (i - 1) / SAMPLES;
      let high = i / SAMPLES;
      let found = before < 0 && after >= 0;
      if (before < 0 === after < 0) {
        // Two feet may lie between two samples: then the pull turns round and passes zero on the way.
        const turn = this.turnOf(low, high, before < 0, x, y);
        if (turn >= 0 && this.pull(turn, x, y) < 0 !== before < 0) {
          found = true;
          if (before < 0) high = turn;
          else low = turn;
        }
      }
      if (found) {
        const d = this.bracketed(low, high, x, y);
        if (d < best) {
          best = d;
          slope = this.slope;
          foot = this.t;
        }
      }
      before = after;
    }
    this.slope = slope;
    this.t = foot;
    return best;
  }

  /** How fast the pull grows. */
  private rate(t: number, x: number, y: number): number {
    const dx = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
    const dy = (3 * this.ay * t + 2 * this.by) * t + this.cy;
    const ex = ((this.ax * t + this.bx) * t + this.cx) * t + this.x0 - x;
    const ey = ((this.ay * t + this.by) * t + this.cy) * t + this.y0 - y;
    return dx * dx + dy * dy + ex * (6 * this.ax * t + 2 * this.bx) + ey * (6 * this.ay * t + 2 * this.by);
  }

  /** Where between two parameters the pull is greatest (least), −1 where it only grows or falls. */
  private turnOf(from: number, to: number, greatest: boolean, x: number, y: number): number {
    const sign = greatest ? 1 : -1;
    if (!(sign * this.rate(from, x, y) > 0 && sign * this.rate(to, x, y) < 0)) return -1;
    let low = from;
    let high = to;
    for (let i = 0; i < 44; i++) {
      const middle = (low + high) / 2;
      if (sign * this.rate(middle, x, y) > 0) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  }

  again(x: number, y: number): number {
    let t = this.t;
    for (let i = 0; i < 12; i++) {
      const dx = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
      const dy = (3 * this.ay * t + 2 * this.by) * t + this.cy;
      const ex = ((this.ax * t + this.bx) * t + this.cx) * t + this.x0 - x;
      const ey = ((this.ay * t + this.by) * t + this.cy) * t + this.y0 - y;
      const rate =
        dx * dx + dy * dy + ex * (6 * this.ax * t + 2 * this.bx) + ey * (6 * this.ay * t + 2 * this.by);
      const next = t - (ex * dx + ey * dy) / rate;
      // Past an end by no more than rounding: the joint's other piece has the foot, and the end is as good.
      if (!(rate > 0) || !(next > -0.3 && next < 1.3)) return this.bracketed(0, 1, x, y);
      const held = Math.min(1, Math.max(0, next));
      const moved = Math.abs(held - t);
      t = held;
      if (moved < 1e-7) break;
      if (i === 11) return this.bracketed(0, 1, x, y);
    }
    return this.settle(t, x, y);
  }

  /** Newton's steps kept inside a bracket in which the distance falls and then grows. */
  private bracketed(from: number, to: number, x: number, y: number): number {
    let low = from;
    let high = to;
    let t = this.t > low && this.t < high ? this.t : (low + high) / 2;
    for (let i = 0; i < 80; i++) {
      const f = this.pull(t, x, y);
      if (f < 0) low = t;
      else high = t;
      let next = t - f / this.rate(t, x, y);
      if (!(next > low && next < high)) next = (low + high) / 2;
      const moved = Math.abs(next - t);
      t = next;
      if (moved < 1e-11) break;
    }
    return this.settle(t, x, y);
  }

  private settle(t: number, x: number, y: number): number {
    this.t = t;
    const ex = x - (((this.ax * t + this.bx) * t + this.cx) * t + this.x0);
    const ey = y - (((this.ay * t + this.by) * t + this.cy) * t + this.y0);
    const dx = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
    const dy = (3 * this.ay * t + 2 * this.by) * t + this.cy;
    const speed = Math.sqrt(dx * dx + dy * dy);
    this.slope = ((dx * ey - dy * ex >= 0 ? 1 : -1) * dx) / (speed || 1);
    return Math.sqrt(ex * ex + ey * ey);
  }
}
