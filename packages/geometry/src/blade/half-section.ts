import { InternalError } from "../errors/errors.js";

const CAPACITY = 24;
const LINE = 0;
const ARC = 1;

/**
 * Half of a section: half-thickness `h` (mm, from the centre plane to one face) as a function of the distance `v`
 * from the edge, in pieces that are straight or circular. The last piece goes on for ever.
 *
 * A section is built anew at every station, many thousand times in a weighing; the object is filled again and again
 * instead of being created. A straight piece is `h = a + b·v`. An arc through (0, `a`) is written in the sagitta form
 * `h = a + σ·q / (√(k² + q) + k)` with `q = v(2c − v)`, where (c, a − σ·k) is its centre: that form
 * keeps its digits when the radius is huge.
 */
export class HalfSection {
  count = 0;
  readonly start = new Float64Array(CAPACITY);
  readonly kind = new Uint8Array(CAPACITY);
  /** Straight: h at v = 0. Arc: h of the point at v = 0. */
  readonly a = new Float64Array(CAPACITY);
  /** Straight: slope. Arc: v of the centre. */
  readonly b = new Float64Array(CAPACITY);
  /** Arc: k, the distance of the centre below (σ = 1) or above (σ = −1) the point at v = 0. */
  readonly k = new Float64Array(CAPACITY);
  /** Arc: 1 bulges outward, −1 caves inward. */
  readonly sigma = new Int8Array(CAPACITY);

  clear(): this {
    this.count = 0;
    return this;
  }

  /** Straight piece from `start` on: h = a + b·v. */
  addLine(start: number, a: number, b: number): this {
    const i = this.next(start);
    this.kind[i] = LINE;
    this.a[i] = a;
    this.b[i] = b;
    return this;
  }

  /** Circular piece from `start` on. */
  addArc(start: number, a: number, centreV: number, k: number, sigma: 1 | -1): this {
    const i = this.next(start);
    this.kind[i] = ARC;
    this.a[i] = a;
    this.b[i] = centreV;
    this.k[i] = k;
    this.sigma[i] = sigma;
    return this;
  }

  isArc(piece: number): boolean {
    return this.kind[piece] === ARC;
  }

  /** Where piece i ends; infinite for the last. */
  endOf(piece: number): number {
    return piece + 1 < this.count ? (this.start[piece + 1] as number) : Number.POSITIVE_INFINITY;
  }

  /** h of piece i at v, mm. */
  pieceValue(piece: number, v: number): number {
    const a = this.a[piece] as number;
    const b = this.b[piece] as number;
    if (this.kind[piece] === LINE) return a + b * v;
    const k = this.k[piece] as number;
    const q = v * (2 * b - v);
    const root = Math.sqrt(Math.max(0, k * k + q));
    const bottom = root + k;
    return bottom === 0 ? a : a + ((this.sigma[piece] as number) * q) / bottom;
  }

  /** dh/dv of piece i at v. */
  pieceSlope(piece: number, v: number): number {
    const b = this.b[piece] as number;
    if (this.kind[piece] === LINE) return b;
    const k = this.k[piece] as number;
    const root = Math.sqrt(Math.max(0, k * k + v * (2 * b - v)));
    return ((this.sigma[piece] as number) * (b - v)) / root;
  }

  /** Arc: v at which it stands upright, at or below 0 on a face; near there h goes with the root of the distance from it. */
  uprightAt(piece: number): number {
    const c = this.b[piece] as number;
    const k = this.k[piece] as number;
    const radius = Math.sqrt(c * c + k * k);
    return c > 0 ? -(k * k) / (c + radius) : c - radius;
  }

  /** Arc: its radius, mm. */
  radiusOf(piece: number): number {
    const c = this.b[piece] as number;
    const k = this.k[piece] as number;
    return Math.sqrt(c * c + k * k);
  }

  /** Arc: whether at v it has nearly come round to stand upright again, as only a crown beyond reason does. */
  comesDown(piece: number, v: number): boolean {
    const c = this.b[piece] as number;
    return v > c && (v - c) ** 2 > 0.5 * (c * c + (this.k[piece] as number) ** 2);
  }

  /** Index of the piece that holds at v. */
  pieceAt(v: number): number {
    let i = this.count - 1;
    while (i > 0 && v < (this.start[i] as number)) i--;
    return i;
  }

  /** h at v, mm; at a step the value just above it. */
  valueAt(v: number): number {
    return this.pieceValue(this.pieceAt(v), v);
  }

  /**
   * Fills this section with the smaller (or larger) of two others. `other` must be made of straight pieces.
   */
  combine(first: HalfSection, other: HalfSection, pick: "smaller" | "larger"): this {
    this.clear();
    const sign = pick === "smaller" ? 1 : -1;
    let i = 0;
    let j = 0;
    let from = 0;
    while (true) {
      const to = Math.min(first.endOf(i), other.endOf(j));
      if (to > from) this.combineOver(first, i, other, j, from, to, sign);
      if (to === Number.POSITIVE_INFINITY) return this;
      if (first.endOf(i) === to) i++;
      if (other.endOf(j) === to) j++;
      from = to;
    }
  }

