import { integrateAdaptive, type Piece } from "../numeric/adaptive.js";
import { gaussRule } from "../numeric/gauss.js";
import { crestCrossing } from "./crest.js";
import type { EdgeElement, FootFrame } from "./edge-element.js";
import { FaceCuts } from "./face-cuts.js";
import { FaceStation, type Side } from "./face-station.js";
import type { Footprint, FootprintInterval } from "./footprint.js";
import { HalfSection } from "./half-section.js";
import { uprightMap } from "./station-pieces.js";
import { StationZones, type ZoneVisitor } from "./station-zones.js";
import type { SteelBody } from "./steel-body.js";
import { type Surface, SurfaceSum } from "./surface-sum.js";
import { ZoneMap } from "./zone-map.js";
import { focalRatio, pointsFor } from "./zone-rule.js";

/** Step along x for the slope of a face, mm: far below any feature, far above rounding. */
const STEP = 2e-5;
/** Near the end of a smooth stretch the step is this share of the way that is left: slopes may go up without end there. */
const ROOM = 3e-3;
/** No less than this, mm: rounding. */
const LEAST_STEP = 1e-9;
/** Least points of a zone: a straight piece of the section, a circular one, one that a groove changes. */
const POINTS = { line: 6, arc: 12, groove: 18 };
/** A step in the section smaller than this is none, mm. */
const GAP = 1e-9;
/** Pieces that the quadrature along x may look at, for every one that it begins with, and at the least. */
const MOST_PIECES = { each: 12, least: 120 };

/** What a piece of a face weighs by its slopes along x and y at a point: area over area of the flats. */
export type SlopeWeight = (x: number, y: number, gx: number, gy: number) => number;

/** What is summed over a region of the faces. */
export interface FaceWork {
  readonly sides: readonly Side[];
  /** Left out: area of the face less that of the flat slab, and the walls along lines where the section steps. */
  readonly weight?: SlopeWeight;
}

/** Sums over the faces of a body, by their slopes: station by station, zone by zone. */
export class FaceArea {
  private readonly body: SteelBody;
  private readonly here: FaceStation;
  private readonly before: FaceStation;
  private readonly after: FaceStation;
  private readonly zones: StationZones;
  private readonly cuts: FaceCuts;
  private readonly frame: FootFrame = { normalX: 0, normalY: 1 };
  private readonly map = new ZoneMap();
  private weight: SlopeWeight | undefined;
  private side: Side = "right";
  private flat = 1;
  private sum = 0;

  constructor(body: SteelBody) {
    this.body = body;
    this.here = new FaceStation(body);
    this.before = new FaceStation(body);
    this.after = new FaceStation(body);
    this.zones = new StationZones(body.edgeRun, new HalfSection());
    this.cuts = new FaceCuts(body);
  }

  /** Sums over a region that lies inside the outline: the outline itself, or what a cut-out or groove covers. */
  over(region: Footprint, work: FaceWork, tolerance: number): Surface {
    const sum = new SurfaceSum();
    this.weight = work.weight;
    // Faces that are the same are summed once.
    const twice = work.sides.length === 2 && this.here.isSymmetric;
    const sides = twice ? (["right"] as const) : work.sides;
    for (const interval of region.intervals) {
      // Behind the bevels the faces are the slab's: nothing is to be summed but what a groove changes.
      const from = work.weight === undefined ? this.body.groundFrom : Number.NEGATIVE_INFINITY;
      const cuts = this.cuts.of(interval, region, from);
      if (cuts.length < 2) continue;
      const map = uprightMap(interval);
      const pieces: Piece[] = [];
      for (let i = 0; i + 1 < cuts.length; i++) {
        pieces.push({ from: map.u(cuts[i] as number), to: map.u(cuts[i + 1] as number) });
      }
      let k = 0;
      const at = (u: number, out: Float64Array): void => {
        const x = map.x(u);
        while (k > 0 && x < (cuts[k] as number)) k--;
        while (k + 2 < cuts.length && x > (cuts[k + 1] as number)) k++;
        const room = Math.min(x - (cuts[k] as number), (cuts[k + 1] as number) - x);
        out[0] = this.station(x, stepIn(room), interval, sides) * map.slope(u) * (twice ? 2 : 1);
      };
      const { value, error } = integrateAdaptive(at, 1, pieces, {
        tolerance: new Float64Array([tolerance]),
        maxPieces: Math.max(MOST_PIECES.least, MOST_PIECES.each * pieces.length),
      });
      sum.add({ area: value[0] as number, error: error[0] as number });
    }
    return sum;
  }

