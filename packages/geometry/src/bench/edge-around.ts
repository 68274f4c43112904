import { GeometryError } from "../errors/errors.js";
import { findRoot } from "../numeric/roots.js";
import { offsetPath } from "../plane/offset-path.js";
import { line, pointAt, type Segment } from "../plane/segment.js";
import { splitSegment } from "../plane/split.js";
import type { Vec2 } from "../plane/vec2.js";
import type { Cavity } from "./cavity.js";
import { closedThrough } from "./clip-x.js";

/** Places of each piece that are looked at for where it leaves the half. */
const SAMPLES = 16;
/** How near a place on a piece is found, as its parameter. */
const NEAR = 1e-14;
/** Ends nearer than this are one, mm. */
const JOINED = 1e-6;

/**
 * The line at a distance around all that passes through a cavity, from the mouth round the tip to the fold. Lines and arcs stay
 * exact, parallels of cubics keep the distance as {@link offsetPath} does.
 *
 * @param fold - y of the fold, mm: nothing of the line lies above it.
 * @throws {GeometryError} `sheath-edge` where it does not lead from mouth to fold.
 */
export function edgeAround(cavity: Cavity, fold: number, distance: number): Segment[] {
  const { mouth, lower, front, upper, low, high } = cavity;
  // Carried on level behind the mouth, so that the line is there wherever it is cut off.
  const behind = mouth - 2 * distance;
  const whole = closedThrough([
    line({ x: behind, y: low }, { x: mouth, y: low }),
    ...lower,
    ...front,
    ...upper,
    line({ x: mouth, y: high }, { x: behind, y: high }),
  ]);
  const loop = offsetPath(whole, distance)[0]?.segments ?? [];
  const room = ({ x, y }: Vec2): number => Math.min(x - mouth, fold - y);
  const parts = loop.flatMap((segment) => partsWithRoom(segment, room));
  const start = parts.findIndex(
    ({ from }, i) => !meets(parts[(i + parts.length - 1) % parts.length]?.to, from) && from.y <= low,
  );
  const run = start < 0 ? [] : [...parts.slice(start), ...parts.slice(0, start)];
  const end = run.findIndex(({ to }, i) => !meets(to, run[i + 1]?.from));
  const edge = run.slice(0, end + 1);
  const last = edge.at(-1)?.to;
  if (last === undefined || Math.abs(last.y - fold) > JOINED) {
    throw new GeometryError(
      "sheath-edge",
      `no edge ${distance} mm around the blade leads from mouth to fold`,
    );
  }
  return edge;
}

const meets = (a: Vec2 | undefined, b: Vec2 | undefined): boolean =>
  a !== undefined && b !== undefined && Math.hypot(a.x - b.x, a.y - b.y) < JOINED;

/** The parts of a piece over which a measure of every place is 0 or more. */
function partsWithRoom(piece: Segment, roomOf: (point: Vec2) => number): Segment[] {
  const room = (t: number): number => roomOf(pointAt(piece, t));
  const marks = Array.from({ length: SAMPLES + 1 }, (_, i) => i / SAMPLES);
  const has = marks.map((t) => room(t) >= 0);
  const parts: Segment[] = [];
  let start: number | undefined = has[0] === true ? 0 : undefined;
  for (const [index, to] of marks.entries()) {
    if (index === 0 || has[index] === has[index - 1]) continue;
    const edge = findRoot(room, marks[index - 1] ?? 0, to, NEAR) ?? to;
    if (start === undefined) start = edge;
    else {
      if (edge > start) parts.push(splitSegment(piece, start, edge));
      start = undefined;
    }
  }
  if (start !== undefined && start < 1) parts.push(splitSegment(piece, start, 1));
  return parts;
}
