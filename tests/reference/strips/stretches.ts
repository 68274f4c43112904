// The pieces of a station along which one piece of the edge is nearest and the distance only grows or only falls.
import type { Field } from "./field.js";
import type { Piece } from "./pieces.js";
import { findRoot } from "./roots.js";

/** Distances nearer to each other than this are one, mm. */
export const ROUNDING = 1e-12;

interface Stretch {
  readonly y0: number;
  readonly v0: number;
  readonly y1: number;
  readonly v1: number;
  readonly piece: number;
}

export class Stretches {
  /** Greatest distance on the station, and that of its highest point. */
  farthest = 0;
  last = 0;
  /** Heights of the ridges. */
  readonly ridges: number[] = [];
  private x = 0;
  private readonly list: Stretch[] = [];
  private readonly field: Field;
  private readonly probes: number;

  constructor(field: Field) {
    this.field = field;
    this.probes = field.wary ? 24 : 5;
  }

  clear(): void {
    this.list.length = 0;
    this.ridges.length = 0;
    this.farthest = 0;
    this.last = 0;
  }

  /** Adds an interval of the station x; intervals come in ascending order. */
  add(x: number, low: number, high: number): void {
    const { field, probes } = this;
    this.x = x;
    let y = low;
    this.last = field.nearest(x, low);
    let piece = field.piece;
    this.farthest = Math.max(this.farthest, this.last);
    for (let i = 1; i <= probes; i++) {
      const end = i === probes ? high : low + ((high - low) * i) / probes;
      const vEnd = field.nearest(x, end);
      const pieceEnd = field.piece;
      for (let guard = 0; piece !== pieceEnd && guard < 12; guard++) {
        const { y: change, ridge } = field.giveWay(x, y, piece, end, pieceEnd);
        const next = field.piece;
        if (ridge) this.ridges.push(change);
        this.stretch(x, y, change, piece);
        y = change;
        piece = next;
      }
      this.stretch(x, y, end, piece);
      y = end;
      piece = pieceEnd;
      this.last = vEnd;
    }
  }

  private stretch(x: number, y0: number, y1: number, piece: number): void {
    if (!(y1 > y0)) return;
    const part = this.field.pieces[piece] as Piece;
    const v0 = reach(part, x, y0);
    const slope0 = part.slope;
    const v1 = reach(part, x, y1);
    const slope1 = part.slope;
    this.farthest = Math.max(this.farthest, v0, v1);
    if (slope0 < 0 === slope1 < 0 || Math.abs(slope0) < 1e-14 || Math.abs(slope1) < 1e-14) {
      this.list.push({ y0, v0, y1, v1, piece });
      return;
    }
    const turn = (y: number): number => {
      reach(part, x, y);
      return part.slope;
    };
    const y = findRoot(turn, y0, slope0, y1, slope1);
    const v = reach(part, x, y);
    this.farthest = Math.max(this.farthest, v);
    this.list.push({ y0, v0, y1: y, v1: v, piece }, { y0: y, v0: v, y1, v1, piece });
  }

  /** Adds the ends of the stretches inside a piece of the station. */
  cutsWithin(low: number, high: number, out: number[]): void {
    for (let i = 0; i < this.list.length; i++) {
      const { y1, v0, v1, piece } = this.list[i] as Stretch;
      const next = this.list[i + 1];
      if (next === undefined || y1 <= low || y1 >= high) continue;
      const turns = v1 > v0 !== next.v1 > next.v0;
      if (next.piece !== piece || turns) out.push(y1);
    }
  }

  /** Adds the heights at which the distance is v. */
  heightsAt(v: number, low: number, high: number, out: number[]): void {
    for (const { y0, v0, y1, v1, piece } of this.list) {
      if (y1 <= low || y0 >= high) continue;
      // Where the distance stays the same, rounding would cross it again and again.
      if (v < Math.min(v0, v1) + ROUNDING || v > Math.max(v0, v1) - ROUNDING) continue;
      const y = this.heightIn(piece, v, y0, v0, y1, v1);
      if (y > low && y < high) out.push(y);
    }
  }

  private heightIn(piece: number, v: number, y0: number, v0: number, y1: number, v1: number): number {
    const part = this.field.pieces[piece] as Piece;
    // Newton's steps: the slope comes with the distance.
    let low = y0;
    let high = y1;
    const rising = v1 > v0;
    let y = y0 + ((v - v0) / (v1 - v0)) * (y1 - y0);
    for (let i = 0; i < 60; i++) {
      const gap = part.again(this.x, y) - v;
      if (gap === 0) return y;
      if (gap < 0 === rising) low = y;
      else high = y;
      let next = y - gap / part.slope;
      if (!(next > low && next < high)) next = (low + high) / 2;
      const moved = Math.abs(next - y);
      y = next;
      if (moved < 1e-14 * Math.max(1, Math.abs(y))) break;
    }
    return y;
  }

  /** Index of the piece that is nearest at a height. */
  pieceAt(y: number): number {
    for (const { y1, piece } of this.list) if (y <= y1) return piece;
    return this.list[this.list.length - 1]?.piece ?? 0;
  }
}

/** Distance from a piece where it is nearest: also at the very ends of the stretch, where rounding may say that it is not. */
function reach(part: Piece, x: number, y: number): number {
  const d = part.distance(x, y);
  return d < Number.POSITIVE_INFINITY ? d : part.again(x, y);
}
