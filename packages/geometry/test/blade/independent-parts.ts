import type { LawSpec, StationSpec } from "../../src/blade/spec.js";
import type { Segment } from "../../src/plane/segment.js";

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Point and derivative of a segment at its own parameter. */
export function along(s: Segment, t: number): { readonly p: Point; readonly d: Point } {
  if (s.kind === "line") {
    const d = { x: s.to.x - s.from.x, y: s.to.y - s.from.y };
    return { p: { x: s.from.x + t * d.x, y: s.from.y + t * d.y }, d };
  }
  if (s.kind === "arc") {
    const a = s.startAngle + t * s.sweep;
    return {
      p: { x: s.centre.x + s.radius * Math.cos(a), y: s.centre.y + s.radius * Math.sin(a) },
      d: { x: -s.radius * s.sweep * Math.sin(a), y: s.radius * s.sweep * Math.cos(a) },
    };
  }
  const u = 1 - t;
  const mix = (k: "x" | "y"): number =>
    u ** 3 * s.from[k] + 3 * u * u * t * s.control1[k] + 3 * u * t * t * s.control2[k] + t ** 3 * s.to[k];
  const slope = (k: "x" | "y"): number =>
    3 * u * u * (s.control1[k] - s.from[k]) +
    6 * u * t * (s.control2[k] - s.control1[k]) +
    3 * t * t * (s.to[k] - s.control2[k]);
  return { p: { x: mix("x"), y: mix("y") }, d: { x: slope("x"), y: slope("y") } };
}

