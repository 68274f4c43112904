// One station: the integrals over its height, zone by zone, and the name of its structure.
import { K15, missed } from "./kronrod.js";
import type { StripModel } from "./model.js";
import { signChanges } from "./roots.js";
import { ROUNDING } from "./stretches.js";
import { Thickness } from "./thickness.js";

/** Per face: ∫h, ∫h·y, ∫h·y², ∫h²/2, ∫y·h²/2, ∫h³/3. */
const SUMS = 12;

/** Parts of a zone that are looked at for the places where face and crest meet. */
const CREST_PARTS = 5;

/** Zones thinner than this are none, mm. */
const THIN = 1e-12;

/** Zones thinner than this are not divided any more, mm. */
const SLIVER = 1e-9;

export class StationSums {
  /** Integrals over y, right face and left face, and what they may miss. */
  readonly sums = new Float64Array(SUMS);
  readonly errors = new Float64Array(SUMS);
  /** A number that stays the same while the structure of the station does. */
  structure = 0;
  readonly thickness: Thickness;
  private readonly model: StripModel;
  private readonly two: boolean;
  private readonly cuts: number[] = [];
  private readonly fine = new Float64Array(SUMS);
  private readonly coarse = new Float64Array(SUMS);
  private readonly size = new Float64Array(SUMS);
  /** Sizes per mm of x that the errors of the six sums are held against. */
  private readonly units = new Float64Array(6).fill(1);

  constructor(model: StripModel) {
    this.model = model;
    this.thickness = new Thickness(model);
    this.two = model.left !== undefined || model.grooves.some((groove) => groove.right !== groove.left);
  }

  /** @param scale - sizes of the ten integrals, which are over a length of `over` mm */
  holdAgainst(scale: Float64Array, over: number): void {
    [0, 2, 4, 7, 8, 5].forEach((moment, j) => {
      this.units[j] = (scale[moment] as number) / over || 1;
    });
  }

  /** @param tolerance - of each zone's integrals against the sizes set; 0: the structure only */
  at(x: number, tolerance: number): void {
    const { model, thickness } = this;
    this.sums.fill(0);
    this.errors.fill(0);
    this.structure = 17;
    thickness.stand(x);
    const { heights } = thickness;
    if (thickness.share > 0) for (const face of thickness.faces) this.name(face.choices);
    this.name((heights.length << 4) + model.crest.choices);
    for (let i = 0; i + 1 < heights.length; i += 2)
      this.interval(heights[i] as number, heights[i + 1] as number, tolerance);
  }

  private name(id: number): void {
    this.structure = (Math.imul(this.structure, 1_000_003) + id) | 0;
  }

  /** One piece of the station inside the outline, less the holes in it. */
  private interval(low: number, high: number, tolerance: number): void {
    let from = low;
    const spans = this.model.holes
      .map((hole) => hole.span(this.thickness.x))
      .filter((span) => span !== undefined && span[1] > low && span[0] < high)
      .sort((a, b) => (a?.[0] ?? 0) - (b?.[0] ?? 0));
    for (const span of spans) {
      if (span === undefined) continue;
      this.solid(from, Math.min(high, span[0]), tolerance);
      from = Math.max(from, span[1]);
    }
    this.solid(from, high, tolerance);
  }

  private solid(low: number, high: number, tolerance: number): void {
    if (!(high - low > THIN)) return;
    const { model, thickness, cuts } = this;
    const { stretches, x, top } = thickness;
    cuts.length = 0;
    cuts.push(low, high);
    const offer = (y: number): void => {
      if (y > low && y < high) cuts.push(y);
    };
    if (thickness.share > 0) {
      stretches.cutsWithin(low, high, cuts);
      for (const face of thickness.faces) {
        for (const v of face.knots) stretches.heightsAt(v, low, high, cuts);
      }
    }
    for (const { plan } of model.grooves) {
      const span = plan.span(x);
      if (span === undefined) continue;
      offer(span[0]);
      offer(span[1]);
      for (const y of plan.turns(x)) if (y > span[0] && y < span[1]) offer(y);
    }
    if (model.crest.active) {
      for (const depth of model.crest.knots) offer(top - depth);
      cuts.sort((a, b) => a - b);
      this.crestMeets();
    }
    cuts.sort((a, b) => a - b);
    let before = 0;
    let start = low;
    for (let i = 1; i < cuts.length; i++) {
      const a = start;
      const b = cuts[i] as number;
      if (!(b - a > THIN)) continue;
      start = b;
      thickness.prepare(a, b);
      const name = thickness.zoneName((a + b) / 2);
      if (name !== before) this.name(name);
      before = name;
      if (tolerance > 0) this.zone(a, b, tolerance, 10);
    }
    this.name(-1);
  }

