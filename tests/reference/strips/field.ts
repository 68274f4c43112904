// Distance to the edge run by closed forms for straight and circular pieces and Newton's steps for cubics. The run goes
// on along its end tangents, unless an end has turned back.
import type { Segment, Vec2 } from "@scantling/geometry";
import { bendsWithin, leansBack, turnsBothWays, unit } from "./bends.js";
import { ArcPiece, CubicPiece, type Piece, PointPiece, StraightPiece } from "./pieces.js";
import { arcParts, cubicParts } from "./spirals.js";

/** Where piece i and the one after it meet, with the unit tangent there. */
interface Joint {
  readonly at: Vec2;
  readonly tangent: Vec2;
  /** Whether the change from one to the other happens on the normal; at a corner toward the steel there is a ridge instead. */
  readonly passes: boolean;
}

/** Turn below which two pieces join without a corner, rad. */
const SMOOTH = 1e-12;

/** Turn of the edge, or change of the distance's slope, above which two feet make a ridge. */
const RIDGE = 1e-6;

/** Passes at most by halving until two neighbouring numbers are left. */
const HALVINGS = 60;

export class Field {
  readonly pieces: readonly Piece[];
  readonly joints: readonly Joint[];
  /** A name for each piece; a corner that turns by nothing to speak of goes by that of the piece before it. */
  readonly names: readonly number[];
  /** Whether points in the steel may have two nearest points: every point is then asked of every piece. */
  readonly wary: boolean;
  /** Of the last point asked for: the nearest piece, the distance, and how fast it grows with y. */
  piece = 0;
  distance = 0;
  slope = 1;

  /** @param reach - mm, more than any point of the steel is away from the edge */
  constructor(run: readonly Segment[], reach: number) {
    const pieces: Piece[] = [];
    const joints: Joint[] = [];
    const unseen = new Set<number>();
    let wary = false;
    const parts = run.flatMap((segment) => partsOf(segment, reach));
    const first = parts[0];
    const last = parts[parts.length - 1];
    if (!first || !last) throw new Error("an edge run has at least one segment");
    const join = (at: Vec2, before: Vec2, after: Vec2): void => {
      const turn = Math.atan2(
        before.x * after.y - before.y * after.x,
        before.x * after.x + before.y * after.y,
      );
      if (Math.abs(turn) < SMOOTH) {
        joints.push({ at, tangent: before, passes: true });
        return;
      }
      if (turn > 0) {
        const ridge = turn > RIDGE;
        if (ridge) wary = true;
        joints.push({ at, tangent: before, passes: !ridge });
        return;
      }
      joints.push({ at, tangent: before, passes: true });
      pieces.push(new PointPiece(at));
      if (turn > -RIDGE) unseen.add(pieces.length - 1);
      joints.push({ at, tangent: after, passes: true });
    };
    const start = unit(first, 0);
    const end = unit(last, 1);
    if (start.x > -1e-9) pieces.push(new StraightPiece(first.from, start, Number.NEGATIVE_INFINITY, 0));
    else pieces.push(new PointPiece(first.from));
    joints.push({ at: first.from, tangent: start, passes: true });
    parts.forEach((part, i) => {
      pieces.push(pieceOf(part, reach));
      if (bendsWithin(part, reach)) wary = true;
      const next = parts[i + 1];
      if (next) join(part.to, unit(part, 1), unit(next, 0));
    });
    joints.push({ at: last.to, tangent: end, passes: true });
    if (end.x > -1e-9) pieces.push(new StraightPiece(last.to, end, 0, Number.POSITIVE_INFINITY));
    else pieces.push(new PointPiece(last.to));
    this.pieces = pieces;
    this.names = pieces.map((_, i) => (unseen.has(i) ? i - 1 : i));
    this.joints = joints;
    // An edge that turns back has steel that two of its parts look at.
    this.wary = wary || parts.some((part) => leansBack(part)) || turnsBothWays(parts);
  }

  nearest(x: number, y: number): number {
    const { pieces } = this;
    // The one that was nearest last time first: it mostly is again, and then few others need a look.
    const first = this.piece;
    let best = (pieces[first] as Piece).distance(x, y);
    this.slope = (pieces[first] as Piece).slope;
    for (let i = 0; i < pieces.length; i++) {
      const piece = pieces[i] as Piece;
      if (i === first || apart(piece.box, x, y) >= best) continue;
      const d = piece.distance(x, y);
      if (d < best) {
        best = d;
        this.piece = i;
        this.slope = piece.slope;
      }
    }
    this.distance = best;
    return best;
  }

  /**
   * Where, between two heights of a station at which different pieces are nearest, the lower one gives way; sets `piece`
   * to the one above.
   *
   * @returns the height, and whether two nearest points meet there in a ridge
   */
  giveWay(x: number, y0: number, from: number, y1: number, to: number): { y: number; ridge: boolean } {
    const step = to > from ? 1 : -1;
    const joint = this.joints[step > 0 ? from : from - 1];
    if (joint?.passes && Math.abs(joint.tangent.y) > 1e-13) {
      const { at, tangent } = joint;
      const y = at.y - ((x - at.x) * tangent.x) / tangent.y;
      if (y >= y0 && y <= y1) {
        const gap = Math.abs(this.nearest(x, y) - Math.hypot(x - at.x, y - at.y));
        if (gap < 1e-10) {
          this.piece = from + step;
          return { y, ridge: false };
        }
      }
    }
    let low = y0;
    let high = y1;
    let above = to;
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2;
      if (middle <= low || middle >= high) break;
      this.nearest(x, middle);
      if (this.piece === from) low = middle;
      else {
        high = middle;
        above = this.piece;
      }
    }
    this.piece = above;
    // At a ridge the distance changes its slope; where one foot passes from piece to piece it does not.
    const [before, after] = [from, above].map((i) => this.slopeFrom(i, x, high));
    return { y: high, ridge: Math.abs((before ?? 0) - (after ?? 0)) > RIDGE };
  }

  private slopeFrom(index: number, x: number, y: number): number {
    const piece = this.pieces[index] as Piece;
    if (piece.distance(x, y) === Number.POSITIVE_INFINITY) piece.again(x, y);
    return piece.slope;
  }
}

/** Distance of a point from an upright box. */
function apart([left, right, low, high]: Piece["box"], x: number, y: number): number {
  const dx = x < left ? left - x : x > right ? x - right : 0;
  const dy = y < low ? low - y : y > high ? y - high : 0;
  return dx === 0 ? dy : dy === 0 ? dx : Math.sqrt(dx * dx + dy * dy);
}

function pieceOf(segment: Segment, reach: number): Piece {
  if (segment.kind === "line") {
    const d = unit(segment, 0);
    return new StraightPiece(
      segment.from,
      d,
      0,
      Math.hypot(segment.to.x - segment.from.x, segment.to.y - segment.from.y),
    );
  }
  if (segment.kind === "arc") return new ArcPiece(segment, unit(segment, 0), unit(segment, 1));
  return new CubicPiece(segment, bendsWithin(segment, reach));
}

function partsOf(segment: Segment, reach: number): readonly Segment[] {
  if (segment.kind === "cubic") return cubicParts(segment, reach);
  return segment.kind === "arc" ? arcParts(segment) : [segment];
}
