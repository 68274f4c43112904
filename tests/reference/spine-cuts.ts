// What is taken off the faces after the bevels: swedge and eased spine from above, fullers from outside. From section 4
// of docs/model.md.
import type { FullerSpec, Vec2 } from "@scantling/geometry";
import type { Law } from "./law.js";

export interface SpineCuts {
  /** Radius of the eased spine, mm; 0: none. It begins at the handle front. */
  readonly eased: number;
  readonly swedge:
    | { readonly from: number; readonly to: number; readonly tan: number; readonly thickness: Law }
    | undefined;
}

/** The bound on a face's height at the depth d below the station's highest point, with its name; undefined where there is none. */
export function spineBound(
  { eased, swedge }: SpineCuts,
  x: number,
  d: number,
  thickness: number,
): readonly [number, string] | undefined {
  let bound: readonly [number, string] | undefined;
  const r = Math.min(eased, thickness / 2);
  if (d < r) bound = [thickness / 2 - r + Math.sqrt(Math.max(0, r ** 2 - (r - d) ** 2)), "eased"];
  if (swedge && x >= swedge.from && x <= swedge.to) {
    const plane = swedge.thickness.at(x) / 2 + d * swedge.tan;
    if (bound === undefined || plane < bound[0]) bound = [plane, "swedge"];
  }
  return bound;
}

/** Depth of a groove at a point below the face it is cut into, mm. */
export function grooveDepth({ from, to, radius, depth }: FullerSpec, x: number, y: number): number {
  const q = distanceToLine({ x, y }, from, to);
  return q < radius ? Math.max(0, Math.sqrt(radius ** 2 - q ** 2) - (radius - depth)) : 0;
}

/** Distance from the line between two points, ends included. */
export function distanceToLine(p: Vec2, from: Vec2, to: Vec2): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx ** 2 + dy ** 2;
  const along = square === 0 ? 0 : ((p.x - from.x) * dx + (p.y - from.y) * dy) / square;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(p.x - from.x - t * dx, p.y - from.y - t * dy);
}

/** Stations where a groove, or a hole drawn out to a slot, begins, ends or turns round. */
export const lineBreaks = (from: Vec2, to: Vec2, halfWidth: number): number[] =>
  [from.x, to.x].flatMap((x) => [x - halfWidth, x, x + halfWidth]);
