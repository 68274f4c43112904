// Laws along the blade: one value everywhere, or values at stations, straight or shape-preserving between them.
import type { LawSpec, StationSpec } from "@scantling/geometry";

export interface Law {
  at(s: number): number;
  /** Where the law or one of its slopes may break. */
  readonly breaks: readonly number[];
}

/**
 * @param place - turns a station's place into the coordinate that the law is evaluated at
 * @param smooth - shape-preserving cubics (Fritsch and Butland 1984; end slopes by the limited three-point formula of
 *   Fritsch and Carlson 1980), else straight lines
 */
export function makeLaw(spec: LawSpec, place: (station: StationSpec) => number, smooth: boolean): Law {
  if (typeof spec === "number") return { at: () => spec, breaks: [] };
  const knots = spec.map((station) => ({ s: place(station), v: station.is })).sort((p, q) => p.s - q.s);
  const s = knots.map((k) => k.s);
  const v = knots.map((k) => k.v);
  const slopes = smooth && s.length > 2 ? monotoneSlopes(s, v) : undefined;
  const at = (x: number): number => {
    const n = s.length;
    if (x <= num(s, 0)) return num(v, 0);
    if (x >= num(s, n - 1)) return num(v, n - 1);
    let i = 0;
    while (x > num(s, i + 1)) i++;
    const h = num(s, i + 1) - num(s, i);
    const u = (x - num(s, i)) / h;
    if (!slopes) return num(v, i) * (1 - u) + num(v, i + 1) * u;
    const w = 1 - u;
    return (
      num(v, i) * w * w * (1 + 2 * u) +
      num(v, i + 1) * u * u * (3 - 2 * u) +
      h * u * w * (num(slopes, i) * w - num(slopes, i + 1) * u)
    );
  };
  return { at, breaks: s };
}

function num(values: readonly number[], index: number): number {
  const value = values[index];
  if (value === undefined) throw new Error(`no value at ${index}`);
  return value;
}

function monotoneSlopes(s: readonly number[], v: readonly number[]): number[] {
  const h = s.slice(1).map((x, i) => x - num(s, i));
  const d = v.slice(1).map((y, i) => (y - num(v, i)) / num(h, i));
  const n = s.length;
  return s.map((_, k) => {
    if (k === 0) return endSlope(num(h, 0), num(h, 1), num(d, 0), num(d, 1));
    if (k === n - 1) return endSlope(num(h, n - 2), num(h, n - 3), num(d, n - 2), num(d, n - 3));
    const before = num(d, k - 1);
    const after = num(d, k);
    if (before * after <= 0) return 0;
    const w1 = 2 * num(h, k) + num(h, k - 1);
    const w2 = num(h, k) + 2 * num(h, k - 1);
    return (w1 + w2) / (w1 / before + w2 / after);
  });
}

function endSlope(h0: number, h1: number, d0: number, d1: number): number {
  const slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (slope * d0 <= 0) return 0;
  return d0 * d1 < 0 && Math.abs(slope) > 3 * Math.abs(d0) ? 3 * d0 : slope;
}