  /**
   * Fills this section with another, cut by a plane a + b·v that lies below it at v = 0, for the usual case that they meet
   * once, inside the first piece, and that no other piece is an arc.
   *
   * @returns false, with nothing promised, where the case is another one.
   */
  cutFoot(face: HalfSection, a: number, b: number): boolean {
    const end = face.endOf(0);
    if ((face.a[0] as number) <= a) return false;
    const [first, second] = crossings(face, 0, a, b);
    const meet = first > 0 ? first : second;
    if (!(meet > 0 && meet < end) || (second > meet && second < end)) return false;
    // Higher up every piece must stay below the plane: it is enough that each starts below it and rises no faster.
    for (let i = 1; i < face.count; i++) {
      if (face.kind[i] !== LINE || (face.b[i] as number) > b) return false;
      const start = face.start[i] as number;
      if (face.pieceValue(i, start) > a + b * start) return false;
    }
    this.count = face.count + 1;
    this.start[0] = 0;
    this.kind[0] = LINE;
    this.a[0] = a;
    this.b[0] = b;
    for (let i = 0; i < face.count; i++) {
      this.start[i + 1] = i === 0 ? meet : (face.start[i] as number);
      this.kind[i + 1] = face.kind[i] as number;
      this.a[i + 1] = face.a[i] as number;
      this.b[i + 1] = face.b[i] as number;
      this.k[i + 1] = face.k[i] as number;
      this.sigma[i + 1] = face.sigma[i] as number;
    }
    return true;
  }

  private combineOver(
    first: HalfSection,
    i: number,
    other: HalfSection,
    j: number,
    from: number,
    to: number,
    sign: number,
  ): void {
    const [r0, r1] = crossings(first, i, other.a[j] as number, other.b[j] as number);
    let start = from;
    for (let part = 0; part < 3; part++) {
      let end = part === 0 ? r0 : part === 1 ? r1 : to;
      if (!(end > start && end < to)) {
        if (part < 2) continue;
        end = to;
      }
      const probe = end === Number.POSITIVE_INFINITY ? start + 1 : (start + end) / 2;
      const gap = first.pieceValue(i, probe) - other.pieceValue(j, probe);
      if (gap * sign <= 0) this.copyPiece(first, i, start);
      else this.copyPiece(other, j, start);
      start = end;
    }
  }

  private copyPiece(from: HalfSection, piece: number, start: number): void {
    const last = this.count - 1;
    if (
      last >= 0 &&
      this.kind[last] === from.kind[piece] &&
      this.a[last] === from.a[piece] &&
      this.b[last] === from.b[piece] &&
      this.k[last] === from.k[piece]
    ) {
      return;
    }
    const i = this.next(start);
    this.kind[i] = from.kind[piece] as number;
    this.a[i] = from.a[piece] as number;
    this.b[i] = from.b[piece] as number;
    this.k[i] = from.k[piece] as number;
    this.sigma[i] = from.sigma[piece] as number;
  }

  private next(start: number): number {
    // A piece that starts where the one before it started leaves that one no length: it takes its place.
    const last = this.count - 1;
    if (last >= 0 && start <= (this.start[last] as number)) return last;
    if (this.count >= CAPACITY) throw new InternalError("a section has more pieces than were foreseen");
    this.start[this.count] = this.count === 0 ? 0 : start;
    this.k[this.count] = 0;
    this.sigma[this.count] = 1;
    return this.count++;
  }
}

const found: [number, number] = [Number.NaN, Number.NaN];

/** Where piece i meets the line a + b·v; at most two places, ascending, NaN where there is none. */
function crossings(section: HalfSection, i: number, a: number, b: number): [number, number] {
  found[0] = Number.NaN;
  found[1] = Number.NaN;
  const a0 = section.a[i] as number;
  const b0 = section.b[i] as number;
  if (section.kind[i] === LINE) {
    if (b0 !== b) found[0] = (a - a0) / (b0 - b);
    return found;
  }
  const sigma = section.sigma[i] as number;
  const k = section.k[i] as number;
  const alpha = a - a0;
  // (v − c)² + (η + σk)² = c² + k² with η = α + b·v
  const p = 1 + b * b;
  const half = b * alpha - b0 + sigma * k * b;
  const c = alpha * alpha + 2 * sigma * k * alpha;
  const discriminant = half * half - p * c;
  if (discriminant < 0) return found;
  const root = Math.sqrt(discriminant);
  const q = -(half + (half >= 0 ? root : -root));
  const one = q / p;
  const two = q === 0 ? one : c / q;
  found[0] = Math.min(one, two);
  found[1] = Math.max(one, two);
  return found;
}
