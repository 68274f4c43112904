import { parametersAtX } from "../plane/at-x.js";
import { splitAtXExtremes } from "../plane/monotone.js";
import { line, type Segment, translateSegment } from "../plane/segment.js";
import { splitSegment } from "../plane/split.js";
import type { Vec2 } from "../plane/vec2.js";
import { type BoundaryPiece, Footprint } from "./footprint.js";
import { emptyRuns, type Outline, outlineOfRuns, RUN_NAMES, type RunName } from "./outline.js";
import type { ProfileAllowance } from "./profile-strips.js";

/** A piece of the outline that runs one way along x, or stands upright; and how far it moves. */
interface MovedPiece {
  readonly run: RunName;
  readonly segment: Segment;
  /** Square to x; undefined for what stands upright, which goes where its neighbours go. */
  readonly up: number | undefined;
}

/**
 * The outline before the profile is trimmed: along every station the lowest side moved down by `outline` and the highest
 * moved up by it, then front and butt carried on along x by `tip` and `butt`, so that a pointed tip ends in an upright of
 * twice `outline`. The region between it and the finished outline is what profile trimming takes. x stays counted from the
 * finished heel, y from its level.
 *
 * @example
 * const { tip, butt } = knife.allowances; // 3 and 3 mm
 * const forged = forgedOutline(outline, { outline: 1.5, tip, butt });
 * forged.edgeLength - outline.edgeLength; // 3
 */
export function forgedOutline(outline: Outline, allowance: ProfileAllowance): Outline {
  const pieces = movedPieces(outline, allowance.outline);
  const runs = emptyRuns();
  const ahead: Ahead = (run) =>
    run === "front" ? allowance.tip : run === "butt" && outline.runs.butt.length > 0 ? -allowance.butt : 0;
  const after = (i: number): MovedPiece => pieces[(i + 1) % pieces.length] as MovedPiece;
  let start = jointOf(pieces[pieces.length - 1] as MovedPiece, pieces[0] as MovedPiece);
  for (const [i, piece] of pieces.entries()) {
    const { run, segment, up } = piece;
    const next = after(i);
    const end = jointOf(piece, next);
    const dx = ahead(run);
    const from = moved(segment.from, start.after, dx);
    const to = moved(segment.to, end.before, dx);
    if (up === undefined) add(runs[run], line(from, to));
    else runs[run].push({ ...translateSegment(segment, dx, up), from, to });
    connect(runs, run, next, end, ahead);
    start = end;
  }
  return outlineOfRuns(runs);
}

/** How far a run is carried on along x. */
type Ahead = (run: RunName) => number;

/** How far the end of one piece and the start of the next move up. */
interface Joint {
  readonly before: number;
  readonly after: number;
}

function jointOf(before: MovedPiece, after: MovedPiece): Joint {
  const first = before.up ?? after.up ?? 0;
  return { before: first, after: after.up ?? first };
}

const moved = (point: Vec2, up: number, dx: number): Vec2 => ({ x: point.x + dx, y: point.y + up });

/** Lines without a length are left out. */
function add(run: Segment[], segment: Segment): void {
  if (segment.from.x !== segment.to.x || segment.from.y !== segment.to.y) run.push(segment);
}

/**
 * The lines from the end of one piece to the start of the next where these move apart: the upright of the step, which is
 * part of an end where it lies beside one, and the level ones by which an end is carried on.
 */
function connect(
  runs: Record<RunName, Segment[]>,
  before: RunName,
  { run, segment }: MovedPiece,
  joint: Joint,
  ahead: Ahead,
): void {
  const place = (up: number, dx: number): Vec2 => moved(segment.from, up, dx);
  const between = endBetween(before, run);
  const [from, to] = [ahead(before), ahead(run)];
  const upright = between === undefined ? from : ahead(between);
  add(runs[before], line(place(joint.before, from), place(joint.before, upright)));
  add(runs[between ?? before], line(place(joint.before, upright), place(joint.after, upright)));
  add(runs[run], line(place(joint.after, upright), place(joint.after, to)));
}

/** The end of the knife that two runs meet at, whether or not it has a length of its own. */
function endBetween(before: RunName, after: RunName): RunName | undefined {
  if (before === after) return undefined;
  for (const end of ["front", "butt"] as const) {
    const place = RUN_NAMES.indexOf(end);
    const [first, last] = [RUN_NAMES.indexOf(before), RUN_NAMES.indexOf(after)];
    if (first <= place && place <= last) return end;
  }
  return undefined;
}

/** The outline's pieces with what each moves by, cut where a piece ceases to be the lowest or the highest. */
function movedPieces(outline: Outline, by: number): MovedPiece[] {
  const footprint = new Footprint(outline.path);
  let index = -1;
  return RUN_NAMES.flatMap((run) =>
    outline.runs[run].flatMap((whole) => {
      index++;
      return splitAtXExtremes(whole).flatMap((segment): MovedPiece[] => {
        if (segment.from.x === segment.to.x) return [{ run, segment, up: undefined }];
        return cutByMove(segment, footprint, index, by).map(({ part, up }) => ({ run, segment: part, up }));
      });
    }),
  );
}

function cutByMove(
  segment: Segment,
  { intervals }: Footprint,
  index: number,
  by: number,
): { readonly part: Segment; readonly up: number }[] {
  const low = Math.min(segment.from.x, segment.to.x);
  const high = Math.max(segment.from.x, segment.to.x);
  const over = intervals.filter(({ x0, x1 }) => (x0 + x1) / 2 > low && (x0 + x1) / 2 < high);
  const moves = over.map(({ x1, spans }) => {
    const isMine = (piece: BoundaryPiece | undefined): boolean =>
      piece !== undefined && piece.index === index && isSame(piece.segment, segment);
    if (isMine(spans[0]?.lower)) return { x1, up: -by };
    return { x1, up: isMine(spans[spans.length - 1]?.upper) ? by : 0 };
  });
  const cuts = moves.slice(0, -1).filter(({ up }, i) => up !== moves[i + 1]?.up);
  const ts = cuts.flatMap(({ x1 }) => parametersAtX(segment, x1).slice(0, 1)).sort((a, b) => a - b);
  const ordered = segment.to.x > segment.from.x ? moves : [...moves].reverse();
  const ups = ordered.filter(({ up }, i) => i === 0 || up !== ordered[i - 1]?.up).map(({ up }) => up);
  const bounds = [0, ...ts, 1];
  return bounds.slice(1).map((t, i) => ({
    part: bounds.length === 2 ? segment : splitSegment(segment, bounds[i] as number, t),
    up: ups[i] ?? 0,
  }));
}

const isSame = (a: Segment, b: Segment): boolean =>
  a.from.x === b.from.x && a.from.y === b.from.y && a.to.x === b.to.x && a.to.y === b.to.y;
