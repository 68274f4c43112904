// A cubic that bends tightly is cut where its curvature turns, so that each part has one nearest point at most.
import type { Segment, Vec2 } from "@scantling/geometry";
import { bisect, locate } from "../curve.js";
import { bendsWithin, curvature } from "./bends.js";

type Arc = Extract<Segment, { kind: "arc" }>;
type Cubic = Extract<Segment, { kind: "cubic" }>;

/**
 * Along a part whose curvature only grows or only falls, and which turns less than half round, a point has at most two feet:
 * its evolute has no cusp there. One of the two is the farther one.
 */
export function cubicParts(cubic: Cubic, reach: number): Cubic[] {
  if (!bendsWithin(cubic, reach)) return [cubic];
  const count = 400;
  const cuts = [0];
  const growth = (t: number): number => curvature(cubic, t + 1e-5) - curvature(cubic, t - 1e-5);
  for (let i = 1; i + 1 < count; i++) {
    const a = i / count;
    const b = (i + 1) / count;
    if (growth(a) < 0 !== growth(b) < 0) cuts.push(bisect(growth, a, b));
    if (curvature(cubic, a) < 0 !== curvature(cubic, b) < 0) {
      cuts.push(bisect((t) => curvature(cubic, t), a, b));
    }
  }
  cuts.push(1);
  cuts.sort((a, b) => a - b);
  const kept = cuts.filter((t, i) => i === 0 || t - (cuts[i - 1] ?? 0) > 1e-3);
  kept[kept.length - 1] = 1;
  return kept.slice(1).map((t, i) => between(cubic, kept[i] ?? 0, t));
}

/** The part of a cubic between two parameters, by blossoms. */
function between(cubic: Cubic, a: number, b: number): Cubic {
  const blossom = (r: number, s: number, t: number): Vec2 => {
    const { from, control1, control2, to } = cubic;
    const p = mix(from, control1, r);
    const q = mix(control1, control2, r);
    const w = mix(control2, to, r);
    return mix(mix(p, q, s), mix(q, w, s), t);
  };
  return {
    kind: "cubic",
    from: a === 0 ? cubic.from : blossom(a, a, a),
    control1: blossom(a, a, b),
    control2: blossom(a, b, b),
    to: b === 1 ? cubic.to : blossom(b, b, b),
  };
}

const mix = (p: Vec2, q: Vec2, t: number): Vec2 => ({
  x: (1 - t) * p.x + t * q.x,
  y: (1 - t) * p.y + t * q.y,
});

/** An arc that turns half round or nearly, in two. */
export function arcParts(arc: Arc): Arc[] {
  if (Math.abs(arc.sweep) < 2.8) return [arc];
  const middle = locate(arc, 0.5);
  const sweep = arc.sweep / 2;
  return [
    { ...arc, to: middle, sweep },
    { ...arc, from: middle, startAngle: arc.startAngle + sweep, sweep },
  ];
}
