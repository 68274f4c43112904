import type { Arc } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import { type EdgeElement, END_SLACK, type FootFrame } from "./edge-element.js";

/** An arc, or with radius 0 a corner of the edge seen from its outer side. */
export class RoundElement implements EdgeElement {
  readonly maxCurvature: number;
  readonly footAtStart = 0;
  readonly footAtEnd = 0;
  foot = 0;
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  private readonly startX: number;
  private readonly startY: number;
  private readonly endX: number;
  private readonly endY: number;
  private readonly turn: number;
  private readonly slack: number;

  /** @param start - unit direction from the centre to the first point, @param end - to the last; @param turn - ±1, 0: all round. */
  constructor(centre: Vec2, radius: number, start: Vec2, end: Vec2, turn: number) {
    this.cx = centre.x;
    this.cy = centre.y;
    this.radius = radius;
    this.startX = start.x;
    this.startY = start.y;
    this.endX = end.x;
    this.endY = end.y;
    this.turn = turn;
    this.slack = radius > 0 ? END_SLACK / radius : 1;
    this.maxCurvature = turn > 0 ? 1 / radius : turn < 0 ? -1 / radius : 0;
  }

  static ofArc(arc: Arc): RoundElement {
    const a = arc.startAngle;
    const b = a + arc.sweep;
    return new RoundElement(
      arc.centre,
      arc.radius,
      { x: Math.cos(a), y: Math.sin(a) },
      { x: Math.cos(b), y: Math.sin(b) },
      Math.sign(arc.sweep),
    );
  }

  static corner(at: Vec2): RoundElement {
    return new RoundElement(at, 0, { x: 1, y: 0 }, { x: 1, y: 0 }, 0);
  }

  distance(x: number, y: number): number {
    const dx = x - this.cx;
    const dy = y - this.cy;
    const r = Math.sqrt(dx * dx + dy * dy);
    if (this.turn !== 0) {
      const past = r * this.slack;
      if (
        (this.startX * dy - this.startY * dx) * this.turn < -past ||
        (dx * this.endY - dy * this.endX) * this.turn < -past
      ) {
        return Number.POSITIVE_INFINITY;
      }
    }
    this.foot = 0;
    return Math.abs(r - this.radius);
  }

  distanceInside(x: number, y: number): number {
    const dx = x - this.cx;
    const dy = y - this.cy;
    return Math.abs(Math.sqrt(dx * dx + dy * dy) - this.radius);
  }

  frame(x: number, y: number, out: FootFrame): void {
    const dx = x - this.cx;
    const dy = y - this.cy;
    const r = Math.sqrt(dx * dx + dy * dy);
    const side = r < this.radius ? -1 : 1;
    out.normalX = r === 0 ? 0 : (side * dx) / r;
    out.normalY = r === 0 ? 1 : (side * dy) / r;
  }

  get minCurvature(): number {
    return this.maxCurvature;
  }

  heightAtDistance(x: number, v: number, y0: number, v0: number, y1: number, v1: number): number {
    const middle = (y0 + y1) / 2;
    const dx = x - this.cx;
    const dy = middle - this.cy;
    const inside = dx * dx + dy * dy < this.radius * this.radius;
    const r = inside ? this.radius - v : this.radius + v;
    const square = r * r - dx * dx;
    if (square <= 0) return Math.abs(v - v0) < Math.abs(v - v1) ? y0 : y1;
    const y = this.cy + Math.sign(middle - this.cy) * Math.sqrt(square);
    return Math.min(Math.max(y, Math.min(y0, y1)), Math.max(y0, y1));
  }

  focalDistance(va: number, vb: number): number {
    if (this.turn > 0) return Math.min(Math.abs(this.radius - va), Math.abs(this.radius - vb));
    return this.radius + Math.min(va, vb);
  }
}
