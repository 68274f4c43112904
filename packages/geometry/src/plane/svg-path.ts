import { Bezier } from "bezier-js";
import { GeometryError } from "../errors/errors.js";
import { cubic, line, type Segment } from "./segment.js";
import { segmentsFromSvgArc } from "./svg-arc.js";
import { type PathCommand, pathCommands } from "./svg-commands.js";
import type { Vec2 } from "./vec2.js";

/**
 * Reads SVG path data as mm with y up, so an arc's sweep flag 1 turns counter-clockwise.
 *
 * All commands are known, absolute and relative: M L H V C S Q T A Z. Quadratics are raised to the same cubic; a circular
 * arc stays an exact arc, an elliptical one becomes cubics within 1e-7 mm. Pieces without length are dropped. One
 * connected stroke only: a second M must stand where the pen already is.
 *
 * @param start - where the pen stands if the data does not begin with M.
 * @throws {GeometryError} `path-data-unreadable` where it is not path data up to its last character, or a number
 *   is not finite; `path-data-no-start` without M and start; `path-data-gap` for a second M elsewhere.
 *
 * @example
 * segmentsFromPathData("M0 0 h10 a5 5 0 0 1 5 5"); // a line to (10, 0) and a quarter circle to (15, 5)
 */
export function segmentsFromPathData(data: string, start?: Vec2): Segment[] {
  return readPathData(data, start).segments;
}

/** Segments read from path data, and where the pen stood before and after, mm. */
export interface PathData {
  /** Where the stroke begins: its first M, or the start that was given. */
  readonly start: Vec2;
  /** Where the pen stands at the end. */
  readonly end: Vec2;
  readonly segments: readonly Segment[];
}

/**
 * As {@link segmentsFromPathData}, with the points where the stroke begins and ends.
 *
 * @example
 * readPathData("M0 0 H4").end; // { x: 4, y: 0 }
 */
export function readPathData(data: string, start?: Vec2): { start: Vec2; end: Vec2; segments: Segment[] } {
  const pen = new Pen();
  for (const command of pathCommands(data, start)) pen.draw(command);
  return { start: pen.start, end: pen.at, segments: pen.segments };
}

/** A second M this near to the pen continues the stroke, mm. */
const SAME_PLACE = 1e-6;

class Pen {
  at: Vec2 = { x: 0, y: 0 };
  start: Vec2 = { x: 0, y: 0 };
  readonly segments: Segment[] = [];
  #moved = false;

  draw([name, ...n]: PathCommand): void {
    const value = (i: number): number => n[i] as number;
    const point = (i: number): Vec2 => ({ x: value(i), y: value(i + 1) });
    if (name === "M") this.#move(point(0));
    else if (name === "L") this.#line(point(0));
    else if (name === "H") this.#line({ x: value(0), y: this.at.y });
    else if (name === "V") this.#line({ x: this.at.x, y: value(0) });
    else if (name === "C") this.#cubic(point(0), point(2), point(4));
    else if (name === "Q") this.#quadratic(point(0), point(2));
    else if (name === "A") this.#arc(n);
    else this.#line(this.start);
  }

  #move(to: Vec2): void {
    const gap = Math.hypot(to.x - this.at.x, to.y - this.at.y);
    if (this.#moved && gap > SAME_PLACE) {
      throw new GeometryError(
        "path-data-gap",
        `the path data lifts the pen from (${this.at.x}, ${this.at.y}) to (${to.x}, ${to.y}); a run is one connected stroke`,
      );
    }
    if (this.#moved) return;
    this.#moved = true;
    this.at = to;
    this.start = to;
  }

  #line(to: Vec2): void {
    if (!same(this.at, to)) this.segments.push(line(this.at, to));
    this.at = to;
  }

  #cubic(control1: Vec2, control2: Vec2, to: Vec2): void {
    if (![control1, control2, to].every((p) => same(p, this.at))) {
      this.segments.push(cubic(this.at, control1, control2, to));
    }
    this.at = to;
  }

  #quadratic(control: Vec2, to: Vec2): void {
    const raised = new Bezier([this.at, control, to]).raise().points;
    this.#cubic(planar(raised[1]), planar(raised[2]), to);
  }

  #arc(n: readonly number[]): void {
    const [radiusX = 0, radiusY = 0, degrees = 0, large = 0, sweep = 0, x = 0, y = 0] = n;
    const to = { x, y };
    // The format counts this one angle in degrees.
    const rotation = (degrees / 180) * Math.PI;
    this.segments.push(
      ...segmentsFromSvgArc(this.at, to, {
        radiusX,
        radiusY,
        rotation,
        largeArc: large !== 0,
        sweep: sweep !== 0,
      }),
    );
    this.at = to;
  }
}

const same = (a: Vec2, b: Vec2): boolean => a.x === b.x && a.y === b.y;
const planar = (p: Vec2 | undefined): Vec2 => ({ x: p?.x ?? Number.NaN, y: p?.y ?? Number.NaN });
