import type { Cubic } from "../plane/segment.js";
import { END_SLACK } from "./edge-element.js";

/** The polynomials of a cubic, and what is asked of it at a parameter. Lengths in mm. */
export class CubicCurve {
  protected readonly ax: number;
  protected readonly bx: number;
  protected readonly cx: number;
  protected readonly dx: number;
  protected readonly ay: number;
  protected readonly by: number;
  protected readonly cy: number;
  protected readonly dy: number;
  protected readonly size: number;
  /** Of the last point evaluated: g = (C(t) − p)·C′(t), its slope, and |C′|². */
  protected g = 0;
  protected slope = 0;
  protected speed2 = 0;

  constructor(segment: Cubic) {
    const { from, control1, control2, to } = segment;
    this.dx = from.x;
    this.cx = 3 * (control1.x - from.x);
    this.bx = 3 * (control2.x - 2 * control1.x + from.x);
    this.ax = to.x - 3 * control2.x + 3 * control1.x - from.x;
    this.dy = from.y;
    this.cy = 3 * (control1.y - from.y);
    this.by = 3 * (control2.y - 2 * control1.y + from.y);
    this.ay = to.y - 3 * control2.y + 3 * control1.y - from.y;
    this.size = Math.hypot(to.x - from.x, to.y - from.y);
  }

  protected curvature(t: number): number {
    const x1 = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
    const y1 = (3 * this.ay * t + 2 * this.by) * t + this.cy;
    const x2 = 6 * this.ax * t + 2 * this.bx;
    const y2 = 6 * this.ay * t + 2 * this.by;
    const square = x1 * x1 + y1 * y1;
    return square === 0 ? 0 : (x1 * y2 - y1 * x2) / (square * Math.sqrt(square));
  }

  /** g = (C(t) − p)·C′(t), its slope, and |C′|². */
  protected evaluate(x: number, y: number, t: number): void {
    const px = ((this.ax * t + this.bx) * t + this.cx) * t + this.dx - x;
    const py = ((this.ay * t + this.by) * t + this.cy) * t + this.dy - y;
    const x1 = (3 * this.ax * t + 2 * this.bx) * t + this.cx;
    const y1 = (3 * this.ay * t + 2 * this.by) * t + this.cy;
    this.g = px * x1 + py * y1;
    this.speed2 = x1 * x1 + y1 * y1;
    this.slope = this.speed2 + px * (6 * this.ax * t + 2 * this.bx) + py * (6 * this.ay * t + 2 * this.by);
  }

  protected distanceAt(x: number, y: number, t: number): number {
    const slack = END_SLACK / this.size;
    if (t < -slack || t > 1 + slack) return Number.POSITIVE_INFINITY;
    const px = ((this.ax * t + this.bx) * t + this.cx) * t + this.dx - x;
    const py = ((this.ay * t + this.by) * t + this.cy) * t + this.dy - y;
    return Math.sqrt(px * px + py * py);
  }
}
