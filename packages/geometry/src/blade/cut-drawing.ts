import { placeText } from "../drawing/drawing-issue.js";
import { reversed } from "../drawing/ends.js";
import { type Issue, length } from "../errors/issue.js";
import { signedArea } from "../plane/measure.js";
import { nearestOnPath } from "../plane/nearest.js";
import type { Path } from "../plane/path.js";
import type { Segment } from "../plane/segment.js";
import { splitSegment } from "../plane/split.js";
import { distance, type Vec2 } from "../plane/vec2.js";
import { SNAP_TOLERANCE } from "./join-drawing.js";
import { emptyRuns, RUN_NAMES, type RunName } from "./outline.js";
import type { DrawingOutlineSpec } from "./spec.js";

/** A corner has to lie this near to the path, mm: editors show places rounded, and hands point roughly. */
export const CORNER_TOLERANCE = 0.5;

export type DrawnCorners = NonNullable<DrawingOutlineSpec["corners"]>;
export type CornerName = keyof DrawnCorners;

/** Each run begins at its corner and ends at the next one's. */
const CORNERS: readonly CornerName[] = [
  "heel",
  "tip",
  "spineStart",
  "handleTop",
  "buttTop",
  "buttBottom",
  "handleBottom",
];

export interface CutDrawing {
  readonly runs: Readonly<Record<RunName, readonly Segment[]>>;
  readonly issues: readonly Issue[];
  /** Corners that lie beside the path, and how far, mm. */
  readonly beside: readonly { readonly corner: CornerName; readonly gap: number }[];
}

/** A place on a closed path; t is 0 to below 1. */
interface Place {
  readonly index: number;
  readonly t: number;
}

interface CutCorner {
  readonly name: CornerName;
  readonly place: Place;
  /** How far round from the heel, in segments. */
  readonly round: number;
}

/**
 * Cuts a closed path at its corners, each at the nearest place of the path, or at a joint of the path if one lies within
 * {@link SNAP_TOLERANCE} of that. The path may have been drawn either way round.
 *
 * @param segments - closed, joined, mm, y up, from the drawing's origin.
 * @param corners - mm, likewise.
 * @param mirrored - the tip lies to the left of the heel.
 */
export function cutAtCorners(
  segments: readonly Segment[],
  corners: DrawnCorners,
  mirrored: boolean,
  toDrawing: (p: Vec2) => Vec2,
): CutDrawing {
  const area = signedArea({ segments, closed: true });
  const forward = area > 0 !== mirrored ? [...segments] : reversed(segments);
  const path: Path = { segments: forward, closed: true };
  const issues: Issue[] = [];
  const beside: { corner: CornerName; gap: number }[] = [];
  const found: { name: CornerName; place: Place }[] = [];
  for (const name of CORNERS) {
    const point = corners[name];
    if (point === undefined) {
      const [tip] = found.slice(-1);
      if (tip !== undefined) found.push({ name, place: tip.place });
      continue;
    }
    const nearest = nearestOnPath(path, point);
    if (nearest === undefined || !(nearest.distance <= CORNER_TOLERANCE)) {
      issues.push(offPath(name, point, nearest?.distance ?? Number.NaN, nearest?.point ?? point, toDrawing));
      continue;
    }
    if (nearest.distance > SNAP_TOLERANCE) beside.push({ corner: name, gap: nearest.distance });
    found.push({ name, place: atJoint(forward, nearest.segment, nearest.t, nearest.point) });
  }
  if (issues.length > 0) return { runs: emptyRuns(), issues, beside };
  const placed = roundFromHeel(found, forward.length);
  const wrong = orderIssue(placed, forward.length);
  if (wrong !== undefined) return { runs: emptyRuns(), issues: [wrong], beside };
  const runs = emptyRuns();
  RUN_NAMES.forEach((run, i) => {
    const from = placed[i];
    const to = placed[i + 1];
    const toRound = to?.round ?? forward.length;
    if (from !== undefined && toRound > from.round) {
      runs[run] = between(forward, from.place, to?.place ?? (placed[0] as CutCorner).place);
    }
  });
  return { runs, issues: [], beside };
}

