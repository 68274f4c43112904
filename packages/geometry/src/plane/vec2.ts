/** A point or direction in the plane of the blade, mm: x toward the tip, y toward the spine. */
export interface Vec2 {
  readonly x: number;
  readonly y: number;
}

/**
 * A point or a vector, mm.
 *
 * @example
 * vec2(3, 4); // { x: 3, y: 4 }
 */
export const vec2 = (x: number, y: number): Vec2 => ({ x, y });
/**
 * a + b.
 *
 * @example
 * add({ x: 1, y: 2 }, { x: 3, y: 4 }); // { x: 4, y: 6 }
 */
export const add = (a: Vec2, b: Vec2): Vec2 => ({ x: a.x + b.x, y: a.y + b.y });
/**
 * a − b.
 *
 * @example
 * subtract({ x: 3, y: 4 }, { x: 1, y: 1 }); // { x: 2, y: 3 }
 */
export const subtract = (a: Vec2, b: Vec2): Vec2 => ({ x: a.x - b.x, y: a.y - b.y });
/**
 * a times a factor.
 *
 * @example
 * scale({ x: 3, y: 4 }, 2); // { x: 6, y: 8 }
 */
export const scale = (a: Vec2, factor: number): Vec2 => ({ x: a.x * factor, y: a.y * factor });
/**
 * Scalar product.
 *
 * @example
 * dot({ x: 1, y: 2 }, { x: 3, y: 4 }); // 11
 */
export const dot = (a: Vec2, b: Vec2): number => a.x * b.x + a.y * b.y;
/**
 * z component of the cross product: positive when b lies to the left of a.
 *
 * @example
 * cross({ x: 1, y: 0 }, { x: 0, y: 1 }); // 1
 */
export const cross = (a: Vec2, b: Vec2): number => a.x * b.y - a.y * b.x;
/**
 * Distance of two points.
 *
 * @example
 * distance({ x: 0, y: 0 }, { x: 3, y: 4 }); // 5
 */
export const distance = (a: Vec2, b: Vec2): number => Math.hypot(a.x - b.x, a.y - b.y);
/**
 * Length of a vector.
 *
 * @example
 * norm({ x: 3, y: 4 }); // 5
 */
export const norm = (a: Vec2): number => Math.hypot(a.x, a.y);
/**
 * The point that lies the share t of the way from a to b.
 *
 * @example
 * interpolate({ x: 0, y: 0 }, { x: 8, y: 4 }, 0.25); // { x: 2, y: 1 }
 */
export const interpolate = (a: Vec2, b: Vec2, t: number): Vec2 => ({
  x: a.x + (b.x - a.x) * t,
  y: a.y + (b.y - a.y) * t,
});
