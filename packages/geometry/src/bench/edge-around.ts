import { GeometryError } from "../errors/errors.js";
import { offsetPath } from "../plane/offset-path.js";
import { line, pointAt, type Segment } from "../plane/segment.js";
import { splitSegment } from "../plane/split.js";
import type { Vec2 } from "../plane/vec2.js";
import type { Cavity } from "./cavity.js";
import { closedThrough } from "./clip-x.js";

/** Places of each piece that are looked at for where it leaves the half. */
const SAMPLES = 16;
const HALVINGS = 50;
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
  const inside = ({ x, y }: Vec2): boolean => x >= mouth && y <= fold;
  const parts = loop.flatMap((segment) => wantedParts(segment, inside));
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

/** The parts of a piece over which every place is wanted; their ends are found by halving. */
function wantedParts(piece: Segment, isWanted: (point: Vec2) => boolean): Segment[] {
  const wanted = (t: number): boolean => isWanted(pointAt(piece, t));
  const marks = Array.from({ length: SAMPLES + 1 }, (_, i) => i / SAMPLES);
  const states = marks.map(wanted);
  const parts: Segment[] = [];
  let start: number | undefined = states[0] === true ? 0 : undefined;
  for (const [index, to] of marks.entries()) {
    if (index === 0 || states[index] === states[index - 1]) continue;
    const edge = halved(marks[index - 1] ?? 0, to, states[index - 1] === true, wanted);
    if (start === undefined) start = edge;
    else {
      if (edge > start) parts.push(splitSegment(piece, start, edge));
      start = undefined;
    }
  }
  if (start !== undefined && start < 1) parts.push(splitSegment(piece, start, 1));
  return parts;
}

/** The place between two parameters at which what holds at the first ends; on its wanted side. */
function halved(from: number, to: number, atFrom: boolean, wanted: (t: number) => boolean): number {
  let [a, b] = [from, to];
  for (let pass = 0; pass < HALVINGS; pass++) {
    const middle = (a + b) / 2;
    if (wanted(middle) === atFrom) a = middle;
    else b = middle;
  }
  return atFrom ? a : b;
}
