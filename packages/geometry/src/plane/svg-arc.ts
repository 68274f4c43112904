import { arcBetween, cubic, line, type Segment } from "./segment.js";
import type { Vec2 } from "./vec2.js";

/** An elliptical arc as SVG path data gives it, between two points; lengths in mm, y up. */
export interface SvgArc {
  readonly radiusX: number;
  readonly radiusY: number;
  /** Direction of the first axis, rad. */
  readonly rotation: number;
  readonly largeArc: boolean;
  /** Turns counter-clockwise (y up). */
  readonly sweep: boolean;
}

/** Greatest distance between an elliptical arc and the cubics that stand for it, mm. */
export const ELLIPSE_ERROR = 1e-7;
/** Radii that differ by less than this share make a circle. */
const CIRCLE_SHARE = 1e-12;

/**
 * The segments of an SVG arc command: one exact arc where the radii are equal, otherwise cubics within
 * {@link ELLIPSE_ERROR} of the ellipse. Radii too small to reach are grown, and a radius of zero makes a line, as the
 * format asks.
 *
 * Source: W3C, Scalable Vector Graphics 2, appendix B.2 (conversion from endpoint to centre form, out-of-range radii).
 */
export function segmentsFromSvgArc(from: Vec2, to: Vec2, arc: SvgArc): Segment[] {
  if (from.x === to.x && from.y === to.y) return [];
  let radiusX = Math.abs(arc.radiusX);
  let radiusY = Math.abs(arc.radiusY);
  if (radiusX === 0 || radiusY === 0) return [line(from, to)];
  // In the frame of the unit circle: rotated back, each axis divided by its radius.
  const cos = Math.cos(arc.rotation);
  const sin = Math.sin(arc.rotation);
  const halfX = (from.x - to.x) / 2;
  const halfY = (from.y - to.y) / 2;
  const grow = Math.hypot((cos * halfX + sin * halfY) / radiusX, (cos * halfY - sin * halfX) / radiusY);
  const reach = Math.min(1, grow);
  radiusX *= Math.max(1, grow);
  radiusY *= Math.max(1, grow);
  // The half chord of a unit circle is the sine of half the turn.
  const small = 2 * Math.asin(reach);
  const turn = (arc.largeArc ? 2 * Math.PI - small : small) * (arc.sweep ? 1 : -1);
  if (Math.abs(radiusX - radiusY) <= CIRCLE_SHARE * radiusX) return [arcBetween(from, to, turn)];
  const toUnit = (p: Vec2): Vec2 => ({
    x: (cos * p.x + sin * p.y) / radiusX,
    y: (cos * p.y - sin * p.x) / radiusY,
  });
  const fromUnit = (p: Vec2): Vec2 => ({
    x: cos * radiusX * p.x - sin * radiusY * p.y,
    y: sin * radiusX * p.x + cos * radiusY * p.y,
  });
  return ellipseCubics(from, to, turn, Math.max(radiusX, radiusY), toUnit, fromUnit);
}

function ellipseCubics(
  from: Vec2,
  to: Vec2,
  turn: number,
  greatest: number,
  toUnit: (p: Vec2) => Vec2,
  fromUnit: (p: Vec2) => Vec2,
): Segment[] {
  const circle = arcBetween(toUnit(from), toUnit(to), turn);
  // A quarter circle by one cubic is 2.73e-4 r off, falling with the sixth power of the turn.
  const quarters = (Math.abs(turn) / (Math.PI / 2)) * ((2.73e-4 * greatest) / ELLIPSE_ERROR) ** (1 / 6);
  const pieces = Math.max(1, Math.ceil(quarters));
  const step = turn / pieces;
  const handle = (4 / 3) * Math.tan(step / 4);
  const onCircle = (angle: number, tangent: number): Vec2 =>
    fromUnit({
      x: circle.centre.x + Math.cos(angle) - tangent * Math.sin(angle),
      y: circle.centre.y + Math.sin(angle) + tangent * Math.cos(angle),
    });
  const segments: Segment[] = [];
  let start = from;
  for (let i = 0; i < pieces; i++) {
    const a = circle.startAngle + i * step;
    const end = i === pieces - 1 ? to : onCircle(a + step, 0);
    segments.push(cubic(start, onCircle(a, handle), onCircle(a + step, -handle), end));
    start = end;
  }
  return segments;
}
