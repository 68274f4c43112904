import { gaussRule } from "../numeric/gauss.js";
import { MOMENTS, type Moments } from "./moments.js";
import { roundingOf, type Thickness } from "./slab-moments.js";
import type { Cutout } from "./steel-body.js";

/**
 * Integrals of round cut-outs through a piece whose thickness depends on x alone: in closed form where it is straight over
 * the disc, else in strips by the angle, exact to rounding.
 */
export function discMoments(discs: readonly Cutout[], thickness: Thickness): Moments {
  const value = new Float64Array(MOMENTS);
  const scale = new Float64Array(MOMENTS);
  const { breaks, isStraight } = thickness;
  for (const disc of discs) {
    const { centre, radius } = disc;
    const isBroken = breaks.some((x) => Math.abs(x - centre.x) < radius);
    if (isStraight === true && !isBroken) addStraight(disc, thickness, value, scale);
    else addInStrips(disc, thickness, value, scale);
  }
  return { value, error: roundingOf(scale) };
}

/** Thickness t + s·u at u from the centre: ∫ 1 = πr², ∫ u² = ∫ v² = πr⁴/4, and every odd power gives 0. */
function addStraight(
  { centre, radius }: Cutout,
  thickness: Thickness,
  value: Float64Array,
  scale: Float64Array,
): void {
  const { x, y } = centre;
  const behind = thickness.thicknessAt(x - radius / 2);
  const ahead = thickness.thicknessAt(x + radius / 2);
  const t = (ahead + behind) / 2;
  const s = (ahead - behind) / radius;
  const area = Math.PI * radius * radius;
  const square = (radius * radius) / 4;
  const first = x * t + s * square;
  add(value, scale, 0, area * t);
  add(value, scale, 1, area * first);
  add(value, scale, 2, area * t * y);
  add(value, scale, 3, area * (x * x * t + square * (t + 2 * x * s)));
  add(value, scale, 4, area * t * (y * y + square));
  add(value, scale, 5, (area * t * (t * t + 3 * s * s * square)) / 12);
  add(value, scale, 6, area * y * first);
}

function addInStrips(
  { centre, radius }: Cutout,
  thickness: Thickness,
  value: Float64Array,
  scale: Float64Array,
): void {
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
}

function add(value: Float64Array, scale: Float64Array, i: number, term: number): void {
  value[i] = (value[i] as number) + term;
  scale[i] = (scale[i] as number) + Math.abs(term);
}
