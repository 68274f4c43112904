import { type GaussRule, gaussRule } from "../numeric/gauss.js";
import { parametersAtX } from "../plane/at-x.js";
import type { Path } from "../plane/path.js";
import { type Arc, type Cubic, derivativeAt, pointAt, type Segment } from "../plane/segment.js";
import { MOMENTS, type Moments } from "./moments.js";

/** Thickness as a function of x, with the places where it is not smooth. */
export interface Thickness {
  thicknessAt(x: number): number;
  readonly breaks: readonly number[];
  /** Whether it is straight between its breaks, so that fewer points are exact. */
  readonly isStraight?: boolean;
}

/** An arc is divided so that its parts turn by no more than this, rad. */
const LONGEST_ARC = 1.6;

/**
 * Integrals of a flat piece whose thickness depends on x alone, by Green's theorem along its outline:
 * ∬ f dA = −∮ F dx with F = ∫ f dy. The integrand is polynomial on lines and cubics, so the Gauss rule is exact there;
 * on arcs it is exact to rounding.
 */
export function slabMoments(path: Path, thickness: Thickness): Moments {
  const value = new Float64Array(MOMENTS);
  const scale = new Float64Array(MOMENTS);
  const { breaks } = thickness;
  const isStraight = thickness.isStraight === true;
  const cuts: number[] = [];
  for (const segment of path.segments) {
    if (segment.kind === "line" && segment.from.x === segment.to.x) continue;
    cuts.length = 0;
    cuts.push(0);
    addBreaks(segment, breaks, cuts);
    const rule = ruleFor(segment, isStraight);
    cuts.push(1);
    if (cuts.length > 2) cuts.sort((a, b) => a - b);
    for (let i = 0; i + 1 < cuts.length; i++) {
      addAlong(segment, cuts[i] as number, cuts[i + 1] as number, rule, thickness, value, scale);
    }
  }
  return { value, error: roundingOf(scale) };
}

/** Error of a sum that only rounding has touched, from the sum of the sizes of its terms. */
export function roundingOf(scale: Float64Array): Float64Array {
  const error = new Float64Array(MOMENTS);
  for (let i = 0; i < MOMENTS; i++) error[i] = 2e-15 * (scale[i] as number);
  return error;
}

/** Whether a curve may stand over x: by its control points, or by its circle. */
function isOver(segment: Arc | Cubic, x: number): boolean {
  if (segment.kind === "arc") return Math.abs(x - segment.centre.x) < segment.radius;
  const { from, control1, control2, to } = segment;
  return (
    x > Math.min(from.x, control1.x, control2.x, to.x) && x < Math.max(from.x, control1.x, control2.x, to.x)
  );
}

/** Parameters inside a segment at which the thickness is not smooth, and where a long arc is divided. */
function addBreaks(segment: Segment, breaks: readonly number[], cuts: number[]): void {
  const { from, to } = segment;
  for (const x of breaks) {
    if (segment.kind === "line") {
      const t = (x - from.x) / (to.x - from.x);
      if (t > 1e-14 && t < 1 - 1e-14) cuts.push(t);
    } else if (isOver(segment, x)) {
      for (const t of parametersAtX(segment, x)) if (t > 1e-14 && t < 1 - 1e-14) cuts.push(t);
    }
  }
  if (segment.kind === "arc" && Math.abs(segment.sweep) > LONGEST_ARC) {
    const parts = Math.ceil(Math.abs(segment.sweep) / LONGEST_ARC);
    for (let i = 1; i < parts; i++) cuts.push(i / parts);
  }
}

/**
 * Where the thickness is straight the integrand has degree 4 on a line and 14 on a cubic, where it is a cubic 10 and 32; on
 * an arc of no more than 1.6 rad the points given leave less than 1e-16 of it.
 */
function ruleFor(segment: Segment, isStraight: boolean): GaussRule {
  switch (segment.kind) {
    case "line":
      return gaussRule(isStraight ? 3 : 7);
    case "cubic":
      return gaussRule(isStraight ? 8 : 17);
    case "arc":
      return gaussRule(isStraight ? 12 : 17);
  }
}

function addAlong(
  segment: Segment,
  t0: number,
  t1: number,
  rule: GaussRule,
  thickness: Thickness,
  value: Float64Array,
  scale: Float64Array,
): void {
  if (t1 <= t0) return;
  const { nodes, weights } = rule;
  const { from, to } = segment;
  const isLine = segment.kind === "line";
  for (let i = 0; i < nodes.length; i++) {
    const t = t0 + (t1 - t0) * (nodes[i] as number);
    const point = isLine ? undefined : pointAt(segment, t);
    const x = point?.x ?? from.x + (to.x - from.x) * t;
    const y = point?.y ?? from.y + (to.y - from.y) * t;
    const along = isLine ? to.x - from.x : derivativeAt(segment, t).x;
    const dx = -along * (t1 - t0) * (weights[i] as number);
    const th = thickness.thicknessAt(x);
    const area = th * y * dx;
    add(value, scale, 0, area);
    add(value, scale, 1, x * area);
    add(value, scale, 2, (y * area) / 2);
    add(value, scale, 3, x * x * area);
    add(value, scale, 4, (y * y * area) / 3);
    add(value, scale, 5, (th * th * area) / 12);
    add(value, scale, 6, (x * y * area) / 2);
  }
}

function add(value: Float64Array, scale: Float64Array, i: number, term: number): void {
  value[i] = (value[i] as number) + term;
  scale[i] = (scale[i] as number) + Math.abs(term);
}
