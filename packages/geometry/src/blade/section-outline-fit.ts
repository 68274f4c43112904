import { type Cubic, cubic, pointAt } from "../plane/segment.js";
import { distance, type Vec2 } from "../plane/vec2.js";

/** How far a fitted curve may lie from the one it stands for, mm: far below what any printer shows, even at 20 : 1. */
const FIT_ERROR = 1e-7;
/** Halvings of one stretch at most; what is left then is far below a pen's width. */
const MOST_HALVINGS = 14;
/** Where a fitted piece is held against the curve: half way between the places that it was fitted to. */
const CHECKED = [1 / 6, 1 / 2, 5 / 6] as const;

/**
 * Cubics through a smooth curve, each through four of its points, halved until they lie within {@link FIT_ERROR} of it.
 *
 * @param curve - point of the curve at t, 0 to 1; mm.
 * @returns the pieces in order, joined end to end.
 */
export function fitCubics(curve: (t: number) => Vec2): Cubic[] {
  const pieces: Cubic[] = [];
  const fit = (t0: number, p0: Vec2, t1: number, p1: Vec2, halvings: number): void => {
    const at = (share: number): Vec2 => curve(t0 + (t1 - t0) * share);
    const piece = through(p0, at(1 / 3), at(2 / 3), p1);
    const isClose = CHECKED.every((share) => distance(pointAt(piece, share), at(share)) <= FIT_ERROR);
    if (isClose || halvings >= MOST_HALVINGS) {
      pieces.push(piece);
      return;
    }
    const middle = (t0 + t1) / 2;
    const p = curve(middle);
    fit(t0, p0, middle, p, halvings + 1);
    fit(middle, p, t1, p1, halvings + 1);
  };
  fit(0, curve(0), 1, curve(1), 0);
  return pieces;
}

/** The cubic that passes a, b, c, d at parameters 0, 1/3, 2/3, 1. */
function through(a: Vec2, b: Vec2, c: Vec2, d: Vec2): Cubic {
  const control = (p: number, q: number, r: number, s: number): number =>
    (-5 * p + 18 * q - 9 * r + 2 * s) / 6;
  return cubic(
    a,
    { x: control(a.x, b.x, c.x, d.x), y: control(a.y, b.y, c.y, d.y) },
    { x: control(d.x, c.x, b.x, a.x), y: control(d.y, c.y, b.y, a.y) },
    d,
  );
}
