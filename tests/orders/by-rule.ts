// The drawn blades by brute force, thickness at every point of a fine grid, by either of two rules for how far a point is
// from the edge. No line of it comes from the library.
import { type DrawnBlade, distanceTo, edgeNear, yAt } from "./drawn.js";
import { at, type Sum, sumAlong } from "./hand-sums.js";
import type { Order } from "./orders.js";

/** The hand's rule: straight up from the edge. The model's: to the nearest place of the edge. */
export type Rule = "straight up" | "nearest";

/** Points in a column, closer together toward the edge; and distance between columns, mm. */
const POINTS = 120;
const COLUMN = 0.5;

/** Volume and first moment of the drawn blade ahead of the heel. */
export function sumDrawn(order: Order, drawn: DrawnBlade, rule: Rule, sharpened: boolean): Sum {
  const area = (x: number): number => {
    const low = yAt(drawn.edge, x);
    const height = yAt(drawn.spine, x) - low;
    const near = edgeNear(drawn, x, height);
    const distance = (above: number): number =>
      rule === "nearest" ? distanceTo(near, x, low + above) : above;
    const half = halfThickness(order, x, distance(height), sharpened);
    let sum = 0;
    for (let i = 0; i < POINTS; i++) {
      const share = (i + 0.5) / POINTS;
      // Substituted above = height · share², so the step is height · 2 share / POINTS.
      sum += 2 * half(distance(height * share ** 2)) * ((2 * share * height) / POINTS);
    }
    return sum;
  };
  return sumAlong(0, order.edgeLength, area, COLUMN);
}

/** Half the thickness at x over the distance from the edge; `top` is the spine's distance. */
function halfThickness(order: Order, x: number, top: number, sharpened: boolean): (v: number) => number {
  const spine = at(order.thickness, x) / 2;
  const edge = at(order.edge, x) / 2;
  const bevel = order.bevel === undefined ? top : Math.min(top, at(order.bevel, x));
  const ground = arcFace(edge, spine, bevel, 2 * (order.crown ?? 0) * (spine - edge));
  const plane = Math.tan((order.edgeAngle * Math.PI) / 180);
  return (v) => Math.min(v >= bevel ? spine : ground(v), sharpened ? v * plane : Number.POSITIVE_INFINITY);
}

/** A face from `edge` at the edge to `spine` at the bevel line, bulging by `crown` in the middle of its chord. */
export function arcFace(edge: number, spine: number, bevel: number, crown: number): (v: number) => number {
  const rise = spine - edge;
  const chord = Math.hypot(bevel, rise);
  // No arc leans out over the edge: at most it stands upright there (docs/model.md, section 4).
  const sagitta = Math.min(crown, (chord / 2) * Math.tan(Math.PI / 4 - Math.atan2(rise, bevel) / 2));
  if (sagitta === 0) return (v) => edge + (rise * v) / bevel;
  const radius = (chord * chord) / (8 * sagitta) + sagitta / 2;
  // From the chord's middle square to it, inward, to the circle's centre.
  const centre = {
    v: bevel / 2 + ((radius - sagitta) * rise) / chord,
    z: (edge + spine) / 2 - ((radius - sagitta) * bevel) / chord,
  };
  return (v) => centre.z + Math.sqrt(Math.max(0, radius ** 2 - (v - centre.v) ** 2));
}

/** Height at which the sharpening plane meets the face at the heel, by halving, mm. */
export function edgeBevelByHalving(order: Order): number {
  const top = at(order.height, 0);
  const ground = halfThickness(order, 0, top, false);
  const plane = Math.tan((order.edgeAngle * Math.PI) / 180);
  let low = 0;
  let high = order.bevel === undefined ? top : at(order.bevel, 0);
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (middle * plane < ground(middle)) low = middle;
    else high = middle;
  }
  return low;
}
