import { gaussRule } from "../numeric/gauss.js";
import { parametersAtX } from "../plane/at-x.js";
import type { Path } from "../plane/path.js";
import { derivativeAt, pointAt, type Segment } from "../plane/segment.js";
import { MOMENTS, type Moments } from "./moments.js";
import type { Cutout } from "./steel-body.js";

/** Thickness as a function of x, with the places where it is not smooth. */
export interface Thickness {
  thicknessAt(x: number): number;
  readonly breaks: readonly number[];
}

/**
 * Integrals of a flat piece whose thickness depends on x alone, by Green's theorem along its outline:
 * ∬ f dA = −∮ F dx with F = ∫ f dy. The integrand is polynomial on lines and cubics, so the Gauss rule is exact there;
 * on arcs it is exact to rounding.
 */
export function slabMoments(path: Path, thickness: Thickness): Moments {
  const value = new Float64Array(MOMENTS);
  const scale = new Float64Array(MOMENTS);
  const breaks = thickness.breaks;
  for (const segment of path.segments) {
    const cuts = [0, 1];
    for (const x of breaks) {
      for (const t of parametersAtX(segment, x)) if (t > 1e-14 && t < 1 - 1e-14) cuts.push(t);
    }
    if (segment.kind === "arc" && Math.abs(segment.sweep) > 1.6) {
      const parts = Math.ceil(Math.abs(segment.sweep) / 1.6);
      for (let i = 1; i < parts; i++) cuts.push(i / parts);
    }
    cuts.sort((a, b) => a - b);
    for (let i = 0; i + 1 < cuts.length; i++) {
      addAlong(segment, cuts[i] as number, cuts[i + 1] as number, thickness, value, scale);
    }
  }
  return { value, error: scale.map((s) => 2e-15 * s) };
}

function addAlong(
  segment: Segment,
  t0: number,
  t1: number,
  thickness: Thickness,
  value: Float64Array,
  scale: Float64Array,
): void {
  if (t1 <= t0) return;
  if (segment.kind === "line" && segment.from.x === segment.to.x) return;
  const { nodes, weights } = gaussRule(segment.kind === "line" ? 7 : 17);
  for (let i = 0; i < nodes.length; i++) {
    const t = t0 + (t1 - t0) * (nodes[i] as number);
    const { x, y } = pointAt(segment, t);
    const dx = -derivativeAt(segment, t).x * (t1 - t0) * (weights[i] as number);
    const th = thickness.thicknessAt(x);
    add(value, scale, 0, th * y * dx);
    add(value, scale, 1, th * x * y * dx);
    add(value, scale, 2, (th * y * y * dx) / 2);
    add(value, scale, 3, th * x * x * y * dx);
    add(value, scale, 4, (th * y * y * y * dx) / 3);
    add(value, scale, 5, (th * th * th * y * dx) / 12);
    add(value, scale, 6, (th * x * y * y * dx) / 2);
  }
}

function add(value: Float64Array, scale: Float64Array, i: number, term: number): void {
  value[i] = (value[i] as number) + term;
  scale[i] = (scale[i] as number) + Math.abs(term);
}

/** Integrals of a round cut-out through a piece whose thickness depends on x alone; strips in the angle, exact to rounding. */
export function discMoments({ centre, radius }: Cutout, thickness: Thickness): Moments {
  const value = new Float64Array(MOMENTS);
  const scale = new Float64Array(MOMENTS);
  const cuts = [-Math.PI / 2];
  const inside = thickness.breaks
    .filter((x) => Math.abs(x - centre.x) < radius)
    .map((x) => Math.asin((x - centre.x) / radius))
    .sort((a, b) => a - b);
  cuts.push(...inside, Math.PI / 2);
  const { nodes, weights } = gaussRule(14);
  for (let k = 0; k + 1 < cuts.length; k++) {
    const from = cuts[k] as number;
    const width = (cuts[k + 1] as number) - from;
    if (width <= 0) continue;
    for (let i = 0; i < nodes.length; i++) {
      const angle = from + width * (nodes[i] as number);
      const x = centre.x + radius * Math.sin(angle);
      const half = radius * Math.cos(angle);
      const area = 2 * half * half * width * (weights[i] as number);
      const th = thickness.thicknessAt(x);
      const y = centre.y;
      add(value, scale, 0, th * area);
      add(value, scale, 1, th * x * area);
      add(value, scale, 2, th * y * area);
      add(value, scale, 3, th * x * x * area);
      add(value, scale, 4, th * (y * y + (half * half) / 3) * area);
      add(value, scale, 5, ((th * th * th) / 12) * area);
      add(value, scale, 6, th * x * y * area);
    }
  }
  return { value, error: scale.map((s) => 2e-15 * s) };
}
