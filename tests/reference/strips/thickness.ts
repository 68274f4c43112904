// Half-thickness of both faces at the points of one station.
import type { Face } from "./face.js";
import type { GroundFace, StripModel } from "./model.js";
import type { Piece } from "./pieces.js";
import { ROUNDING, Stretches } from "./stretches.js";

export class Thickness {
  /** Half-thickness of the last point, mm. */
  right = 0;
  left = 0;
  x = 0;
  /** Half-thickness of the flats, share of the grinding that the plunge has reached, height of the highest point. */
  slab = 0;
  share = 0;
  top = 0;
  heights: readonly number[] = [];
  readonly stretches: Stretches;
  /** The faces that are ground differently. */
  readonly faces: readonly Face[];
  /** Whether any station so far had two nearest points somewhere in steel whose thickness depends on them. */
  ridged = false;
  /** Points asked for so far. */
  points = 0;
  private readonly model: StripModel;
  private known: Piece | undefined;

  constructor(model: StripModel) {
    this.model = model;
    this.stretches = new Stretches(model.field);
    this.faces = model.left ? [model.right.face, model.left.face] : [model.right.face];
  }

  /** Goes to a station. */
  stand(x: number): void {
    const { model } = this;
    const { handleFront, plunge } = model;
    this.x = x;
    this.slab = (x < handleFront ? model.tang.at(handleFront - x) : model.thickness.at(Math.max(0, x))) / 2;
    const u = plunge.length > 0 ? Math.min(1, (x - plunge.at) / plunge.length) : 1;
    this.share = x < plunge.at ? 0 : u * u * (3 - 2 * u);
    const heights = model.cutter.cut(x);
    this.heights = heights;
    this.top = heights[heights.length - 1] ?? 0;
    model.crest.stand(x, 2 * this.slab);
    this.stretches.clear();
    if (this.share === 0) return;
    for (let i = 0; i + 1 < heights.length; i += 2) {
      this.stretches.add(x, heights[i] as number, heights[i + 1] as number);
    }
    this.standFaces();
  }

  private standFaces(): void {
    const { model, x, stretches } = this;
    const top = model.cutter.topIsEdge ? stretches.farthest : stretches.last;
    const stand = ({ face, height, crown, crownIsShare }: GroundFace): void => {
      const asked = crown === undefined ? Number.NaN : crown.at(x);
      face.stand({
        top,
        bevel: height.at(x),
        thickness: model.thickness.at(x),
        flank: model.flank.at(x),
        edge: model.edge.at(x),
        crown: crownIsShare ? Number.NaN : asked,
        crownShare: crownIsShare ? asked : Number.NaN,
      });
    };
    stand(model.right);
    if (model.left) stand(model.left);
    for (const y of stretches.ridges) {
      const v = model.field.nearest(x, y);
      const step = 1e-3 * Math.min(1, v);
      for (const face of this.faces) {
        if (Math.abs(face.at(v) - face.at(v - step)) > 1e-6 * step) this.ridged = true;
      }
    }
  }

  /** Looks up which piece of the edge is nearest between two heights. */
  prepare(a: number, b: number): void {
    const { model, share, stretches, x } = this;
    this.known = undefined;
    if (share === 0) return;
    const middle = (a + b) / 2;
    const piece = stretches.pieceAt(middle);
    if (!model.field.wary) {
      this.known = model.field.pieces[piece];
      if (this.known?.distance(x, middle) === Number.POSITIVE_INFINITY) this.known = undefined;
    }
  }

  /** A number that tells zones of different formulas apart. */
  zoneName(y: number): number {
    const { model, share, stretches } = this;
    let name = 1;
    if (share > 0) {
      const v = this.distance(y);
      name = 2 + (model.field.names[stretches.pieceAt(y)] ?? 0) + 64 * model.right.face.piece(v);
      if (model.left) name += 512 * model.left.face.piece(v);
    }
    if (model.crest.active) {
      const most = model.crest.at(this.top - y);
      if (this.uncut(model.right.face, y) > most + ROUNDING) name += 4096;
      if (model.left && this.uncut(model.left.face, y) > most + ROUNDING) name += 8192;
      for (const knot of model.crest.knots) if (this.top - y < knot) name += 16_384;
    }
    for (const { plan } of model.grooves) {
      name *= 4;
      const span = plan.span(this.x);
      if (span === undefined || y < span[0] || y > span[1]) continue;
      name += 1;
      for (const turn of plan.turns(this.x)) if (y > turn) name += 1;
    }
    return name;
  }

  /** The piece of the edge that was nearest to the last point; undefined where none had to be looked for. */
  get found(): number | undefined {
    return this.share > 0 && this.known === undefined ? this.model.field.piece : undefined;
  }

  private distance(y: number): number {
    return this.known === undefined ? this.model.field.nearest(this.x, y) : this.known.again(this.x, y);
  }

  /** Half-thickness on one face without crest and grooves. */
  uncut(face: Face, y: number): number {
    if (this.share === 0) return this.slab;
    return this.slab - this.share * (this.slab - face.at(this.distance(y)));
  }

  /** Asks for a point: sets `right` and `left`. */
  at(y: number): void {
    const { model, slab, share } = this;
    this.points++;
    let right = slab;
    let left = slab;
    if (share > 0) {
      const v = this.distance(y);
      right = slab - share * (slab - model.right.face.at(v));
      left = model.left === undefined ? right : slab - share * (slab - model.left.face.at(v));
    }
    if (model.crest.active) {
      const most = model.crest.at(this.top - y);
      if (most < right) right = most;
      if (most < left) left = most;
    }
    for (const groove of model.grooves) {
      const q = groove.plan.offset(this.x, y);
      if (q >= groove.plan.radius) continue;
      const { radius, depth } = groove;
      const deep = Math.sqrt(Math.max(0, (radius - q) * (radius + q))) - (radius - depth);
      if (groove.right) right -= deep;
      if (groove.left) left -= deep;
    }
    this.right = right;
    this.left = left;
  }
}
