import type { Vec2 } from "../plane/vec2.js";

/** An affine map as SVG's `matrix(a b c d e f)`: x′ = a·x + c·y + e, y′ = b·x + d·y + f. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const affine = (a: number, b: number, c: number, d: number, e: number, f: number): Affine => ({
  a,
  b,
  c,
  d,
  e,
  f,
});

export const IDENTITY: Affine = affine(1, 0, 0, 1, 0, 0);

/** The map that does `inner` first and then `outer`. */
export function compose(outer: Affine, inner: Affine): Affine {
  return affine(
    outer.a * inner.a + outer.c * inner.b,
    outer.b * inner.a + outer.d * inner.b,
    outer.a * inner.c + outer.c * inner.d,
    outer.b * inner.c + outer.d * inner.d,
    outer.a * inner.e + outer.c * inner.f + outer.e,
    outer.b * inner.e + outer.d * inner.f + outer.f,
  );
}

export const mapPoint = ({ a, b, c, d, e, f }: Affine, { x, y }: Vec2): Vec2 => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f,
});

export const determinant = ({ a, b, c, d }: Affine): number => a * d - b * c;

/**
 * How a map stretches: the half axes of the ellipse that it makes of the unit circle, and the direction of the greater,
 * rad. The axes of a similarity are equal to the last few bits, because the part that tells them apart is itself zero.
 *
 * Source: singular values of a 2 × 2 matrix in closed form, from its similar and its mirrored part.
 */
export function stretchOf({ a, b, c, d }: Affine): { greater: number; lesser: number; direction: number } {
  const turning = { x: (a + d) / 2, y: (b - c) / 2 };
  const mirroring = { x: (a - d) / 2, y: (b + c) / 2 };
  const q = Math.hypot(turning.x, turning.y);
  const r = Math.hypot(mirroring.x, mirroring.y);
  return {
    greater: q + r,
    lesser: Math.abs(q - r),
    direction: (Math.atan2(turning.y, turning.x) + Math.atan2(mirroring.y, mirroring.x)) / 2,
  };
}
