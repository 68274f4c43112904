import type { Outline } from "../blade/outline.js";
import { monotoneBreaks } from "../plane/bounds.js";
import { line, reverseSegment, type Segment } from "../plane/segment.js";
import { splitSegment } from "../plane/split.js";
import { bracketedPlace } from "./bracketed-place.js";
import { piecesBetween } from "./clip-x.js";

/**
 * The room that a blade takes in a sheath, and on its way out through the mouth: everything that passes a place on the
 * way is inside it there.
 */
export interface Cavity {
  /** x of the mouth, mm. */
  readonly mouth: number;
  /** Its lower rim from mouth to tip, the front where the blade has one, and the upper rim from tip to mouth. */
  readonly lower: readonly Segment[];
  readonly front: readonly Segment[];
  readonly upper: readonly Segment[];
  /** y of its lowest and of its highest place. */
  readonly low: number;
  readonly high: number;
}

/** The cavity for the part of a blade ahead of x = `mouth`. */
export function bladeCavity({ runs }: Outline, mouth: number): Cavity {
  const ahead = (segments: readonly Segment[]): Segment[] =>
    piecesBetween(segments, mouth, Number.POSITIVE_INFINITY);
  // Both rims are walked from the tip back to the mouth.
  const below = ahead([...runs.heelFace, ...runs.edge])
    .map(reverseSegment)
    .reverse();
  const above = ahead(runs.spine);
  const lower = swept(below, mouth, -1);
  const upper = swept(above, mouth, 1);
  return {
    mouth,
    lower: lower.map(reverseSegment).reverse(),
    front: runs.front,
    upper,
    low: lower.at(-1)?.to.y ?? 0,
    high: upper.at(-1)?.to.y ?? 0,
  };
}

/** Heights nearer than this are one, mm. */
const LEVEL = 1e-9;

/**
 * A rim walked from the tip back, which never comes in again: where the blade does, it goes on level.
 *
 * @param out - direction along y away from the blade.
 */
function swept(segments: readonly Segment[], mouth: number, out: 1 | -1): Segment[] {
  const first = segments[0];
  if (first === undefined) return [];
  const kept: Segment[] = [];
  let end = first.from;
  const levelTo = (x: number): void => {
    if (Math.abs(end.x - x) > LEVEL) kept.push(line(end, { x, y: end.y }));
    end = { x, y: end.y };
  };
  for (const piece of segments.flatMap(monotonePieces)) {
    if (Math.hypot(piece.to.x - piece.from.x, piece.to.y - piece.from.y) < LEVEL) continue;
    const reach = (piece.to.y - end.y) * out;
    if (reach < -LEVEL || (reach <= LEVEL && piece.kind !== "line")) continue;
    if ((piece.from.y - end.y) * out < -LEVEL) {
      const rest = splitSegment(piece, bracketedPlace(piece, end.y), 1);
      levelTo(rest.from.x);
      if (Math.abs(rest.to.y - end.y) > LEVEL) kept.push({ ...rest, from: end });
    } else {
      if (Math.abs(piece.from.y - end.y) > LEVEL) continue;
      levelTo(piece.from.x);
      kept.push({ ...piece, from: end });
    }
    end = piece.to;
  }
  levelTo(mouth);
  return kept;
}

/** Pieces that run one way along x and along y. */
function monotonePieces(segment: Segment): Segment[] {
  const cuts = [...monotoneBreaks(segment, "x"), ...monotoneBreaks(segment, "y")];
  const marks = [...new Set([0, ...cuts, 1])].sort((a, b) => a - b);
  return marks.slice(1).map((to, i) => splitSegment(segment, marks[i] ?? 0, to));
}
