import type { Vec2 } from "../plane/vec2.js";
import { type EdgeElement, END_SLACK, type FootFrame } from "./edge-element.js";

/** A straight piece of the edge, or an endless ray past heel or tip. */
export class StraightElement implements EdgeElement {
  readonly maxCurvature = 0;
  readonly minCurvature = 0;
  foot = 0;
  readonly origin: Vec2;
  readonly tx: number;
  readonly ty: number;
  readonly from: number;
  readonly to: number;

  /** @param from - least and @param to - greatest parameter (mm along the direction); may be infinite. */
  constructor(origin: Vec2, direction: Vec2, from: number, to: number) {
    this.origin = origin;
    this.tx = direction.x;
    this.ty = direction.y;
    this.from = from;
    this.to = to;
  }

  distance(x: number, y: number): number {
    const dx = x - this.origin.x;
    const dy = y - this.origin.y;
    const u = dx * this.tx + dy * this.ty;
    this.foot = u;
    if (u < this.from - END_SLACK || u > this.to + END_SLACK) return Number.POSITIVE_INFINITY;
    return Math.abs(this.tx * dy - this.ty * dx);
  }

  distanceInside(x: number, y: number): number {
    return Math.abs(this.tx * (y - this.origin.y) - this.ty * (x - this.origin.x));
  }

  /** y of the line at x; not finite where it stands upright. */
  heightAt(x: number): number {
    return this.origin.y + ((x - this.origin.x) * this.ty) / this.tx;
  }

  /** y at x of the points on the left of both lines that are equally far from them; not finite where they are parallel. */
  equallyFar(other: StraightElement, x: number): number {
    const along = (line: StraightElement): number => line.tx * line.origin.y + line.ty * (x - line.origin.x);
    return (along(this) - along(other)) / (this.tx - other.tx);
  }

  frame(x: number, y: number, out: FootFrame): void {
    // Seen from below the edge the normal is the other one; inside the outline this is always the left one.
    const side = this.tx * (y - this.origin.y) - this.ty * (x - this.origin.x) < 0 ? -1 : 1;
    out.normalX = -this.ty * side;
    out.normalY = this.tx * side;
  }

  get footAtStart(): number {
    return this.from;
  }

  get footAtEnd(): number {
    return this.to;
  }

  heightAtDistance(_x: number, v: number, y0: number, v0: number, y1: number, v1: number): number {
    return v1 === v0 ? y0 : y0 + ((v - v0) / (v1 - v0)) * (y1 - y0);
  }

  focalDistance(): number {
    return Number.POSITIVE_INFINITY;
  }
}
