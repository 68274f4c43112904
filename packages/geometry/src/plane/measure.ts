import { GeometryError } from "../errors/errors.js";
import { gaussRule } from "../numeric/gauss.js";
import type { Path } from "./path.js";
import { derivativeAt, pointAt, type Segment } from "./segment.js";
import type { Vec2 } from "./vec2.js";

/** Area of a region and its first and second moments about the origin of the frame. */
export interface AreaMoments {
  /** mm²; positive where the path runs counter-clockwise. */
  readonly area: number;
  /** ∬x dA and ∬y dA, mm³. */
  readonly first: Vec2;
  /** ∬x² dA, ∬y² dA and ∬xy dA, mm⁴. */
  readonly second: { readonly xx: number; readonly yy: number; readonly xy: number };
}

/** Exact for the second moments of a cubic: three factors of degree 3 and one of degree 2 make degree 11. */
const POINTS = 6;
/** An arc is cut to this turn at most; there six points leave less than 1e-17 r⁴. */
const ARC_TURN = Math.PI / 16;

/**
 * Area and moments of the region inside a closed path, by Green's theorem along the curves themselves: nothing is
 * flattened, so the only error is rounding, about 1e-15 of the whole. Clockwise paths measure negative.
 *
 * @throws {GeometryError} `path-open` for a path that is not closed.
 *
 * @example
 * const rectangle = { segments: segmentsFromPathData("M0 0 H4 V2 H0 Z"), closed: true };
 * // a corner at the origin: area 8, ∬x² dA = 2·4³/3
 * areaMoments(rectangle).second.xx; // 42.667
 */
export function areaMoments(path: Path): AreaMoments {
  const { x, y, ...sums } = localSums(path);
  const { area, mx, my, xx, yy, xy } = sums;
  return {
    area,
    first: { x: mx + x * area, y: my + y * area },
    second: {
      xx: xx + 2 * x * mx + x * x * area,
      yy: yy + 2 * y * my + y * y * area,
      xy: xy + x * my + y * mx + x * y * area,
    },
  };
}

/**
 * Signed area inside a closed path, mm²: positive counter-clockwise.
 *
 * @throws {GeometryError} `path-open`
 *
 * @example
 * const square = { segments: segmentsFromPathData("M0 0 H4 V4 H0 Z"), closed: true };
 * signedArea(square); // 16
 */
export const signedArea = (path: Path): number => localSums(path).area;

/**
 * Centroid of the region inside a closed path, mm.
 *
 * @throws {GeometryError} `path-open`, or `no-area` for a path that encloses none.
 *
 * @example
 * const square = { segments: segmentsFromPathData("M0 0 H4 V4 H0 Z"), closed: true };
 * centroid(square); // { x: 2, y: 2 }
 */
export function centroid(path: Path): Vec2 {
  const { x, y, area, mx, my } = localSums(path);
  if (area === 0) throw new GeometryError("no-area", "the path encloses no area, so it has no centroid");
  return { x: x + mx / area, y: y + my / area };
}

interface LocalSums {
  /** The point that the sums are taken about: near the path, so that little is lost by cancellation. */
  readonly x: number;
  readonly y: number;
  readonly area: number;
  readonly mx: number;
  readonly my: number;
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

function localSums(path: Path): LocalSums {
  if (!path.closed) throw new GeometryError("path-open", "only a closed path has an area");
  const origin = path.segments[0]?.from ?? { x: 0, y: 0 };
  const sums = { area: 0, mx: 0, my: 0, xx: 0, yy: 0, xy: 0 };
  const { nodes, weights } = gaussRule(POINTS);
  for (const segment of path.segments) {
    const pieces = segment.kind === "arc" ? Math.max(1, Math.ceil(Math.abs(segment.sweep) / ARC_TURN)) : 1;
    for (let piece = 0; piece < pieces; piece++) {
      for (let i = 0; i < POINTS; i++) {
        const t = (piece + (nodes[i] as number)) / pieces;
        addSample(sums, segment, t, (weights[i] as number) / pieces, origin);
      }
    }
  }
  return { x: origin.x, y: origin.y, ...sums };
}

type Sums = { area: number; mx: number; my: number; xx: number; yy: number; xy: number };

/** Integrands homogeneous in position, times x dy − y dx: ∮ of degree k over k + 2 is the area integral. */
function addSample(sums: Sums, segment: Segment, t: number, weight: number, origin: Vec2): void {
  const p = pointAt(segment, t);
  const d = derivativeAt(segment, t);
  const x = p.x - origin.x;
  const y = p.y - origin.y;
  const swept = (x * d.y - y * d.x) * weight;
  sums.area += swept / 2;
  sums.mx += (x * swept) / 3;
  sums.my += (y * swept) / 3;
  sums.xx += (x * x * swept) / 4;
  sums.yy += (y * y * swept) / 4;
  sums.xy += (x * y * swept) / 4;
}