  /** Adds the places where a face meets the crest. */
  private crestMeets(): void {
    const { cuts, model, thickness } = this;
    const { top } = thickness;
    const deepest = model.crest.reach;
    const count = cuts.length;
    for (let i = 0; i + 1 < count; i++) {
      const a = cuts[i] as number;
      const b = cuts[i + 1] as number;
      if (b - a < THIN || top - b > deepest * (1 + 1e-12)) continue;
      thickness.prepare(a, b);
      for (const face of thickness.faces) {
        // A face level with the flats touches the easing's end: nearer than by rounding is not across it.
        const gap = (y: number): number =>
          thickness.uncut(face, y) - ROUNDING - model.crest.at(Math.max(0, top - y));
        signChanges(gap, a, b, CREST_PARTS, cuts);
      }
    }
  }

  /** Adds the integrals over one zone; nodes gather at both its ends, which takes roots out of the integrand. */
  private zone(a: number, b: number, tolerance: number, depth: number): void {
    const { fine, coarse, size, two, units, thickness } = this;
    const width = b - a;
    fine.fill(0);
    coarse.fill(0);
    size.fill(0);
    const { nodes, fine: wf, coarse: wc } = K15;
    let before: number | undefined;
    let yBefore = a;
    for (let k = 0; k < nodes.length; k++) {
      const u = nodes[k] as number;
      const y = a + width * u * u * (3 - 2 * u);
      const stretch = width * 6 * u * (1 - u);
      thickness.at(y);
      const piece = thickness.found;
      if (piece !== before && before !== undefined && piece !== undefined && depth > 0) {
        // A piece of the edge that was nowhere nearest when the station was looked through.
        const { y: change } = this.model.field.giveWay(thickness.x, yBefore, before, y, piece);
        if (change - a > SLIVER && b - change > SLIVER) {
          this.zone(a, change, tolerance, depth - 1);
          this.zone(change, b, tolerance, depth - 1);
          return;
        }
      }
      before = piece;
      yBefore = y;
      const f = (wf[k] as number) * stretch;
      const c = (wc[k] as number) * stretch;
      this.put(0, thickness.right, y, f, c);
      if (two) this.put(6, thickness.left, y, f, c);
    }
    let worst = 0;
    const count = two ? SUMS : 6;
    for (let i = 0; i < count; i++) {
      const gap = Math.abs((fine[i] as number) - (coarse[i] as number));
      const e = missed(gap, size[i] as number);
      coarse[i] = e;
      worst = Math.max(worst, e / (units[i % 6] as number));
    }
    if (worst > tolerance && depth > 0 && width > SLIVER) {
      const middle = (a + b) / 2;
      this.zone(a, middle, tolerance, depth - 1);
      this.zone(middle, b, tolerance, depth - 1);
      return;
    }
    for (let i = 0; i < SUMS; i++) {
      const j = two ? i : i % 6;
      this.sums[i] = (this.sums[i] as number) + (fine[j] as number);
      this.errors[i] = (this.errors[i] as number) + (coarse[j] as number);
    }
  }

  private put(at: number, h: number, y: number, f: number, c: number): void {
    const { fine, coarse, size } = this;
    let value = h;
    for (let j = 0; j < 6; j++) {
      if (j === 1 || j === 2 || j === 4) value *= y;
      else if (j === 3) value = (h * h) / 2;
      else if (j === 5) value = (h * h * h) / 3;
      fine[at + j] = (fine[at + j] as number) + f * value;
      coarse[at + j] = (coarse[at + j] as number) + c * value;
      size[at + j] = (size[at + j] as number) + Math.abs(f * value);
    }
  }
}
