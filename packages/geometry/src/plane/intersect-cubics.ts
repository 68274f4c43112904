import { GeometryError } from "../errors/errors.js";
import { type Contact, MEETING_TOLERANCE } from "./contact.js";
import { nearestOnSegment } from "./nearest.js";
import { type Cubic, derivativeAt, pointAt } from "./segment.js";
import { splitSegment } from "./split.js";
import { distance, type Vec2 } from "./vec2.js";

/** Pieces smaller than this are contacts to be refined, mm. Along a touch a great many stay, so not smaller yet. */
const SMALLEST_PIECE = 1e-5;
/** More pairs than this are looked at only where two curves all but coincide. */
const MOST_PAIRS = 40_000;

interface Piece {
  readonly curve: Cubic;
  readonly t0: number;
  readonly t1: number;
}

/**
 * Contacts of two cubics: pairs of pieces are halved and dropped as soon as a strip along the chord of one, wide enough
 * for its control points, clears the other. Both strips are tried, so pieces that run side by side part after few
 * halvings.
 *
 * @throws {GeometryError} `intersection-unresolved`
 */
export function cubicContacts(first: Cubic, second: Cubic): Contact[] {
  const whole = (curve: Cubic): Piece => ({ curve, t0: 0, t1: 1 });
  const stack: [Piece, Piece][] = [[whole(first), whole(second)]];
  const candidates: Candidate[] = [];
  let looked = 0;
  for (let pair = stack.pop(); pair !== undefined; pair = stack.pop()) {
    if (++looked > MOST_PAIRS) {
      throw new GeometryError(
        "intersection-unresolved",
        `two curves run so close together near (${first.from.x}, ${first.from.y}) mm that their crossings cannot be told apart`,
      );
    }
    const [a, b] = pair;
    if (partedBy(a.curve, b.curve) || partedBy(b.curve, a.curve)) continue;
    const sizeA = sizeOf(a.curve);
    const sizeB = sizeOf(b.curve);
    if (Math.max(sizeA, sizeB) < SMALLEST_PIECE) {
      candidates.push({
        s: (a.t0 + a.t1) / 2,
        t: (b.t0 + b.t1) / 2,
        reach: 2 * Math.max(a.t1 - a.t0, b.t1 - b.t0),
      });
    } else if (sizeA >= sizeB) {
      for (const half of halves(a)) stack.push([half, b]);
    } else {
      for (const half of halves(b)) stack.push([a, half]);
    }
  }
  return clusters(candidates).flatMap((cluster) => {
    // Along a touch one cluster holds thousands; its ends and middle say where it begins, lies and ends.
    const picked = new Set([cluster[0], cluster[cluster.length >> 1], cluster.at(-1)]);
    return [...picked].flatMap((candidate) =>
      candidate === undefined ? [] : refine(first, second, candidate.s, candidate.t),
    );
  });
}

interface Candidate {
  readonly s: number;
  readonly t: number;
  /** Parameters that differ by less belong to the same place. */
  readonly reach: number;
}

/** Runs of candidates, in the order of s, each near to one of the few before it. */
function clusters(candidates: readonly Candidate[]): Candidate[][] {
  const sorted = [...candidates].sort((a, b) => a.s - b.s);
  const found: Candidate[][] = [];
  for (const candidate of sorted) {
    const near = found
      .slice(-9)
      .find((cluster) => cluster.slice(-9).some((other) => together(candidate, other)));
    if (near === undefined) found.push([candidate]);
    else near.push(candidate);
  }
  return found;
}

const together = (a: Candidate, b: Candidate): boolean => {
  const reach = Math.max(a.reach, b.reach);
  return Math.abs(a.s - b.s) <= reach && Math.abs(a.t - b.t) <= reach;
};

function halves(piece: Piece): [Piece, Piece] {
  const middle = (piece.t0 + piece.t1) / 2;
  const part = (t0: number, t1: number): Cubic => splitSegment(piece.curve, t0, t1) as Cubic;
  return [
    { curve: part(0, 0.5), t0: piece.t0, t1: middle },
    { curve: part(0.5, 1), t0: middle, t1: piece.t1 },
  ];
}

const hull = (curve: Cubic): readonly Vec2[] => [curve.from, curve.control1, curve.control2, curve.to];

function sizeOf(curve: Cubic): number {
  const points = hull(curve);
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  return Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}

/** Whether the control points of two curves are parted along or across the chord of the first. */
function partedBy(a: Cubic, b: Cubic): boolean {
  const chord = distance(a.from, a.to);
  // A loop piece has no chord; any direction parts as well as another.
  const ux = chord > 0 ? (a.to.x - a.from.x) / chord : 1;
  const uy = chord > 0 ? (a.to.y - a.from.y) / chord : 0;
  return (
    apart(hull(a), hull(b), (p) => (p.x - a.from.x) * ux + (p.y - a.from.y) * uy) ||
    apart(hull(a), hull(b), (p) => (p.y - a.from.y) * ux - (p.x - a.from.x) * uy)
  );
}

function apart(a: readonly Vec2[], b: readonly Vec2[], along: (p: Vec2) => number): boolean {
  const as = a.map(along);
  const bs = b.map(along);
  return (
    Math.max(...as) + MEETING_TOLERANCE < Math.min(...bs) ||
    Math.max(...bs) + MEETING_TOLERANCE < Math.min(...as)
  );
}

const clamp = (t: number): number => Math.min(1, Math.max(0, t));

/** Newton on A(s) = B(t); where the curves touch, the nearest point of the second instead. */
function refine(first: Cubic, second: Cubic, s0: number, t0: number): Contact[] {
  let s = s0;
  let t = t0;
  for (let pass = 0; pass < 6; pass++) {
    const a = pointAt(first, s);
    const b = pointAt(second, t);
    const da = derivativeAt(first, s);
    const db = derivativeAt(second, t);
    const determinant = da.y * db.x - da.x * db.y;
    if (Math.abs(determinant) <= 1e-9 * Math.hypot(da.x, da.y) * Math.hypot(db.x, db.y)) break;
    s = clamp(s + ((a.x - b.x) * db.y - (a.y - b.y) * db.x) / determinant);
    t = clamp(t + ((a.x - b.x) * da.y - (a.y - b.y) * da.x) / determinant);
  }
  const gap = distance(pointAt(first, s), pointAt(second, t));
  if (gap <= MEETING_TOLERANCE) return [{ t1: s, t2: t, point: pointAt(first, s) }];
  const point = pointAt(first, s0);
  const near = nearestOnSegment(second, point);
  // A piece of the size where halving stops may lie off the contact by its own length.
  return near.distance <= MEETING_TOLERANCE ? [{ t1: s0, t2: near.t, point }] : [];
}
