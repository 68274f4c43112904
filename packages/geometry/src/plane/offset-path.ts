import { GeometryError } from "../errors/errors.js";
import { boundsMeet, segmentBounds } from "./bounds.js";
import { meetings } from "./intersect.js";
import { signedArea } from "./measure.js";
import { nearestOnSegment } from "./nearest.js";
import { offsetSegment } from "./offset.js";
import { type ParallelPiece, trimmedLoops } from "./offset-loops.js";
import type { Path } from "./path.js";
import { arcAround, endTangent, pointAt, type Segment } from "./segment.js";
import { splitSegment } from "./split.js";
import { cross, dot, distance as gapOf } from "./vec2.js";

/** Greatest error of the parallel to a cubic, mm; of lines and arcs it has none. */
const TOLERANCE = 1e-5;
/** A piece that comes this much nearer to the outline than it should is one to be trimmed, mm. */
const NEARER = 1e-4;
/** Ends that lie this near to each other need no corner between them, mm. */
const SAME_PLACE = 1e-7;
/** Halvings of a curve in search of the part that bends too sharply for a parallel. */
const HALVINGS = 12;

/**
 * The lines that run round an outline at a distance: for a saw's kerf, a scriber's point, a pencil. Every point of them
 * lies `distance` from the outline. Round an outward corner runs an arc; in an inward corner the lines are trimmed where
 * they meet; a place too narrow for the distance is left out. Lines and arcs stay what they are, cubics keep the
 * distance within 10⁻⁵ mm.
 *
 * @param path - Closed, simple, counter-clockwise.
 * @param distance - mm; positive outside, negative inside.
 * @returns closed paths, the one round the largest area first: mostly one, more where the way round closes on itself.
 * None where nothing is left inside.
 * @throws {GeometryError} `offset-no-direction`, `offset-unresolved` as {@link offsetSegment} does,
 * `intersection-unresolved` as {@link meetings} does; `path-open` for a path that is not closed.
 *
 * @example
 * const square = { segments: segmentsFromPathData("M0 0 H4 V4 H0 Z"), closed: true };
 * // four sides of 4 and four quarters of a circle: 16 + 4·4·1 + π·1²
 * signedArea(offsetPath(square, 1)[0] ?? square); // 35.1416
 */
export function offsetPath(path: Path, distance: number): Path[] {
  if (!path.closed) throw new GeometryError("path-open", "only a closed path has an outside");
  if (distance === 0) return [path];
  const raw = rawPieces(path, distance);
  const cut = raw.flatMap((piece, index) => splitAtMeetings(piece, index, raw));
  const kept = cut.filter(({ segment }) => keepsAway(segment, path, Math.abs(distance)));
  const turn = distance > 0 ? -1 : 1;
  const area = (loop: Path): number => Math.abs(signedArea(loop));
  return trimmedLoops(kept, turn).sort((a, b) => area(b) - area(a));
}

/** Parallels of all segments and the arcs round the outward corners, in order; too long wherever they meet. */
function rawPieces(path: Path, distance: number): ParallelPiece[] {
  const parallels = path.segments.map((segment) => parallelParts(segment, -distance, 0));
  const pieces = path.segments.flatMap((segment, index) => {
    const next = (index + 1) % path.segments.length;
    const after = path.segments[next] ?? segment;
    const own = parallels[index] ?? [];
    return [...own, ...cornerArc(segment, after, own.at(-1), parallels[next]?.[0], distance)];
  });
  return pieces.map((segment, order) => ({ segment, order }));
}

/** The parallel of a segment without the parts that bend too sharply for it: those would be trimmed. */
function parallelParts(segment: Segment, aside: number, depth: number): Segment[] {
  try {
    return [...offsetSegment(segment, aside, TOLERANCE)];
  } catch (error) {
    if (!(error instanceof GeometryError) || error.code !== "offset-too-tight") throw error;
    if (segment.kind !== "cubic" || depth >= HALVINGS) return [];
    return [
      ...parallelParts(splitSegment(segment, 0, 0.5), aside, depth + 1),
      ...parallelParts(splitSegment(segment, 0.5, 1), aside, depth + 1),
    ];
  }
}

/** The arc about a corner that stands out on the side of the offset. */
function cornerArc(
  before: Segment,
  after: Segment,
  end: Segment | undefined,
  start: Segment | undefined,
  distance: number,
): Segment[] {
  const a = endTangent(before, "to");
  const b = endTangent(after, "from");
  if (a === undefined || b === undefined) return [];
  const turn = Math.atan2(cross(a, b), dot(a, b));
  // Back on itself is a turn to either side; round the point of it the line always runs.
  const sweep = Math.abs(Math.abs(turn) - Math.PI) < 1e-9 ? Math.sign(distance) * Math.PI : turn;
  if (sweep * distance <= 0 || Math.abs(sweep * distance) < SAME_PLACE) return [];
  const side = Math.sign(distance) * (Math.PI / 2);
  const corner = after.from;
  const arc = arcAround(corner, Math.abs(distance), Math.atan2(a.y, a.x) - side, sweep);
  return [{ ...arc, from: end?.to ?? arc.from, to: start?.from ?? arc.to }];
}

function splitAtMeetings(
  { segment, order }: ParallelPiece,
  index: number,
  all: readonly ParallelPiece[],
): ParallelPiece[] {
  const box = segmentBounds(segment);
  const cuts = new Set<number>();
  for (const [other, piece] of all.entries()) {
    if (other === index || !boundsMeet(box, segmentBounds(piece.segment), SAME_PLACE)) continue;
    for (const meeting of meetings(segment, piece.segment)) {
      const contacts = meeting.kind === "point" ? [meeting] : [meeting.from, meeting.to];
      for (const { t1 } of contacts) if (t1 > 0 && t1 < 1) cuts.add(t1);
    }
  }
  const ts = [0, ...[...cuts].sort((a, b) => a - b), 1];
  return ts
    .slice(1)
    .map((t, i) => ({ segment: splitSegment(segment, ts[i] ?? 0, t), order }))
    .filter(({ segment: part }) => gapOf(part.from, part.to) > SAME_PLACE || part.kind === "arc");
}

const SAMPLES = [0.25, 0.5, 0.75];

/** Whether a piece, which meets no other inside, is as far from the outline as it should be. */
function keepsAway(piece: Segment, path: Path, distance: number): boolean {
  const points = SAMPLES.map((t) => pointAt(piece, t));
  const box = segmentBounds(piece);
  return path.segments.every(
    (segment) =>
      !boundsMeet(box, segmentBounds(segment), distance) ||
      points.every((point) => nearestOnSegment(segment, point).distance > distance - NEARER),
  );
}
