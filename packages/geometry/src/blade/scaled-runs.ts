import { parametersAtX } from "../plane/at-x.js";
import { cubic, derivativeAt, pointAt, type Segment } from "../plane/segment.js";
import { splitSegment } from "../plane/split.js";
import { pathDataFromSegments } from "../plane/svg-path-data.js";
import { type Vec2, vec2 } from "../plane/vec2.js";
import { type Outline, RUN_NAMES } from "./outline.js";
import type { RunsOutlineSpec } from "./spec.js";

/** How an outline is drawn smaller. */
export interface RunScale {
  /** Along x, of all that lies ahead of the heel. */
  readonly ahead: number;
  /** Along y, of everything. */
  readonly up: number;
}

/** Digits after the point: runs that are read back are the same to a millionth of a micrometre. */
const DECIMALS = 12;
/**
 * Greatest distance between an arc and the cubics that stand for it once it is stretched, mm: a hundredth of a micrometre,
 * for every cubic in an edge makes a blade slower to weigh.
 */
const ARC_ERROR = 1e-5;

/**
 * The runs of an outline drawn smaller. The map keeps neighbours neighbours and the heel where it is, so that an outline that did
 * not cross itself does not do so afterwards; a side that crosses the heel's x is parted there.
 *
 * @example
 * outlineFromRuns(scaledRuns(outline, { ahead: 0.9, up: 1 })).edgeLength; // 90
 */
export function scaledRuns(outline: Outline, scale: RunScale): RunsOutlineSpec {
  const data: Partial<Record<(typeof RUN_NAMES)[number], string>> = {};
  for (const name of RUN_NAMES) {
    const segments = outline.runs[name].flatMap((segment) => scaled(segment, scale));
    if (segments.length > 0) data[name] = pathDataFromSegments(segments, { decimals: DECIMALS });
  }
  return { runs: { ...data, edge: data.edge ?? "" } };
}

function scaled(segment: Segment, { ahead, up }: RunScale): Segment[] {
  if (ahead === 1) return stretched(segment, 1, up);
  return partedAtHeel(segment).flatMap((piece) =>
    stretched(piece, pointAt(piece, 0.5).x > 0 ? ahead : 1, up),
  );
}

/** The pieces of a segment on either side of the heel's x. */
function partedAtHeel(segment: Segment): Segment[] {
  const inside = parametersAtX(segment, 0).filter((t) => t > 0 && t < 1);
  const ends = [0, ...inside, 1];
  return ends.slice(1).map((t, i) => splitSegment(segment, ends[i] as number, t));
}

function stretched(segment: Segment, x: number, y: number): Segment[] {
  if (x === 1 && y === 1) return [segment];
  const move = (p: Vec2): Vec2 => vec2(p.x * x, p.y * y);
  switch (segment.kind) {
    case "line":
      return [{ kind: "line", from: move(segment.from), to: move(segment.to) }];
    case "cubic":
      return [cubic(move(segment.from), move(segment.control1), move(segment.control2), move(segment.to))];
    case "arc":
      return arcAsCubics(segment).flatMap((piece) => stretched(piece, x, y));
  }
}

/** As many cubics whatever the stretch, so that what is measured goes evenly with it. */
function arcAsCubics(arc: Extract<Segment, { kind: "arc" }>): Segment[] {
  const turn = Math.abs(arc.sweep);
  // A quarter circle by one cubic is 2.73e-4 r off, falling with the sixth power of the turn.
  const quarters = (turn / (Math.PI / 2)) * ((2.73e-4 * arc.radius) / ARC_ERROR) ** (1 / 6);
  const count = Math.max(1, Math.ceil(quarters));
  const handle = ((4 / 3) * Math.tan(turn / count / 4)) / turn;
  const pointsAt = (t: number, by: number): Vec2 => {
    const p = t === 0 ? arc.from : t === 1 ? arc.to : pointAt(arc, t);
    const d = derivativeAt(arc, t);
    return vec2(p.x + d.x * by, p.y + d.y * by);
  };
  return Array.from({ length: count }, (_, i) => {
    const [t0, t1] = [i / count, (i + 1) / count];
    return cubic(pointsAt(t0, 0), pointsAt(t0, handle), pointsAt(t1, -handle), pointsAt(t1, 0));
  });
}
