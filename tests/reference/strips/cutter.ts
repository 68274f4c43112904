// Heights at which an outline and its cut-outs cross a station, by closed forms and Newton's steps.
import type { Segment, Vec2 } from "@scantling/geometry";
import { locate, turningPoints } from "../curve.js";

/** A piece of the outline along which x only grows or only falls. */
interface Run {
  readonly segment: Segment;
  readonly t0: number;
  readonly t1: number;
  readonly x0: number;
  readonly x1: number;
  readonly isEdge: boolean;
  /** Arc: whether this piece lies above its centre. */
  readonly upper: boolean;
}

export class Cutter {
  readonly breaks: readonly number[];
  readonly minY: number;
  readonly maxY: number;
  /** Of the last station: heights ascending, and whether the highest belongs to the edge. */
  readonly heights: number[] = [];
  topIsEdge = false;
  private readonly runs: readonly Run[];

  constructor(segments: readonly Segment[], edge: readonly Segment[]) {
    const runs: Run[] = [];
    const breaks = new Set<number>();
    const ys: number[] = [];
    for (const segment of segments) {
      const ts = [0, ...turningPoints(segment), 1];
      for (let i = 0; i + 1 < ts.length; i++) {
        const t0 = ts[i] ?? 0;
        const t1 = ts[i + 1] ?? 1;
        const a = t0 === 0 ? segment.from : locate(segment, t0);
        const b = t1 === 1 ? segment.to : locate(segment, t1);
        breaks.add(a.x).add(b.x);
        ys.push(a.y, b.y, locate(segment, (t0 + t1) / 2).y);
        const middle = locate(segment, (t0 + t1) / 2);
        const upper = segment.kind === "arc" && middle.y > segment.centre.y;
        if (a.x !== b.x)
          runs.push({ segment, t0, t1, x0: a.x, x1: b.x, isEdge: edge.includes(segment), upper });
      }
    }
    this.runs = runs;
    this.breaks = [...breaks].sort((a, b) => a - b);
    this.minY = Math.min(...ys);
    this.maxY = Math.max(...ys);
  }

  cut(x: number): readonly number[] {
    const { heights } = this;
    heights.length = 0;
    let top = Number.NEGATIVE_INFINITY;
    for (const run of this.runs) {
      if (x < Math.min(run.x0, run.x1) || x >= Math.max(run.x0, run.x1)) continue;
      const y = heightOn(run, x);
      heights.push(y);
      if (y > top) {
        top = y;
        this.topIsEdge = run.isEdge;
      }
    }
    return heights.sort((a, b) => a - b);
  }
}

function heightOn({ segment, t0, t1, x0, x1, upper }: Run, x: number): number {
  if (segment.kind === "line") {
    const { from, to } = segment;
    // From the nearer end: no digits are lost there.
    return Math.abs(x - from.x) < Math.abs(x - to.x)
      ? from.y + ((x - from.x) / (to.x - from.x)) * (to.y - from.y)
      : to.y + ((x - to.x) / (from.x - to.x)) * (from.y - to.y);
  }
  if (segment.kind === "arc") {
    const { centre, radius } = segment;
    const dx = x - centre.x;
    const rise = Math.sqrt(Math.max(0, (radius - dx) * (radius + dx)));
    return centre.y + (upper ? rise : -rise);
  }
  const { from, control1, control2, to } = segment;
  const c = 3 * (control1.x - from.x);
  const b = 3 * (control2.x - 2 * control1.x + from.x);
  const a = to.x - 3 * control2.x + 3 * control1.x - from.x;
  const rising = x1 > x0;
  let low = t0;
  let high = t1;
  let t = t0 + ((x - x0) / (x1 - x0)) * (t1 - t0);
  for (let i = 0; i < 100; i++) {
    const f = ((a * t + b) * t + c) * t + from.x - x;
    if (f === 0) break;
    if (f < 0 === rising) low = t;
    else high = t;
    let next = t - f / ((3 * a * t + 2 * b) * t + c);
    if (!(next > low && next < high)) next = (low + high) / 2;
    const moved = Math.abs(next - t);
    t = next;
    if (moved < 1e-16) break;
  }
  const u = 1 - t;
  return u * u * u * from.y + 3 * u * u * t * control1.y + 3 * u * t * t * control2.y + t * t * t * to.y;
}

/** Everything within `radius` of a straight line between two points: a hole, a slot, the plan of a groove. */
export class Stadium {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly radius: number;
  readonly length: number;
  /** Unit vector from one end to the other. */
  readonly along: Vec2;
  /** x at which its outline stands upright or changes from straight to round. */
  readonly breaks: readonly number[];
  constructor(from: Vec2, to: Vec2, radius: number) {
    this.from = from;
    this.to = to;
    this.radius = radius;
    this.length = Math.hypot(to.x - from.x, to.y - from.y);
    const u =
      this.length > 0
        ? { x: (to.x - from.x) / this.length, y: (to.y - from.y) / this.length }
        : { x: 1, y: 0 };
    this.along = u;
    const ends = [from, to].flatMap(({ x }) => [x - radius, x + radius, x - radius * u.y, x + radius * u.y]);
    this.breaks = this.length > 0 ? ends : ends.slice(0, 2);
  }

  /** Lower and upper height at a station, undefined where it is not met. */
  span(x: number): readonly [number, number] | undefined {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    const { radius: r, along: u } = this;
    for (const c of [this.from, this.to]) {
      const dx = x - c.x;
      if (Math.abs(dx) >= r) continue;
      const half = Math.sqrt((r - dx) * (r + dx));
      low = Math.min(low, c.y - half);
      high = Math.max(high, c.y + half);
    }
    if (this.length > 0 && u.x !== 0) {
      for (const side of [-r, r]) {
        // The straight side at this distance from the middle line.
        const s = (x - this.from.x + side * u.y) / u.x;
        if (s < 0 || s > this.length) continue;
        const y = this.from.y + s * u.y + side * u.x;
        low = Math.min(low, y);
        high = Math.max(high, y);
      }
    }
    return high > low ? [low, high] : undefined;
  }

  /** Distance of a point from the middle line. */
  offset(x: number, y: number): number {
    const { from, along: u } = this;
    const rx = x - from.x;
    const ry = y - from.y;
    const s = rx * u.x + ry * u.y;
    if (s > 0 && s < this.length) return Math.abs(ry * u.x - rx * u.y);
    const end = s <= 0 ? from : this.to;
    return Math.hypot(x - end.x, y - end.y);
  }

  /** Heights at a station where the middle line's nearest point begins to be an end. */
  turns(x: number): number[] {
    const { along: u } = this;
    if (this.length === 0 || Math.abs(u.y) < 1e-12) return [];
    return [this.from, this.to].map((c) => c.y - ((x - c.x) * u.x) / u.y);
  }
}
