import { signedArea } from "./measure.js";
import type { Path } from "./path.js";
import { endTangent, line, type Segment } from "./segment.js";
import { cross, distance, dot, type Vec2 } from "./vec2.js";

/** A piece of a parallel, and its place in the order of the outline. */
export interface ParallelPiece {
  readonly segment: Segment;
  readonly order: number;
}

/** Ends that lie this near to each other are one, mm. */
const JOINED = 1e-5;
/** A gap up to this is closed by moving an end, a wider one by a line, mm. */
const MOVED = 1e-6;
/** A loop that holds less than this is what rounding leaves of a tail, mm². */
const LEAST_AREA = 1e-3;

/**
 * Pieces joined to closed loops; pieces that lead nowhere are dropped. Where a piece may go on as several, it takes the
 * one that turns most to the asked side: there the others are tails of what was trimmed.
 *
 * @param turn - 1 to the left, −1 to the right.
 */
export function trimmedLoops(pieces: readonly ParallelPiece[], turn: 1 | -1): Path[] {
  const free = new Set(pieces);
  const loops: Path[] = [];
  for (const first of pieces) {
    if (!free.has(first)) continue;
    const chain = follow(first, free, turn);
    for (const piece of chain.walked) free.delete(piece);
    if (chain.loop.length === 0) continue;
    const loop = { segments: closedUp(chain.loop), closed: true };
    if (Math.abs(signedArea(loop)) > LEAST_AREA) loops.push(loop);
  }
  return loops;
}

/** Goes from piece to piece until one comes round again or none follows. */
function follow(
  first: ParallelPiece,
  free: ReadonlySet<ParallelPiece>,
  turn: 1 | -1,
): { readonly walked: readonly ParallelPiece[]; readonly loop: readonly Segment[] } {
  const walked = [first];
  for (;;) {
    const last = walked[walked.length - 1] ?? first;
    const next = nextOf(last, free, turn);
    if (next === undefined) return { walked, loop: [] };
    const back = walked.indexOf(next);
    if (back >= 0) return { walked, loop: walked.slice(back).map(({ segment }) => segment) };
    walked.push(next);
  }
}

function nextOf(
  { segment, order }: ParallelPiece,
  free: ReadonlySet<ParallelPiece>,
  turn: 1 | -1,
): ParallelPiece | undefined {
  const direction = endTangent(segment, "to") ?? { x: 1, y: 0 };
  let best: { piece: ParallelPiece; turned: number } | undefined;
  for (const piece of free) {
    if (distance(piece.segment.from, segment.to) > JOINED) continue;
    if (piece.segment === segment) continue;
    const turned = turn * turnBetween(direction, endTangent(piece.segment, "from") ?? direction);
    if (best === undefined || turned > best.turned) best = { piece, turned };
  }
  // A loop of one piece closes on itself.
  if (best === undefined && distance(segment.from, segment.to) <= JOINED && segment.kind !== "line") {
    return [...free].find((piece) => piece.segment === segment && piece.order === order);
  }
  return best?.piece;
}

const turnBetween = (a: Vec2, b: Vec2): number => Math.atan2(cross(a, b), dot(a, b));

/** Joints closed to the last bit. */
function closedUp(loop: readonly Segment[]): Segment[] {
  return loop.flatMap((segment, index): Segment[] => {
    const next = loop[(index + 1) % loop.length] ?? segment;
    const gap = distance(segment.to, next.from);
    if (gap === 0) return [segment];
    if (gap <= MOVED) return [{ ...segment, to: next.from }];
    return [segment, line(segment.to, next.from)];
  });
}
