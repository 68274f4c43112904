import polygonClipping, { type MultiPolygon, type Polygon } from "polygon-clipping";
import { GeometryError } from "../errors/errors.js";
import type { Vec2 } from "./vec2.js";

/** A closed polygon by its corners, the first not repeated. */
export type Ring = readonly Vec2[];

/** What is made of two polygons. */
export type PolygonOperation = "union" | "intersection" | "difference";

/** Corners are set on a grid of this width before clipping, mm: nearly coincident edges become the same edge. */
export const CLIPPING_GRID = 1e-6;

const ATTEMPTS = 4;

/**
 * Boolean of two polygons: rings of the result, outer ones counter-clockwise, holes clockwise.
 *
 * polygon-clipping gives exact areas but throws on some nearly coincident edges. Corners are therefore set on a grid of
 * 1e-6 mm; where it still throws, the second polygon is moved by one grid step and it is tried again.
 *
 * @throws {GeometryError} `polygon-clipping` where no attempt succeeds, `polygon-not-finite` for a bad corner.
 *
 * @example
 * const square = [{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 1, y: 1 }, { x: 0, y: 1 }];
 * const moved = square.map(({ x, y }) => ({ x: x + 0.5, y }));
 * // they share half of the unit square
 * ringsArea(clipPolygons("intersection", [square], [moved])); // 0.5
 */
export function clipPolygons(operation: PolygonOperation, a: readonly Ring[], b: readonly Ring[]): Ring[] {
  const first = snapped(a, 0);
  let cause: unknown;
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    // Steps in changing directions: one of them leaves whatever edge the first try ran along.
    const second = snapped(b, attempt === 0 ? 0 : attempt % 2 === 1 ? attempt : -attempt);
    try {
      return polygonClipping[operation](first, second).flatMap(ringsOf);
    } catch (error) {
      cause = error;
    }
  }
  throw new GeometryError("polygon-clipping", `the ${operation} of two polygons could not be found`, {
    cause,
  });
}

function snapped(rings: readonly Ring[], steps: number): MultiPolygon {
  const snap = (value: number, move: number): number => {
    const grid = Math.round(value / CLIPPING_GRID) + move;
    if (!Number.isFinite(grid))
      throw new GeometryError("polygon-not-finite", `a corner at ${value} is no place`);
    return grid * CLIPPING_GRID;
  };
  return rings.map((ring): Polygon => [ring.map((p) => [snap(p.x, steps), snap(p.y, Math.sign(steps))])]);
}

function ringsOf(polygon: Polygon): Ring[] {
  // The library repeats the first corner at the end.
  return polygon.map((ring) => ring.slice(0, -1).map(([x, y]) => ({ x, y })));
}

/**
 * Signed area of one ring, mm²: positive counter-clockwise.
 *
 * @example
 * ringArea([{ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 4, y: 4 }, { x: 0, y: 4 }]); // 16
 */
export function ringArea(ring: Ring): number {
  const origin = ring[0];
  if (origin === undefined) return 0;
  let twice = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const p = ring[i] as Vec2;
    const q = ring[i + 1] as Vec2;
    twice += (p.x - origin.x) * (q.y - origin.y) - (p.y - origin.y) * (q.x - origin.x);
  }
  return twice / 2;
}

/**
 * Area that the rings of a result enclose together, mm².
 *
 * @example
 * ringsArea([[{ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 0, y: 4 }]]); // 8
 */
export const ringsArea = (rings: readonly Ring[]): number =>
  rings.reduce((sum, ring) => sum + ringArea(ring), 0);
