// One ground and sharpened face at a station: half-thickness over the distance from the edge, straight from docs/model.md.

/** What decides a face at every station; angles as tangents, lengths in mm. */
export interface FaceInput {
  /** 1 for the right-hand face, −1 for the left. */
  readonly side: 1 | -1;
  readonly form: "flat" | "convex" | "hollow";
  readonly apex: number;
  readonly wheel: number;
  /** Tangent of the sharpening angle; undefined: no plane. */
  readonly plane: number | undefined;
  readonly micro: { readonly height: number; readonly tan: number } | undefined;
}

/** The station's numbers for a face, mm. `bevel` is the height asked for; `crown` the sagitta, NaN for level. */
export interface FaceStation {
  readonly top: number;
  readonly bevel: number;
  readonly thickness: number;
  readonly flank: number;
  readonly edge: number;
  readonly crown: number;
  readonly crownShare: number;
}

const FLAT = 0;

/** Distances nearer to each other than this are one, mm. */
const ROUNDING = 1e-12;

export class Face {
  /** Which of the choices in the model hold at the station; changes where the law of the section does. */
  choices = 0;
  /** Distances at which the face or one of its slopes may break. */
  readonly knots: number[] = [];
  private readonly input: FaceInput;
  private top = 0;
  private bevel = 0;
  private low = 0;
  private high = 0;
  private full = 0;
  private apex = 0;
  /** 1 bulging outward, −1 caving inward, 0 straight. */
  private bulge = FLAT;
  /** Centre of the arc, from the point at v = 0: along v, and toward the centre plane for a bulge, away for a hollow. */
  private centre = 0;
  private drop = 0;

  constructor(input: FaceInput) {
    this.input = input;
  }

  stand(s: FaceStation): void {
    const { side, apex, form } = this.input;
    this.top = s.top;
    this.full = s.thickness / 2;
    this.bevel = Math.min(s.bevel, s.top);
    const room = s.top > 0 ? (4 * (s.top - this.bevel)) / s.top : 0;
    this.high = (s.thickness - s.flank * Math.min(1, room)) / 2;
    this.apex = (side * apex * s.thickness) / 2;
    this.low = this.apex + (s.edge * (1 - side * apex)) / 2;
    this.choices = (s.bevel < s.top ? 1 : 0) + (room < 1 ? 2 : 0);
    this.bulge = FLAT;
    if (form === "convex") this.convex(s);
    if (form === "hollow") this.hollow();
    this.findKnots();
  }

  private convex({ crown, crownShare }: FaceStation): void {
    const run = this.bevel;
    const rise = this.high - this.low;
    if (!(rise > 0 && run > 0)) return;
    this.choices += 4;
    const chord = Math.hypot(run, rise);
    const asked = Number.isNaN(crownShare) ? crown : crownShare * 2 * rise;
    if (asked <= 0) return;
    this.bulge = 1;
    if (Number.isNaN(asked)) {
      this.centre = run;
      this.drop = (chord * chord) / (2 * rise) - rise;
    } else {
      const back = (chord * chord) / (8 * asked) - asked / 2;
      this.centre = run / 2 + (back * rise) / chord;
      this.drop = (back * run) / chord - rise / 2;
    }
    if (this.drop >= 0) return;
    this.choices += 8;
    this.centre = (chord * chord) / (2 * run);
    this.drop = 0;
  }

  private hollow(): void {
    const run = this.bevel;
    const rise = this.high - this.low;
    if (!(run > 0)) return;
    const chord = Math.hypot(run, rise);
    const least = (chord * chord) / (2 * run);
    const radius = Math.max(this.input.wheel, least);
    if (radius === least) this.choices += 16;
    const back = Math.sqrt(Math.max(0, (radius - chord / 2) * (radius + chord / 2)));
    this.bulge = -1;
    this.centre = run / 2 - (back * rise) / chord;
    this.drop = rise / 2 + (back * run) / chord;
  }

  /** The face as ground, before sharpening. */
  ground(v: number): number {
    if (v >= this.top) return this.full;
    if (v >= this.bevel)
      return this.high + ((this.full - this.high) * (v - this.bevel)) / (this.top - this.bevel);
    if (this.bulge === FLAT) return this.low + ((this.high - this.low) * v) / this.bevel;
    const q = v * (2 * this.centre - v);
    const root = Math.sqrt(Math.max(0, this.drop * this.drop + q));
    const both = root + this.drop;
    return both === 0 ? this.low : this.low + (this.bulge * q) / both;
  }

  planes(v: number): number {
    const { plane, micro } = this.input;
    if (plane === undefined) return Number.POSITIVE_INFINITY;
    if (micro === undefined) return this.apex + v * plane;
    return v <= micro.height
      ? this.apex + v * micro.tan
      : this.apex + micro.height * micro.tan + (v - micro.height) * plane;
  }

  at(v: number): number {
    return Math.min(this.ground(v), this.planes(v));
  }

  /** Which piece of the face holds at v. */
  piece(v: number): number {
    const { micro } = this.input;
    if (this.planes(v) < this.ground(v)) return micro !== undefined && v < micro.height ? 4 : 3;
    return v >= this.top - ROUNDING ? 2 : v >= this.bevel - ROUNDING ? 1 : 0;
  }

  private findKnots(): void {
    const { knots } = this;
    const { plane, micro } = this.input;
    knots.length = 0;
    knots.push(this.bevel, this.top);
    if (plane === undefined) return;
    if (micro !== undefined) {
      knots.push(micro.height);
      this.meet(this.apex, micro.tan);
      this.meet(this.apex + micro.height * (micro.tan - plane), plane);
    } else this.meet(this.apex, plane);
  }

  /** Where the line a + b·v meets the pieces of the ground face; some of these may not matter. */
  private meet(a: number, b: number): void {
    const { bevel, top, low, high, full } = this;
    if (this.bulge === FLAT) this.offer((a - low) / ((high - low) / bevel - b), 0, bevel);
    else {
      const w = a - low + this.bulge * this.drop;
      // (v − centre)² + (w + b·v)² = centre² + drop²
      const p = 1 + b * b;
      const half = b * w - this.centre;
      const c = (w - this.drop) * (w + this.drop);
      const square = half * half - p * c;
      if (square >= 0) {
        const sum = half > 0 ? -half - Math.sqrt(square) : -half + Math.sqrt(square);
        this.offer(sum / p, 0, bevel);
        if (sum !== 0) this.offer(c / sum, 0, bevel);
      }
    }
    if (top > bevel) {
      const slope = (full - high) / (top - bevel);
      this.offer(bevel + (a + b * bevel - high) / (slope - b), bevel, top);
    }
    this.offer((full - a) / b, top, Number.POSITIVE_INFINITY);
  }

  private offer(v: number, from: number, to: number): void {
    if (v > from && v < to) this.knots.push(v);
  }
}