  /** Rate per mm of x. */
  private station(x: number, step: number, { spans }: FootprintInterval, sides: readonly Side[]): number {
    const { body, here } = this;
    this.before.at(x - step);
    this.after.at(x + step);
    here.at(x);
    this.sum = 0;
    const slope = body.slab.slopeAt(x) / 2;
    this.flat = Math.sqrt(1 + slope * slope);
    for (const side of sides) {
      this.side = side;
      const section = here.of(side);
      const crossing =
        here.crest === undefined ? Number.POSITIVE_INFINITY : crestCrossing(body, section, x, here.top);
      for (const { lower, upper } of spans) {
        const low = lower.heightAt(x);
        const high = upper.heightAt(x);
        const up = Math.min(high, crossing);
        if (up > low) {
          if (here.share > 0) this.zones.walk(x, low, up, section, Number.NaN, this.zone);
          else if (this.weight !== undefined) this.level(slope, low, up);
        }
        if (high > crossing) this.crest(Math.max(low, crossing), high);
      }
    }
    return this.sum;
  }

  private add(y: number, share: number, gx: number, gy: number): void {
    const { weight } = this;
    this.sum +=
      share *
      (weight === undefined ? Math.sqrt(1 + gx * gx + gy * gy) - this.flat : weight(this.here.x, y, gx, gy));
  }

  private level(slope: number, low: number, high: number): void {
    const { nodes, weights } = gaussRule(POINTS.groove);
    this.map.ends();
    for (let k = 0; k < nodes.length; k++) {
      this.map.at(nodes[k] as number);
      this.add(
        low + (high - low) * this.map.place,
        (high - low) * (weights[k] as number) * this.map.stretch,
        slope,
        0,
      );
    }
  }

  private readonly zone: ZoneVisitor = (element, piece, ya, va, footA, yb, vb, footB) => {
    const { here, side, map } = this;
    const section = here.of(side);
    if (piece > 0 && va === section.start[piece]) this.wall(element, piece, ya, va, footA);
    const width = Math.abs(yb - ya);
    if (width === 0) return;
    const before = matching(this.before.of(side), section, piece);
    const after = matching(this.after.of(side), section, piece);
    const isArc = section.isArc(piece);
    let count = POINTS.groove;
    if (this.weight !== undefined) map.ends();
    else {
      const isLevel = !isArc && section.b[piece] === 0 && before?.b[piece] === 0 && after?.b[piece] === 0;
      const least = isArc ? POINTS.arc : POINTS.line;
      count = isLevel ? 1 : Math.max(least, pointsFor(focalRatio(element, width, va, vb, footA, footB)));
      map.fit(section, piece, va, vb);
    }
    const { nodes, weights } = gaussRule(count);
    let hint = footA;
    for (let k = 0; k < nodes.length; k++) {
      map.at(nodes[k] as number);
      const y = ya + (yb - ya) * map.place;
      let v = va + (vb - va) * map.place;
      const d = element.distance(here.x, y, hint);
      if (d < Number.POSITIVE_INFINITY) {
        v = d;
        hint = element.foot;
      }
      element.frame(here.x, y, this.frame);
      const hv = here.share * steepness(section, piece, v);
      const hx = this.slopeAlong(
        before?.pieceValue(piece, v),
        section.pieceValue(piece, v),
        after?.pieceValue(piece, v),
      );
      const { normalX, normalY } = this.frame;
      this.add(y, width * (weights[k] as number) * map.stretch, hx + hv * normalX, hv * normalY);
    }
  };

