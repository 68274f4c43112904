import { count } from "../errors/issue.js";
import { cubic, line, type Segment } from "../plane/segment.js";
import { segmentsFromSvgArc } from "../plane/svg-arc.js";
import type { PathCommand } from "../plane/svg-commands.js";
import { distance, interpolate, type Vec2 } from "../plane/vec2.js";
import { type Affine, compose, determinant, mapPoint, stretchOf } from "./affine.js";
import { drawingError } from "./drawing-issue.js";
import { startAt } from "./ends.js";
import { FARTHEST, MOST_PIECES } from "./limits.js";

/** Pieces shorter than this are the dust of an editor's rounding and are left out, mm. */
const DUST = 1e-6;

/**
 * The connected strokes of a list of path commands under an affine map to mm, y up. Lines and cubics are mapped exactly;
 * an arc of an ellipse stays an exact arc wherever the map makes a circle of it, and becomes cubics within 1e-7 mm of
 * it wherever it does not.
 *
 * @param id - what messages call the element.
 * @throws {SpecError} `drawing-flattened`, `drawing-out-of-reach`, `drawing-too-many-pieces`
 */
export function strokesOf(commands: readonly PathCommand[], map: Affine, id: string): Segment[][] {
  const { greater, lesser } = stretchOf(map);
  if (!(lesser > 1e-9 * greater) || !Number.isFinite(greater)) {
    throw drawingError(
      "drawing-flattened",
      "The element {id} is pressed flat, or blown up beyond measure, by its transform. Undo the transform in the editor.",
      { id },
    );
  }
  const pen = new Pen(map, id);
  for (const command of commands) pen.draw(command);
  return pen.strokes.map(withoutDust).filter((stroke) => stroke.length > 0);
}

class Pen {
  readonly strokes: Segment[][] = [];
  readonly #map: Affine;
  readonly #id: string;
  #local: Vec2 = { x: 0, y: 0 };
  #localStart: Vec2 = { x: 0, y: 0 };
  #at: Vec2 = { x: 0, y: 0 };
  #start: Vec2 = { x: 0, y: 0 };
  #stroke: Segment[] = [];
  #pieces = 0;

  constructor(map: Affine, id: string) {
    this.#map = map;
    this.#id = id;
  }

  draw([name, ...n]: PathCommand): void {
    const value = (i: number): number => n[i] as number;
    const point = (i: number): Vec2 => ({ x: value(i), y: value(i + 1) });
    switch (name) {
      case "M":
        this.#move(point(0));
        break;
      case "L":
        this.#line(point(0));
        break;
      case "H":
        this.#line({ x: value(0), y: this.#local.y });
        break;
      case "V":
        this.#line({ x: this.#local.x, y: value(0) });
        break;
      case "C":
        this.#cubic(this.#to(point(0)), this.#to(point(2)), point(4));
        break;
      case "Q": {
        // A quadratic is the cubic whose handles reach two thirds of the way to its one control point.
        const control = this.#to(point(0));
        const end = this.#to(point(2));
        this.#cubic(interpolate(this.#at, control, 2 / 3), interpolate(end, control, 2 / 3), point(2));
        break;
      }
      case "A":
        this.#arc(n, point(5));
        break;
      default:
        this.#close();
    }
  }

  #move(to: Vec2): void {
    this.#local = to;
    this.#localStart = to;
    this.#at = this.#to(to);
    this.#start = this.#at;
    this.#stroke = [];
    this.strokes.push(this.#stroke);
  }

  /** After Z the pen stands at the start, and what follows is a stroke of its own. */
  #close(): void {
    this.#add([line(this.#at, this.#start)], this.#localStart, this.#start);
    this.#move(this.#localStart);
  }

  #line(to: Vec2): void {
    const end = this.#to(to);
    this.#add([line(this.#at, end)], to, end);
  }

  #cubic(control1: Vec2, control2: Vec2, to: Vec2): void {
    const end = this.#to(to);
    this.#add([cubic(this.#at, control1, control2, end)], to, end);
  }

  #arc(n: readonly number[], to: Vec2): void {
    const [radiusX = 0, radiusY = 0, degrees = 0, large = 0, sweep = 0] = n;
    const end = this.#to(to);
    // The format counts this one angle in degrees.
    const angle = (degrees / 180) * Math.PI;
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    // The ellipse is the unit circle under its radii, its rotation and the map; so is its image.
    const { greater, lesser, direction } = stretchOf(
      compose(this.#map, {
        a: cos * radiusX,
        b: sin * radiusX,
        c: -sin * radiusY,
        d: cos * radiusY,
        e: 0,
        f: 0,
      }),
    );
    const segments = segmentsFromSvgArc(this.#at, end, {
      radiusX: radiusX === 0 || radiusY === 0 ? 0 : greater,
      radiusY: radiusX === 0 || radiusY === 0 ? 0 : lesser,
      rotation: direction,
      largeArc: large !== 0,
      sweep: (sweep !== 0) === determinant(this.#map) > 0,
    });
    this.#add(segments, to, end);
  }

  #to(local: Vec2): Vec2 {
    const point = mapPoint(this.#map, local);
    if (Math.abs(point.x) <= FARTHEST && Math.abs(point.y) <= FARTHEST) return point;
    throw drawingError(
      "drawing-out-of-reach",
      "The element {id} reaches more than a kilometre from the drawing's origin. Check the scale, and move it nearer.",
      { id: this.#id },
    );
  }

  #add(segments: readonly Segment[], local: Vec2, at: Vec2): void {
    this.#stroke.push(...segments);
    this.#local = local;
    this.#at = at;
    this.#pieces += segments.length;
    if (this.#pieces <= MOST_PIECES) return;
    throw drawingError(
      "drawing-too-many-pieces",
      "The element {id} has more than {most} pieces. Simplify the path in the editor.",
      { id: this.#id, most: count(MOST_PIECES) },
    );
  }
}

function withoutDust(stroke: readonly Segment[]): Segment[] {
  const kept: Segment[] = [];
  for (const segment of stroke) {
    if (isDust(segment)) continue;
    const pen = kept.at(-1)?.to;
    kept.push(pen === undefined ? segment : startAt(segment, pen));
  }
  return kept;
}

function isDust(segment: Segment): boolean {
  const near = (p: Vec2): boolean => distance(segment.from, p) <= DUST;
  if (!near(segment.to)) return false;
  if (segment.kind === "arc") return segment.radius * Math.abs(segment.sweep) <= DUST;
  return segment.kind === "line" || (near(segment.control1) && near(segment.control2));
}