export function halving(f: (t: number) => number, a: number, b: number, passes = 52): number {
  let low = a;
  let high = b;
  const sign = Math.sign(f(a));
  for (let i = 0; i < passes; i++) {
    const middle = (low + high) / 2;
    if (Math.sign(f(middle)) === sign) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export interface Foot {
  readonly distance: number;
  /** Index of the piece of the run; −1 and the run's length are the prolongations. */
  readonly piece: number;
}

type Candidate = (x: number, y: number) => number;

/** Distance to a run that goes on past its ends along its end tangents: every candidate is looked at. */
export function distanceField(run: readonly Segment[], grid = 24): (x: number, y: number) => Foot {
  const first = run[0] as Segment;
  const last = run[run.length - 1] as Segment;
  const start = along(first, 0);
  const end = along(last, 1);
  const candidates: readonly (readonly [number, Candidate])[] = [
    ...run.map((s, i) => [i, s.kind === "line" ? toStraight(s.from, s.to, 1) : toCurve(s, grid)] as const),
    [
      -1,
      toStraight(start.p, { x: start.p.x - start.d.x, y: start.p.y - start.d.y }, Number.POSITIVE_INFINITY),
    ],
    [run.length, toStraight(end.p, { x: end.p.x + end.d.x, y: end.p.y + end.d.y }, Number.POSITIVE_INFINITY)],
  ];
  return (x, y) => {
    let distance = Number.POSITIVE_INFINITY;
    let piece = 0;
    for (const [index, candidate] of candidates) {
      const d = candidate(x, y);
      if (d < distance) {
        distance = d;
        piece = index;
      }
    }
    return { distance, piece };
  };
}

function toStraight(from: Point, to: Point, most: number): Candidate {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return (x, y) => {
    const t = ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy);
    const held = Math.min(most, Math.max(0, t));
    return Math.hypot(from.x + held * dx - x, from.y + held * dy - y);
  };
}

/** Arc or cubic: every sample after which the distance stops falling and grows starts a search. */
function toCurve(s: Segment, grid: number): Candidate {
  const f = slopeOfSquare(s);
  return (x, y) => {
    let best = Math.min(Math.hypot(s.from.x - x, s.from.y - y), Math.hypot(s.to.x - x, s.to.y - y));
    let before = f(0, x, y);
    for (let i = 1; i <= grid; i++) {
      const after = f(i / grid, x, y);
      if (before < 0 && after >= 0) {
        const { p } = along(
          s,
          refine((t) => f(t, x, y), (i - 1) / grid, i / grid),
        );
        best = Math.min(best, Math.hypot(p.x - x, p.y - y));
      }
      before = after;
    }
    return best;
  };
}

/** (C(t) − p)·C′(t). */
function slopeOfSquare(s: Segment): (t: number, x: number, y: number) => number {
  if (s.kind !== "cubic") {
    return (t, x, y) => {
      const { p, d } = along(s, t);
      return (p.x - x) * d.x + (p.y - y) * d.y;
    };
  }
  const power = (k: "x" | "y"): readonly [number, number, number, number] => {
    const [p0, p1, p2, p3] = [s.from[k], s.control1[k], s.control2[k], s.to[k]];
    return [p0, 3 * (p1 - p0), 3 * (p2 - 2 * p1 + p0), p3 - 3 * p2 + 3 * p1 - p0];
  };
  const [x0, x1, x2, x3] = power("x");
  const [y0, y1, y2, y3] = power("y");
  return (t, x, y) =>
    (((x3 * t + x2) * t + x1) * t + x0 - x) * ((3 * x3 * t + 2 * x2) * t + x1) +
    (((y3 * t + y2) * t + y1) * t + y0 - y) * ((3 * y3 * t + 2 * y2) * t + y1);
}

/** False position with halving (Illinois), to the last digits. */
export function refine(f: (t: number) => number, a: number, b: number): number {
  let low = a;
  let high = b;
  let flow = f(a);
  let fhigh = f(b);
  let t = low;
  for (let i = 0; i < 60 && high - low > 1e-14; i++) {
    const next = low - (flow * (high - low)) / (fhigh - flow);
    if (Math.abs(next - t) < 1e-13) return next;
    t = next;
    const ft = f(t);
    if (ft === 0) return t;
    if (ft < 0) {
      low = t;
      flow = ft;
      fhigh /= 2;
    } else {
      high = t;
      fhigh = ft;
      flow /= 2;
    }
  }
  return (low + high) / 2;
}

export type Fn = (x: number) => number;

/** A law of the file as a function of mm; `smooth` is the shape-preserving cubic of the model. */
export function lawFunction(spec: LawSpec, place: (s: StationSpec) => number, smooth: boolean): Fn {
  if (typeof spec === "number") return () => spec;
  const knots = spec.map((s) => ({ x: place(s), y: s.is })).sort((p, q) => p.x - q.x);
  const n = knots.length;
  const X = knots.map((k) => k.x);
  const Y = knots.map((k) => k.y);
  const at = (list: readonly number[], i: number): number => list[i] as number;
  const h = (i: number): number => at(X, i + 1) - at(X, i);
  const d = (i: number): number => (at(Y, i + 1) - at(Y, i)) / h(i);
  const slope = (i: number): number => {
    if (i > 0 && i < n - 1) {
      if (d(i - 1) * d(i) <= 0) return 0;
      const w1 = 2 * h(i) + h(i - 1);
      const w2 = h(i) + 2 * h(i - 1);
      return (w1 + w2) / (w1 / d(i - 1) + w2 / d(i));
    }
    const [near, far] = i === 0 ? [0, 1] : [n - 2, n - 3];
    const s = ((2 * h(near) + h(far)) * d(near) - h(near) * d(far)) / (h(near) + h(far));
    if (s * d(near) <= 0) return 0;
    return d(near) * d(far) <= 0 && Math.abs(s) > 3 * Math.abs(d(near)) ? 3 * d(near) : s;
  };
  return (x) => {
    if (x <= at(X, 0)) return at(Y, 0);
    if (x >= at(X, n - 1)) return at(Y, n - 1);
    let i = 0;
    while (x > at(X, i + 1)) i++;
    const u = (x - at(X, i)) / h(i);
    if (!smooth || n < 3) return at(Y, i) * (1 - u) + at(Y, i + 1) * u;
    const w = 1 - u;
    return (
      at(Y, i) * w * w * (1 + 2 * u) +
      at(Y, i + 1) * u * u * (3 - 2 * u) +
      h(i) * u * w * (slope(i) * w - slope(i + 1) * u)
    );
  };
}