  /** Slope along x of the face at one distance from the edge; where a neighbour is made otherwise, by the other one. */
  private slopeAlong(before: number | undefined, at: number, after: number | undefined): number {
    const a = before === undefined ? this.here : this.before;
    const b = after === undefined ? this.here : this.after;
    return a === b ? 0 : (b.eased(after ?? at) - a.eased(before ?? at)) / (b.x - a.x);
  }

  /** The wall where one piece of the section does not meet the next: a face that was not ground beside one that was. */
  private wall(element: EdgeElement, piece: number, y: number, v: number, foot: number): void {
    const { here, side, frame } = this;
    if (this.weight !== undefined) return;
    const section = here.of(side);
    const gap = here.share * Math.abs(section.pieceValue(piece, v) - section.pieceValue(piece - 1, v));
    if (gap < GAP) return;
    element.foot = foot;
    element.frame(here.x, y, frame);
    const before = matching(this.before.of(side), section, piece)?.start[piece];
    const after = matching(this.after.of(side), section, piece)?.start[piece];
    const drift =
      before === undefined || after === undefined ? 0 : (after - before) / (this.after.x - this.before.x);
    this.sum +=
      (gap * Math.hypot(frame.normalX - drift, frame.normalY)) / Math.max(1e-6, Math.abs(frame.normalY));
  }

  /** What the crest bounds, between two heights. */
  private crest(low: number, high: number): void {
    const { here, map } = this;
    const crest = here.crest;
    const top = this.body.footprint.intervalAt(here.x)?.spans.at(-1)?.upper;
    if (crest === undefined || top === undefined) return;
    const topSlope = top.slopeAt(here.x);
    const { nodes, weights } = gaussRule(this.weight === undefined ? POINTS.arc : POINTS.groove);
    const deepest = here.top - low;
    let from = Math.max(0, here.top - high);
    for (let piece = crest.pieceAt(from); piece < crest.count && from < deepest; piece++) {
      const to = Math.min(deepest, crest.endOf(piece));
      const before = matching(this.before.crest, crest, piece);
      const after = matching(this.after.crest, crest, piece);
      map.fit(crest, piece, from, to);
      for (let k = 0; k < nodes.length; k++) {
        map.at(nodes[k] as number);
        const depth = from + (to - from) * map.place;
        const hd = steepness(crest, piece, depth);
        const at = crest.pieceValue(piece, depth);
        const a = before === undefined ? here : this.before;
        const b = after === undefined ? here : this.after;
        const drift =
          a === b
            ? 0
            : ((after?.pieceValue(piece, depth) ?? at) - (before?.pieceValue(piece, depth) ?? at)) /
              (b.x - a.x);
        this.add(
          here.top - depth,
          (to - from) * (weights[k] as number) * map.stretch,
          drift + hd * topSlope,
          -hd,
        );
      }
      from = to;
    }
  }
}

const stepIn = (room: number): number =>
  Math.min(STEP, Math.max(ROOM * room, Math.min(LEAST_STEP, Math.max(room, 1e-13) / 2)));

/** The section of a neighbouring station where its piece of this number is the same piece. */
const matching = (
  other: HalfSection | undefined,
  section: HalfSection,
  piece: number,
): HalfSection | undefined =>
  other !== undefined && other.count === section.count && other.kind[piece] === section.kind[piece]
    ? other
    : undefined;

/** Slope of a piece, kept finite where it stands upright. */
const steepness = (section: HalfSection, piece: number, v: number): number =>
  Math.max(-1e8, Math.min(1e8, section.pieceSlope(piece, v)));
