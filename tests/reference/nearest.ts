// Distance to the edge run, the run continued beyond its ends along its end tangents; an end that has turned back, toward
// the heel, is not continued.
import type { Segment, Vec2 } from "@scantling/geometry";
import { bisect, locate, velocity } from "./curve.js";

export interface Nearest {
  readonly distance: number;
  /** Which piece of the run is nearest: −1 before the start, the number of segments beyond the end. */
  readonly piece: number;
}

interface Samples {
  readonly segment: Segment;
  readonly ts: readonly number[];
  readonly points: readonly Vec2[];
}

const SAMPLES = 96;

/** Rounding of a tangent that stands upright. */
const UPRIGHT = 1e-12;

/** Prepares a run once; the returned function finds the nearest point by dense search and refinement. */
export function makeNearest(run: readonly Segment[]): (x: number, y: number) => Nearest {
  const first = run[0];
  const last = run[run.length - 1];
  if (!first || !last) throw new Error("an edge run has at least one segment");
  const sampled: Samples[] = run.map((segment) => {
    const ts = Array.from({ length: SAMPLES + 1 }, (_, i) => i / SAMPLES);
    return { segment, ts, points: ts.map((t) => locate(segment, t)) };
  });
  const start = unitTangent(first, 0);
  const end = unitTangent(last, 1);
  const origin = locate(first, 0);
  const terminus = locate(last, 1);

  return (x, y) => {
    let best: Nearest = { distance: Number.POSITIVE_INFINITY, piece: 0 };
    const offer = (distance: number, piece: number): void => {
      if (distance < best.distance) best = { distance, piece };
    };
    sampled.forEach((samples, index) => {
      offer(distanceToSegment(samples, x, y), index);
    });
    offer(distanceToRay(origin, { x: -start.x, y: -start.y }, x, y), -1);
    if (end.x >= -UPRIGHT) offer(distanceToRay(terminus, end, x, y), run.length);
    return best;
  };
}

function unitTangent(segment: Segment, t: number): Vec2 {
  // A handle of no length gives no direction at the very end: step inward until there is one.
  for (const inset of [0, 1e-9, 1e-6, 1e-3]) {
    const d = velocity(segment, t === 0 ? inset : 1 - inset);
    const n = Math.hypot(d.x, d.y);
    if (n > 1e-9) return { x: d.x / n, y: d.y / n };
  }
  throw new Error("a segment of no length has no tangent");
}

function distanceToRay(from: Vec2, direction: Vec2, x: number, y: number): number {
  const along = (x - from.x) * direction.x + (y - from.y) * direction.y;
  if (along <= 0) return Number.POSITIVE_INFINITY;
  return Math.abs((x - from.x) * direction.y - (y - from.y) * direction.x);
}

function distanceToSegment({ segment, ts, points }: Samples, x: number, y: number): number {
  const gap = (p: Vec2): number => Math.hypot(p.x - x, p.y - y);
  if (segment.kind === "line") {
    const d = velocity(segment, 0);
    const t = ((x - segment.from.x) * d.x + (y - segment.from.y) * d.y) / (d.x * d.x + d.y * d.y);
    return gap(locate(segment, Math.min(1, Math.max(0, t))));
  }
  let best = Math.min(gap(segment.from), gap(segment.to));
  // The foot of the normal is where the derivative of the squared distance goes from falling to rising.
  const slope = (t: number): number => {
    const p = locate(segment, t);
    const d = velocity(segment, t);
    return (p.x - x) * d.x + (p.y - y) * d.y;
  };
  const squared = points.map((p) => (p.x - x) ** 2 + (p.y - y) ** 2);
  for (let i = 0; i < squared.length; i++) {
    const here = squared[i] ?? 0;
    if (here > (squared[i - 1] ?? here) || here > (squared[i + 1] ?? here)) continue;
    const a = ts[Math.max(0, i - 1)] ?? 0;
    const b = ts[Math.min(ts.length - 1, i + 1)] ?? 1;
    if (slope(a) < 0 && slope(b) > 0) best = Math.min(best, gap(locate(segment, refine(slope, a, b))));
  }
  return best;
}

/** Secant steps kept inside a shrinking bracket; ends in plain bisection where they do not help. */
function refine(f: (t: number) => number, a: number, b: number): number {
  let lo = a;
  let hi = b;
  let flo = f(lo);
  let fhi = f(hi);
  for (let i = 0; i < 12; i++) {
    const t = lo - (flo * (hi - lo)) / (fhi - flo);
    const ft = f(t);
    if (ft === 0 || hi - lo < 1e-15) return t;
    if (ft < 0) {
      lo = t;
      flo = ft;
      fhi /= 2; // Illinois rule: keeps the far end from standing still
    } else {
      hi = t;
      fhi = ft;
      flo /= 2;
    }
    if (hi - lo < 1e-12) return lo + (hi - lo) / 2;
  }
  return bisect(f, lo, hi);
}
