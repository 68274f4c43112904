import { GeometryError } from "../errors/errors.js";
import { pointAt, type Segment } from "./segment.js";
import type { Vec2 } from "./vec2.js";

/** How path data is written. */
export interface PathDataOptions {
  /** Turns the drawing from y up to y down, as SVG sheets are. Default false. */
  readonly flipY?: boolean;
  /** Digits after the point, 0 to 12; default 3, a thousandth of a millimetre. */
  readonly decimals?: number;
  /** Added after the flip, mm. */
  readonly offset?: Vec2;
  /** End with Z. Default false. */
  readonly close?: boolean;
}

/**
 * SVG path data of connected segments: lines as L, circular arcs as A, cubics as C. A new M is written wherever a segment
 * does not start where the last one ended. Numbers have a fixed count of decimals, never an exponent or a negative zero.
 * An arc of more than a quarter turn is written in two, so that rounding cannot tip it onto the wrong side and a full turn
 * does not vanish.
 *
 * @throws {GeometryError} `path-not-finite` where a coordinate is not a finite number.
 *
 * @example
 * pathDataFromSegments([line({ x: 0, y: 0 }, { x: 10, y: 5 })], { flipY: true, decimals: 1 }); // "M0.0 0.0 L10.0 -5.0"
 */
export function pathDataFromSegments(segments: readonly Segment[], options: PathDataOptions = {}): string {
  const { flipY = false, decimals = 3, offset = { x: 0, y: 0 }, close = false } = options;
  const number = (value: number): string => fixed(value, decimals);
  const point = (p: Vec2): string => `${number(p.x + offset.x)} ${number((flipY ? -p.y : p.y) + offset.y)}`;
  const parts: string[] = [];
  let pen: Vec2 | undefined;
  for (const segment of segments) {
    if (
      pen === undefined ||
      Math.hypot(segment.from.x - pen.x, segment.from.y - pen.y) > 10 ** -decimals / 2
    ) {
      parts.push(`M${point(segment.from)}`);
    }
    parts.push(...commands(segment, point, number, flipY));
    pen = segment.to;
  }
  if (close && parts.length > 0) parts.push("Z");
  return parts.join(" ");
}

function commands(
  segment: Segment,
  point: (p: Vec2) => string,
  number: (value: number) => string,
  flipY: boolean,
): string[] {
  switch (segment.kind) {
    case "line":
      return [`L${point(segment.to)}`];
    case "cubic":
      return [`C${point(segment.control1)} ${point(segment.control2)} ${point(segment.to)}`];
    case "arc": {
      const halves = Math.abs(segment.sweep) > Math.PI / 2 + 1e-9 ? [0.5, 1] : [1];
      const flag = segment.sweep > 0 !== flipY ? 1 : 0;
      const r = number(segment.radius);
      return halves.map((t) => `A${r} ${r} 0 0 ${flag} ${point(t === 1 ? segment.to : pointAt(segment, t))}`);
    }
  }
}

/**
 * A number with a fixed count of decimals, without an exponent and without "-0".
 *
 * @throws {GeometryError} `path-not-finite`
 */
function fixed(value: number, decimals: number): string {
  // toFixed falls back to an exponent from 1e21 on; nothing drawn is that large.
  if (!(Math.abs(value) < 1e15)) {
    throw new GeometryError("path-not-finite", `${value} is not a coordinate that can be drawn`);
  }
  const text = value.toFixed(decimals);
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text;
}
