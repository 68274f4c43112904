import { quadraticRoots } from "../numeric/polynomial.js";
import { type Cubic, pointAt, type Segment } from "./segment.js";
import { cross, type Vec2 } from "./vec2.js";

/** Where a single segment meets itself: the two parameters and the point. */
export interface SelfCrossing {
  readonly t1: number;
  readonly t2: number;
  readonly point: Vec2;
}

/**
 * The point where one segment meets itself, if it does. Only a cubic can: in a loop, in closed form, or where it lies on
 * a straight line and doubles back over itself. A cusp, and a loop whose ends meet, are not crossings.
 *
 * @example
 * selfCrossing(cubic({ x: 0, y: 0 }, { x: 30, y: 20 }, { x: -20, y: 20 }, { x: 10, y: 0 }))?.point.x; // 5
 */
export function selfCrossing(segment: Segment): SelfCrossing | undefined {
  if (segment.kind !== "cubic") return undefined;
  const { a, b, c } = powerForm(segment);
  const size = Math.max(Math.hypot(a.x, a.y), Math.hypot(b.x, b.y), Math.hypot(c.x, c.y));
  const ab = cross(a, b);
  const ac = cross(a, c);
  const bc = cross(b, c);
  const straight = 1e-14 * size * size;
  if (Math.abs(ab) <= straight && Math.abs(ac) <= straight && Math.abs(bc) <= straight) {
    return doubledBack(segment, { a, b, c });
  }
  if (Math.abs(ab) <= straight) return undefined;
  // B(s) = B(t) with s ≠ t: a(s² + st + t²) + b(s + t) + c = 0; crossed with a it gives the sum, along a the product.
  const sum = -ac / ab;
  const squared = a.x * a.x + a.y * a.y;
  const product = sum * sum + ((b.x * sum + c.x) * a.x + (b.y * sum + c.y) * a.y) / squared;
  const [t1, t2] = quadraticRoots(1, -sum, product);
  if (t1 === undefined || t2 === undefined || t2 - t1 < 1e-7) return undefined;
  if (t1 < -1e-12 || t2 > 1 + 1e-12 || (t1 < 1e-9 && t2 > 1 - 1e-9)) return undefined;
  return { t1, t2, point: pointAt(segment, t1) };
}

interface PowerForm {
  readonly a: Vec2;
  readonly b: Vec2;
  readonly c: Vec2;
}

/** B(t) − B(0) = a·t³ + b·t² + c·t. */
function powerForm({ from, control1, control2, to }: Cubic): PowerForm {
  const form = (axis: "x" | "y"): [number, number, number] => {
    const d0 = control1[axis] - from[axis];
    const d1 = control2[axis] - control1[axis];
    const d2 = to[axis] - control2[axis];
    return [d0 - 2 * d1 + d2, 3 * (d1 - d0), 3 * d0];
  };
  const [ax, bx, cx] = form("x");
  const [ay, by, cy] = form("y");
  return { a: { x: ax, y: ay }, b: { x: bx, y: by }, c: { x: cx, y: cy } };
}

/** On a straight line: the derivative changes sign inside. */
function doubledBack(segment: Cubic, { a, b, c }: PowerForm): SelfCrossing | undefined {
  const widest = [a, b, c].reduce((p, q) => (Math.hypot(q.x, q.y) > Math.hypot(p.x, p.y) ? q : p));
  const along = (v: Vec2): number => v.x * widest.x + v.y * widest.y;
  const turns = quadraticRoots(3 * along(a), 2 * along(b), along(c)).filter((t) => t > 1e-9 && t < 1 - 1e-9);
  // A double root is a halt, not a turn.
  const discriminant = along(b) ** 2 - 3 * along(a) * along(c);
  const turn = turns[0];
  if (turn === undefined || !(discriminant > 1e-18 * along(widest) ** 2)) return undefined;
  return { t1: turn, t2: turn, point: pointAt(segment, turn) };
}
