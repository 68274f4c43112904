// What is taken off along the spine: the most half-thickness at a depth below the station's highest point.
import type { Law } from "../law.js";

export interface CrestInput {
  readonly eased: number;
  readonly easedFrom: number;
  readonly swedge:
    | { readonly from: number; readonly to: number; readonly tan: number; readonly thickness: Law }
    | undefined;
}

export class Crest {
  active = false;
  /** Which of the choices in the model hold at the station. */
  choices = 0;
  /** Depths at which the bound or one of its slopes may break. */
  readonly knots: number[] = [];
  private readonly input: CrestInput;
  /** Greatest depth at which anything is bounded. */
  reach = 0;
  private half = 0;
  private radius = 0;
  /** Half the thickness left at the spine by a swedge, or infinite. */
  private left = Number.POSITIVE_INFINITY;

  constructor(input: CrestInput) {
    this.input = input;
  }

  stand(x: number, thickness: number): void {
    const { eased, easedFrom, swedge } = this.input;
    this.half = thickness / 2;
    this.radius = x >= easedFrom ? Math.min(eased, this.half) : 0;
    this.left =
      swedge !== undefined && x >= swedge.from && x <= swedge.to
        ? swedge.thickness.at(x) / 2
        : Number.POSITIVE_INFINITY;
    this.choices = (this.radius > 0 ? 1 : 0) + (this.radius === this.half ? 2 : 0);
    const planes = this.left < Number.POSITIVE_INFINITY;
    this.active = this.radius > 0 || planes;
    if (planes) this.choices += 4;
    this.reach = planes ? Number.POSITIVE_INFINITY : this.radius;
    this.knots.length = 0;
    if (this.radius > 0) this.knots.push(this.radius);
    if (this.radius === 0 || !planes || swedge === undefined) return;
    // Plane and quarter circle: with u = r − d, (T/2 − r + √(r² − u²)) = t/2 + (r − u)·tan
    const r = this.radius;
    const w = this.left + r * swedge.tan - this.half + r;
    const p = 1 + swedge.tan ** 2;
    const square = (w * swedge.tan) ** 2 - p * (w * w - r * r);
    if (square < 0) return;
    for (const sign of [-1, 1]) {
      const d = r - (w * swedge.tan + sign * Math.sqrt(square)) / p;
      if (d > 0 && d < r) this.knots.push(d);
    }
  }

  /** Without a bound infinite: a face that bulges above the flats is bounded by swedge and easing only. */
  at(depth: number): number {
    const { swedge } = this.input;
    const r = this.radius;
    const planes = swedge === undefined ? Number.POSITIVE_INFINITY : this.left + depth * swedge.tan;
    if (r === 0 || depth > r * (1 + 1e-14)) return planes;
    return Math.min(planes, this.half - r + Math.sqrt(Math.max(0, depth * (2 * r - depth))));
  }
}
