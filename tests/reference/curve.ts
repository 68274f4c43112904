// Curves of the reference: written apart from the geometry package on purpose, so that the two can disagree.
import type { Segment, Vec2 } from "@scantling/geometry";

/** Point of a segment at its own parameter, 0 to 1. */
export function locate(segment: Segment, t: number): Vec2 {
  if (segment.kind === "line") return mix(segment.from, segment.to, t);
  if (segment.kind === "arc") {
    const angle = segment.startAngle + t * segment.sweep;
    return {
      x: segment.centre.x + segment.radius * Math.cos(angle),
      y: segment.centre.y + segment.radius * Math.sin(angle),
    };
  }
  // De Casteljau
  const a = mix(segment.from, segment.control1, t);
  const b = mix(segment.control1, segment.control2, t);
  const c = mix(segment.control2, segment.to, t);
  return mix(mix(a, b, t), mix(b, c, t), t);
}

function mix(p: Vec2, q: Vec2, t: number): Vec2 {
  return { x: (1 - t) * p.x + t * q.x, y: (1 - t) * p.y + t * q.y };
}

/** Derivative by the parameter. */
export function velocity(segment: Segment, t: number): Vec2 {
  if (segment.kind === "line") return { x: segment.to.x - segment.from.x, y: segment.to.y - segment.from.y };
  if (segment.kind === "arc") {
    const angle = segment.startAngle + t * segment.sweep;
    const speed = segment.radius * segment.sweep;
    return { x: -speed * Math.sin(angle), y: speed * Math.cos(angle) };
  }
  const a = mix(segment.from, segment.control1, t);
  const b = mix(segment.control1, segment.control2, t);
  const c = mix(segment.control2, segment.to, t);
  const p = mix(a, b, t);
  const q = mix(b, c, t);
  return { x: 3 * (q.x - p.x), y: 3 * (q.y - p.y) };
}

/** Root of f between a and b, where f changes sign: bisection until the interval no longer shrinks. */
export function bisect(f: (t: number) => number, a: number, b: number): number {
  let lo = a;
  let hi = b;
  const rising = f(lo) < 0;
  for (let i = 0; i < 200; i++) {
    const mid = lo + (hi - lo) / 2;
    if (mid <= lo || mid >= hi) break;
    if (f(mid) < 0 === rising) lo = mid;
    else hi = mid;
  }
  return lo + (hi - lo) / 2;
}

/** Parameters between 0 and 1 where x stands still, ascending. */
export function turningPoints(segment: Segment): number[] {
  if (segment.kind === "line") return [];
  const count = 400;
  const found: number[] = [];
  for (let i = 0; i < count; i++) {
    const a = i / count;
    const b = (i + 1) / count;
    const va = velocity(segment, a).x;
    const vb = velocity(segment, b).x;
    if ((va < 0 && vb > 0) || (va > 0 && vb < 0)) found.push(bisect((t) => velocity(segment, t).x, a, b));
    else if (vb === 0 && i + 1 < count) found.push(b);
  }
  return found;
}

/** A piece of a segment along which x only grows or only falls. */
interface MonotonePiece {
  readonly segment: Segment;
  readonly index: number;
  readonly t0: number;
  readonly t1: number;
  readonly x0: number;
  readonly x1: number;
}

/** Where the outline crosses a station. */
export interface Crossing {
  readonly y: number;
  /** Which of the outline's segments it is. */
  readonly segment: number;
}

/** A closed outline that can be cut at any x. */
export class Slicer {
  readonly breaks: readonly number[];
  private readonly pieces: readonly MonotonePiece[];

  constructor(segments: readonly Segment[]) {
    const pieces: MonotonePiece[] = [];
    const breaks = new Set<number>();
    for (const [index, segment] of segments.entries()) {
      const ts = [0, ...turningPoints(segment), 1];
      for (let i = 0; i + 1 < ts.length; i++) {
        const t0 = ts[i] ?? 0;
        const t1 = ts[i + 1] ?? 1;
        const x0 = locate(segment, t0).x;
        const x1 = locate(segment, t1).x;
        breaks.add(x0);
        breaks.add(x1);
        if (x0 !== x1) pieces.push({ segment, index, t0, t1, x0, x1 });
      }
    }
    this.pieces = pieces;
    this.breaks = [...breaks].sort((a, b) => a - b);
  }

  /** y of every crossing of the outline with the station x, ascending. */
  crossings(x: number): number[] {
    return this.crossed(x).map(({ y }) => y);
  }

  /** The same crossings with their segments. */
  crossed(x: number): Crossing[] {
    const found: Crossing[] = [];
    for (const { segment, index, t0, t1, x0, x1 } of this.pieces) {
      // Half-open in x, so that a joint counts once.
      if (x < Math.min(x0, x1) || x >= Math.max(x0, x1)) continue;
      const t =
        segment.kind === "line" ? (x - x0) / (x1 - x0) : bisect((u) => locate(segment, u).x - x, t0, t1);
      found.push({ y: locate(segment, t).y, segment: index });
    }
    return found.sort((a, b) => a.y - b.y);
  }
}
