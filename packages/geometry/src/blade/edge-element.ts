import type { Arc, Cubic, Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";

/** Slack in mm within which a foot just past the end of an element still counts as on it. */
const END_SLACK = 1e-9;

/**
 * One piece of the edge run, as the distance to it is measured: a straight piece (or an endless ray past heel or tip),
 * an arc, a cubic, or a corner point. Curves are monotone in x, so that the distance is monotone along a station
 * wherever this element is the nearest one.
 */
export interface EdgeElement {
  /** Greatest curvature, 1/mm; positive where the edge curls toward the blade. Infinite for no element. */
  readonly maxCurvature: number;
  /**
   * Distance from (x, y) to this element, mm, or infinity where the nearest point is past one of its ends.
   * `hint` is a parameter near which to look first; NaN for a full search. The parameter found is in `foot`.
   */
  distance(x: number, y: number, hint: number): number;
  /** Parameter of the last foot found. */
  foot: number;
  /** Unit normal (toward the blade) and curvature at the last foot. */
  frame(x: number, y: number, out: FootFrame): void;
  /** y, between y0 and y1, at which a point of the station x is v from the element. */
  heightAtDistance(x: number, v: number, y0: number, v0: number, y1: number, v1: number): number;
  /** Radius to the focal point at a foot, as seen from distance v (infinite for straight pieces), mm. */
  focalDistance(v: number): number;
}

export interface FootFrame {
  normalX: number;
  normalY: number;
}

export class StraightElement implements EdgeElement {
  readonly maxCurvature = 0;
  foot = 0;
  readonly origin: Vec2;
  readonly tx: number;
  readonly ty: number;
  readonly from: number;
  readonly to: number;

  /** @param from - least and @param to - greatest parameter (mm along the direction); may be infinite. */
  constructor(origin: Vec2, direction: Vec2, from: number, to: number) {
    this.origin = origin;
    this.tx = direction.x;
    this.ty = direction.y;
    this.from = from;
    this.to = to;
  }

  distance(x: number, y: number): number {
    const dx = x - this.origin.x;
    const dy = y - this.origin.y;
    const u = dx * this.tx + dy * this.ty;
    this.foot = u;
    if (u < this.from - END_SLACK || u > this.to + END_SLACK) return Number.POSITIVE_INFINITY;
    return Math.abs(this.tx * dy - this.ty * dx);
  }

  frame(x: number, y: number, out: FootFrame): void {
    // Seen from below the edge the normal is the other one; inside the outline this is always the left one.
    const side = this.tx * (y - this.origin.y) - this.ty * (x - this.origin.x) < 0 ? -1 : 1;
    out.normalX = -this.ty * side;
    out.normalY = this.tx * side;
  }

  heightAtDistance(_x: number, v: number, y0: number, v0: number, y1: number, v1: number): number {
    return v1 === v0 ? y0 : y0 + ((v - v0) / (v1 - v0)) * (y1 - y0);
  }

  focalDistance(): number {
    return Number.POSITIVE_INFINITY;
  }
}

/** An arc, or with radius 0 a corner of the edge seen from its outer side. */
export class RoundElement implements EdgeElement {
  readonly maxCurvature: number;
  foot = 0;
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  private readonly startX: number;
  private readonly startY: number;
  private readonly endX: number;
  private readonly endY: number;
  private readonly turn: number;
  private readonly slack: number;

  /** @param start - unit direction from the centre to the first point, @param end - to the last; @param turn - ±1, 0: all round. */
  constructor(centre: Vec2, radius: number, start: Vec2, end: Vec2, turn: number) {
    this.cx = centre.x;
    this.cy = centre.y;
    this.radius = radius;
    this.startX = start.x;
    this.startY = start.y;
    this.endX = end.x;
    this.endY = end.y;
    this.turn = turn;
    this.slack = radius > 0 ? END_SLACK / radius : 1;
    this.maxCurvature = turn > 0 ? 1 / radius : turn < 0 ? -1 / radius : 0;
  }

  static ofArc(arc: Arc): RoundElement {
    const a = arc.startAngle;
    const b = a + arc.sweep;
    return new RoundElement(
      arc.centre,
      arc.radius,
      { x: Math.cos(a), y: Math.sin(a) },
      { x: Math.cos(b), y: Math.sin(b) },
      Math.sign(arc.sweep),
    );
  }

  static corner(at: Vec2): RoundElement {
    return new RoundElement(at, 0, { x: 1, y: 0 }, { x: 1, y: 0 }, 0);
  }

  distance(x: number, y: number): number {
    const dx = x - this.cx;
    const dy = y - this.cy;
    const r = Math.sqrt(dx * dx + dy * dy);
    if (this.turn !== 0) {
      const past = r * this.slack;
      if (
        (this.startX * dy - this.startY * dx) * this.turn < -past ||
        (dx * this.endY - dy * this.endX) * this.turn < -past
      ) {
        return Number.POSITIVE_INFINITY;
      }
    }
    this.foot = 0;
    return Math.abs(r - this.radius);
  }

  frame(x: number, y: number, out: FootFrame): void {
    const dx = x - this.cx;
    const dy = y - this.cy;
    const r = Math.sqrt(dx * dx + dy * dy);
    const side = r < this.radius ? -1 : 1;
    out.normalX = r === 0 ? 0 : (side * dx) / r;
    out.normalY = r === 0 ? 1 : (side * dy) / r;
  }

  heightAtDistance(x: number, v: number, y0: number, v0: number, y1: number, v1: number): number {
    const middle = (y0 + y1) / 2;
    const inside = Math.hypot(x - this.cx, middle - this.cy) < this.radius;
    const r = inside ? this.radius - v : this.radius + v;
    const dx = x - this.cx;
    const square = r * r - dx * dx;
    if (square <= 0) return Math.abs(v - v0) < Math.abs(v - v1) ? y0 : y1;
    const y = this.cy + Math.sign(middle - this.cy) * Math.sqrt(square);
    return Math.min(Math.max(y, Math.min(y0, y1)), Math.max(y0, y1));
  }

  focalDistance(v: number): number {
    if (this.turn > 0) return Math.abs(this.radius - v);
    return this.radius + v;
  }
}

const SEEDS = 12;

/** A cubic that is monotone in x. */
export class CubicElement implements EdgeElement {
  readonly maxCurvature: number;
  foot = 0;
  private readonly ax: number;
  private readonly bx: number;
  private readonly cx: number;
  private readonly dx: number;
  private readonly ay: number;
  private readonly by: number;
  private readonly cy: number;
  private readonly dy: number;
  private readonly size: number;
  private readonly seedX = new Float64Array(SEEDS + 1);
  private readonly seedY = new Float64Array(SEEDS + 1);

  constructor(segment: Cubic) {
    const { from, control1, control2, to } = segment;
    this.dx = from.x;
    this.cx = 3 * (control1.x - from.x);
    this.bx = 3 * (control2.x - 2 * control1.x + from.x);
    this.ax = to.x - 3 * control2.x + 3 * control1.x - from.x;
    this.dy = from.y;
    this.cy = 3 * (control1.y - from.y);
    this.by = 3 * (control2.y - 2 * control1.y + from.y);
    this.ay = to.y - 3 * control2.y + 3 * control1.y - from.y;
    this.size = Math.hypot(to.x - from.x, to.y - from.y);
    let max = Number.NEGATIVE_INFINITY;
    const steps = 64;
    for (let i = 0; i <= steps; i++) max = Math.max(max, this.curvature(i / steps));
    // A sampled maximum lies a little low; the use of it (is a focal point near?) is a coarse question.
    this.maxCurvature = max > 0 ? max * 1.05 : max;
    for (let i = 0; i <= SEEDS; i++) {
      const t = i / SEEDS;
      this.seedX[i] = ((this.ax * t + this.bx) * t + this.cx) * t + this.dx;
      this.seedY[i] = ((this.ay * t + this.by) * t + this.cy) * t + this.dy;
    }
  }

  private curvature(t: number): number {
    const x1 = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
    const y1 = (3 * this.ay * t + 2 * this.by) * t + this.cy;
    const x2 = 6 * this.ax * t + 2 * this.bx;
    const y2 = 6 * this.ay * t + 2 * this.by;
    const speed = Math.hypot(x1, y1);
    return speed === 0 ? 0 : (x1 * y2 - y1 * x2) / (speed * speed * speed);
  }

  distance(x: number, y: number, hint: number): number {
    if (hint >= -1e-6 && hint <= 1 + 1e-6) {
      const local = this.nearHint(x, y, hint);
      if (local < Number.POSITIVE_INFINITY) return local;
    }
    let best = Number.POSITIVE_INFINITY;
    let bestFoot = 0;
    let before = Number.POSITIVE_INFINITY;
    let here = this.seedDistance(x, y, 0);
    for (let i = 0; i <= SEEDS; i++) {
      const after = i < SEEDS ? this.seedDistance(x, y, i + 1) : Number.POSITIVE_INFINITY;
      // Between its neighbours a sample that is nearer than both has a least distance.
      if (here <= before && here <= after) {
        const d = this.settle(x, y, i / SEEDS, Math.max(0, (i - 1) / SEEDS), Math.min(1, (i + 1) / SEEDS));
        if (d < best) {
          best = d;
          bestFoot = this.foot;
        }
      }
      before = here;
      here = after;
    }
    this.foot = bestFoot;
    return best;
  }

  private seedDistance(x: number, y: number, i: number): number {
    const dx = (this.seedX[i] as number) - x;
    const dy = (this.seedY[i] as number) - y;
    return dx * dx + dy * dy;
  }

  private g = 0;
  private slope = 0;
  private speed2 = 0;

  /** g = (C(t) − p)·C′(t), its slope, and |C′|². */
  private evaluate(x: number, y: number, t: number): void {
    const px = ((this.ax * t + this.bx) * t + this.cx) * t + this.dx - x;
    const py = ((this.ay * t + this.by) * t + this.cy) * t + this.dy - y;
    const x1 = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
    const y1 = (3 * this.ay * t + 2 * this.by) * t + this.cy;
    this.g = px * x1 + py * y1;
    this.speed2 = x1 * x1 + y1 * y1;
    this.slope = this.speed2 + px * (6 * this.ax * t + 2 * this.bx) + py * (6 * this.ay * t + 2 * this.by);
  }

  /** Newton from a foot close by; infinity where it does not settle at once, so that the full search decides. */
  private nearHint(x: number, y: number, hint: number): number {
    let t = hint;
    for (let pass = 0; pass < 8; pass++) {
      this.evaluate(x, y, t);
      if (this.slope < 0.02 * this.speed2) return Number.POSITIVE_INFINITY;
      const step = this.g / this.slope;
      if (Math.abs(step) > 0.2) return Number.POSITIVE_INFINITY;
      t -= step;
      // The step after one of 1e-8 would be of 1e-16.
      if (Math.abs(step) < 1e-8) {
        this.foot = t;
        return this.distanceAt(x, y, t);
      }
    }
    return Number.POSITIVE_INFINITY;
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
        if (t === from && this.g > 0) return this.pastEnd(x, y, 0);
        if (t === to && this.g < 0) return this.pastEnd(x, y, 1);
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
    if (Math.abs(this.g) > END_SLACK * this.speed2 / this.size + END_SLACK * Math.sqrt(this.speed2)) {
      return Number.POSITIVE_INFINITY;
    }
    this.foot = end;
    return this.distanceAt(x, y, end);
  }

  private distanceAt(x: number, y: number, t: number): number {
    const slack = END_SLACK / this.size;
    if (t < -slack || t > 1 + slack) return Number.POSITIVE_INFINITY;
    const px = ((this.ax * t + this.bx) * t + this.cx) * t + this.dx - x;
    const py = ((this.ay * t + this.by) * t + this.cy) * t + this.dy - y;
    return Math.sqrt(px * px + py * py);
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

  heightAtDistance(x: number, v: number, y0: number, v0: number, y1: number, v1: number): number {
    let low = y0;
    let high = y1;
    let y = y0 + ((v - v0) / (v1 - v0)) * (y1 - y0);
    const rising = v1 > v0;
    let hint = this.foot;
    const frame: FootFrame = { normalX: 0, normalY: 1 };
    for (let pass = 0; pass < 30; pass++) {
      const d = this.distance(x, y, hint);
      if (d === Number.POSITIVE_INFINITY) return y;
      hint = this.foot;
      if (d < v === rising) low = y;
      else high = y;
      this.frame(x, y, frame);
      let next = y - (d - v) / frame.normalY;
      if (!(next > Math.min(low, high) && next < Math.max(low, high))) next = (low + high) / 2;
      const moved = Math.abs(next - y);
      y = next;
      if (moved < 1e-12) break;
    }
    return y;
  }

  focalDistance(v: number): number {
    const kappa = this.curvature(Math.min(1, Math.max(0, this.foot)));
    return kappa === 0 ? Number.POSITIVE_INFINITY : Math.abs(1 / kappa - v);
  }
}

/** Elements of a segment that is monotone in x. */
export function elementOf(segment: Segment): EdgeElement {
  switch (segment.kind) {
    case "line": {
      const dx = segment.to.x - segment.from.x;
      const dy = segment.to.y - segment.from.y;
      const n = Math.hypot(dx, dy);
      return new StraightElement(segment.from, { x: dx / n, y: dy / n }, 0, n);
    }
    case "arc":
      return RoundElement.ofArc(segment);
    case "cubic":
      return new CubicElement(segment);
  }
}