function atJoint(segments: readonly Segment[], index: number, t: number, point: Vec2): Place {
  const segment = segments[index] as Segment;
  const next = { index: (index + 1) % segments.length, t: 0 };
  const toStart = distance(point, segment.from);
  const toEnd = distance(point, segment.to);
  if (t === 0 || (toStart <= SNAP_TOLERANCE && toStart <= toEnd)) return { index, t: 0 };
  return t === 1 || toEnd <= SNAP_TOLERANCE ? next : { index, t };
}

function roundFromHeel(
  corners: readonly { readonly name: CornerName; readonly place: Place }[],
  count: number,
): CutCorner[] {
  const heel = corners[0]?.place ?? { index: 0, t: 0 };
  return corners.map(({ name, place }, i) => {
    const steps = place.index - heel.index + (place.t - heel.t);
    const round = steps < 0 ? steps + count : steps;
    // The last corner may be the heel itself, once round.
    return { name, place, round: i === corners.length - 1 && round === 0 ? count : round };
  });
}

function orderIssue(placed: readonly CutCorner[], count: number): Issue | undefined {
  const rounds = placed.map(({ round }) => round);
  const ascends = (values: readonly number[]): boolean =>
    values.every((value, i) => i === 0 || value >= (values[i - 1] as number));
  const issue = (code: string, corner: CornerName, text: string, before?: CornerName): Issue => ({
    code,
    path: `blade.outline.corners.${corner}`,
    text,
    values: { corner, ...(before === undefined ? {} : { before }) },
  });
  if (ascends(rounds)) {
    const [, tip, spineStart, handleTop] = rounds;
    if (!((tip ?? 0) > 0))
      return issue("drawing-corners-meet", "tip", "Heel and tip are one place of the path.");
    if (!((handleTop ?? 0) > (spineStart ?? 0))) {
      return issue(
        "drawing-corners-meet",
        "handleTop",
        "The spine has no length: both its ends are one place.",
      );
    }
    return undefined;
  }
  if (ascends([0, ...rounds.slice(1).map((round) => count - (round % count))])) {
    return issue(
      "drawing-edge-up",
      "heel",
      "The edge lies above the spine in the drawing. Turn the drawing so that the edge is below.",
    );
  }
  const at = rounds.findIndex((value, i) => i > 0 && value < (rounds[i - 1] as number));
  const corner = placed[at]?.name ?? "heel";
  return issue(
    "drawing-corner-order",
    corner,
    "Going round the path from the heel along the edge, {corner} does not come after {before}. Check both points.",
    placed[at - 1]?.name ?? "heel",
  );
}

function between(segments: readonly Segment[], from: Place, to: Place): Segment[] {
  const piece = (index: number, t0: number, t1: number): Segment =>
    splitSegment(segments[index] as Segment, t0, t1);
  if (from.index === to.index && to.t > from.t) return [piece(from.index, from.t, to.t)];
  const pieces = [piece(from.index, from.t, 1)];
  for (let i = (from.index + 1) % segments.length; i !== to.index; i = (i + 1) % segments.length) {
    pieces.push(piece(i, 0, 1));
  }
  if (to.t > 0) pieces.push(piece(to.index, 0, to.t));
  return pieces;
}

function offPath(
  corner: CornerName,
  point: Vec2,
  gap: number,
  nearest: Vec2,
  toDrawing: (p: Vec2) => Vec2,
): Issue {
  return {
    code: "drawing-corner-off-path",
    path: `blade.outline.corners.${corner}`,
    text: "The corner {corner} at {point} lies {gap} beside the path; the nearest place of it is {nearest}. Give a point on the path.",
    values: {
      corner,
      point: placeText(toDrawing(point)),
      gap: length(gap),
      nearest: placeText(toDrawing(nearest)),
    },
  };
}
