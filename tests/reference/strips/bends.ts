// How segments turn.
import type { Segment, Vec2 } from "@scantling/geometry";
import { velocity } from "../curve.js";

/** Unit tangent of a segment at one of its ends; a handle of no length gives none, so a little inside it. */
export function unit(segment: Segment, t: 0 | 1): Vec2 {
  for (const inset of [0, 1e-9, 1e-6, 1e-3]) {
    const d = velocity(segment, t === 0 ? inset : 1 - inset);
    const n = Math.hypot(d.x, d.y);
    if (n > 1e-9) return { x: d.x / n, y: d.y / n };
  }
  throw new Error("a segment of no length has no tangent");
}

/** Curvature toward the left of a segment at t, 1/mm. */
export function curvature(segment: Segment, t: number): number {
  if (segment.kind === "line") return 0;
  if (segment.kind === "arc") return Math.sign(segment.sweep) / segment.radius;
  const d = velocity(segment, t);
  const step = 1e-4;
  const a = velocity(segment, Math.max(0, t - step));
  const b = velocity(segment, Math.min(1, t + step));
  const width = Math.min(1, t + step) - Math.max(0, t - step);
  // The derivative of a cubic's velocity is linear: a difference gives it without error, but for its place at the ends.
  return (d.x * (b.y - a.y) - d.y * (b.x - a.x)) / width / Math.hypot(d.x, d.y) ** 3;
}

/** Whether a centre of curvature lies within reach on the steel's side. */
export function bendsWithin(segment: Segment, reach: number): boolean {
  for (let i = 0; i <= 64; i++) if (curvature(segment, i / 64) * reach > 0.9) return true;
  return false;
}

/** Whether the segment runs toward the heel anywhere. */
export function leansBack(segment: Segment): boolean {
  for (let i = 0; i <= 32; i++) if (velocity(segment, i / 32).x < -1e-9) return true;
  return false;
}

/** Whether the run bends away from the steel anywhere: its parts may then look at each other. */
export function turnsBothWays(parts: readonly Segment[]): boolean {
  let left = false;
  let right = false;
  for (const part of parts) {
    for (let i = 0; i <= 16; i++) {
      const k = curvature(part, i / 16);
      if (k > 1e-9) left = true;
      if (k < -1e-9) right = true;
    }
  }
  return left && right;
}
