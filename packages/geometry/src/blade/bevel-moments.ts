import { integrateAdaptive, type Piece } from "../numeric/adaptive.js";
import { alikePieces, ZONE_SLACK } from "./alike-pieces.js";
import { crestCrossing } from "./crest.js";
import { cutoutPath } from "./cutout-path.js";
import { type BoundaryPiece, Footprint } from "./footprint.js";
import type { HalfSection } from "./half-section.js";
import { MOMENTS, MOMENTS_OF_LIKE_FACES, type Moments, noMoments } from "./moments.js";
import { StationCuts, uprightMap } from "./station-pieces.js";
import { StationZones, type ZoneVisitor } from "./station-zones.js";
import type { Cutout, SteelBody } from "./steel-body.js";
import { INNER, ZoneMoments } from "./zone-moments.js";
import { shareOfPoints } from "./zone-rule.js";

type Span = { readonly lower: BoundaryPiece; readonly upper: BoundaryPiece };

/**
 * What the bevels take from the slab, as integrals over stations: at each x the section is exact, the zones between
 * its knots are integrated one by one, and the stations are summed by adaptive quadrature between the places where
 * anything changes its form.
 */
export class BevelMoments {
  private readonly body: SteelBody;
  private readonly zones: StationZones;
  private readonly face: ZoneMoments;
  private readonly right = new Float64Array(INNER);
  private readonly left: Float64Array;
  /** Nearest point of the station's highest point, as the section's making left it. */
  private topDistance = 0;
  private topElement = 0;
  private topFoot = 0;
  /** What every zone of a station is given to: its sums, or its signature. */
  private visit: ZoneVisitor;
  private signature = 1;
  private readonly unused = new Float64Array(MOMENTS);

  constructor(body: SteelBody) {
    this.body = body;
    this.zones = new StationZones(body.edgeRun, body.section.half);
    this.face = new ZoneMoments(body.section.half, this.right);
    this.visit = this.face.take;
    this.left = body.section.left === undefined ? this.right : new Float64Array(INNER);
  }

  /** Integrals of what is missing from the slab inside a region, the body's own outline or a cut-out in it. */
  over(region: Footprint, scale: Float64Array, tolerance: number): Moments {
    const { body, face } = this;
    const sum = noMoments();
    const run = body.edgeRun;
    const nature = natureOf(body);
    // A ridge leaves the blade somewhere between two breaks, and its kink may be short.
    const wary = nature === "ridged";
    // Along the ridge of a curve the stations bend without end toward its focal point: less is asked there.
    const reached = wary && run.isCurved ? Math.max(tolerance * 100, 1e-8) : tolerance;
    const aim = scale.map((s) => s * reached);
    face.shareOfPoints = shareOfPoints(tolerance);
    face.isRidged = wary;
    const intricate = nature !== "plain" || region !== body.footprint;
    // The last ones are 0 where both faces are alike.
    const size = body.section.left === undefined ? MOMENTS_OF_LIKE_FACES : MOMENTS;
    const places = new StationCuts(body, region, tolerance);
    for (const interval of region.intervals) {
      const x0 = Math.max(body.groundFrom, interval.x0);
      if (interval.x1 <= x0) continue;
      const map = uprightMap(interval);
      const at = (u: number, out: Float64Array): void => {
        this.station(map.x(u), interval.spans, out);
        const stretch = map.slope(u);
        if (stretch !== 1) for (let i = 0; i < size; i++) out[i] = (out[i] as number) * stretch;
      };
      const cuts = places.pieces(x0, interval.x1);
      const pieces = (
        intricate ? alikePieces(cuts, (x) => this.structure(x, interval.spans), places.slack) : cuts
      )
        .map((piece): Piece => ({ from: map.u(piece.from), to: map.u(piece.to) }))
        .filter((piece) => piece.to > piece.from);
      // The quadrature begins every piece with its middle; what was found there is kept for the second opinion, which is
      // asked only where the points of a zone may have missed something.
      const middles = new Float64Array(size * pieces.length);
      const inexact: number[] = [];
      let kept = 0;
      const keeping = (u: number, out: Float64Array): void => {
        const next = pieces[kept];
        if (next === undefined || u !== (next.from + next.to) / 2) {
          at(u, out);
          return;
        }
        face.isInexact = false;
        at(u, out);
        if (face.isInexact) inexact.push(kept);
        for (let i = 0; i < size; i++) middles[kept * size + i] = out[i] as number;
        kept++;
      };
      const result = integrateAdaptive(keeping, size, pieces, {
        tolerance: aim,
        ...(intricate ? (wary ? { trust: "wary" } : {}) : { trust: "smooth" }),
        maxPieces: wary ? 100 : 400,
      });
      const inner = this.innerError(at, pieces, inexact, middles);
      for (let i = 0; i < size; i++) {
        sum.value[i] = (sum.value[i] as number) + (result.value[i] as number);
        sum.error[i] = (sum.error[i] as number) + (result.error[i] as number) + (inner[i] as number);
      }
    }
    return sum;
  }

  /** The same inside one cut-out. */
  overDisc(cutout: Cutout, scale: Float64Array, tolerance: number): Moments {
    return this.over(new Footprint(cutoutPath(cutout)), scale, tolerance);
  }

  /** What the points inside the zones may have missed: a piece's middle station with fewer points, against all. */
  private innerError(
    at: (u: number, out: Float64Array) => void,
    pieces: readonly Piece[],
    inexact: readonly number[],
    middles: Float64Array,
  ): Float64Array {
    const error = new Float64Array(MOMENTS);
    const rough = new Float64Array(MOMENTS);
    const size = this.body.section.left === undefined ? MOMENTS_OF_LIKE_FACES : MOMENTS;
    for (const k of inexact) {
      const { from, to } = pieces[k] as Piece;
      const u = (from + to) / 2;
      this.face.isCoarse = true;
      at(u, rough);
      this.face.isCoarse = false;
      for (let i = 0; i < size; i++) {
        const fine = middles[k * size + i] as number;
        const whole = Math.abs(fine);
        const gap = Math.abs(fine - (rough[i] as number));
        // The finer rule squares the gap of the coarser one, as in the outer quadrature.
        const share = whole > 0 ? (30 * gap) / whole : 1;
        error[i] = (error[i] as number) + Math.min(whole * share * Math.sqrt(share), gap) * (to - from);
      }
    }
    return error;
  }

  /** A number for the zones that station x consists of, from below, on both faces. */
  private structure(x: number, spans: readonly Span[]): number {
    this.signature = 1;
    this.visit = this.sign;
    this.station(x, spans, this.unused);
    this.visit = this.face.take;
    return this.signature;
  }

  private readonly sign: ZoneVisitor = (element, piece, ya, _va, _footA, yb) => {
    if (Math.abs(yb - ya) > ZONE_SLACK) {
      this.signature = mixed(this.signature, 64 * this.body.edgeRun.elements.indexOf(element) + piece);
    }
  };

  /** Area and its moments that the bevels take at station x, as rates per mm of x. */
  station(x: number, spans: readonly Span[], out: Float64Array): void {
    const { body, face } = this;
    face.x = x;
    face.half = body.slab.thicknessAt(x) / 2;
    face.share = body.plungeShareAt(x);
    const right = body.sectionAt(x);
    const run = body.edgeRun;
    this.topDistance = run.distance;
    this.topElement = run.element;
    this.topFoot = run.foot;
    const left = body.section.left;
    this.oneFace(right, this.right, spans);
    if (left !== undefined) this.oneFace(left, this.left, spans);
    collect(x, this.right, this.left, out);
  }

  private oneFace(section: HalfSection, sums: Float64Array, spans: readonly Span[]): void {
    this.face.section = section;
    this.face.sums = sums.fill(0);
    for (let i = 0; i < spans.length; i++) this.span(spans[i] as Span, spans);
  }

  /** One face over a height interval of the station. */
  private span({ lower, upper }: Span, spans: readonly Span[]): void {
    const { body, face, zones } = this;
    const { x, half, share, section } = face;
    const y0 = lower.heightAt(x);
    const y1 = upper.heightAt(x);
    const crest = body.crestAt(x);
    if (crest === undefined) {
      if (share === 0) return;
      const isOutermost = spans.length === 1 && lower.edgeElement >= 0 && upper.edgeElement < 0;
      if (isOutermost && upper === body.topPiece) {
        // Both ends are known: the edge itself, and the spine point from which the section was made.
        const { topDistance, topElement, topFoot } = this;
        const { edgeElement } = lower;
        const foot = lower.footAt(x);
        zones.walkBetween(
          x,
          y0,
          0,
          edgeElement,
          foot,
          y1,
          topDistance,
          topElement,
          topFoot,
          section,
          half,
          this.visit,
        );
      } else zones.walk(x, y0, y1, section, half, this.visit);
      return;
    }
    const top = body.footprint.topAt(x) ?? y1;
    const from = crestCrossing(body, section, x, top);
    if (share > 0) zones.walk(x, y0, Math.min(y1, from), section, half, this.visit);
    if (!(y1 > from)) return;
    if (this.visit === face.take) face.takeCrest(crest, top, Math.max(y0, from), y1);
    else this.signature = mixed(this.signature, crest.pieceAt(top - Math.max(y0, from)));
  }
}

/**
 * How many kinds of change along x a body may have: `plain`, all of them known beforehand; `intricate`, zones that come and
 * go; `ridged`, with a ridge of the distance field inside the blade.
 */
export function natureOf(body: SteelBody): "plain" | "intricate" | "ridged" {
  const { footprint, edgeRun, section, input } = body;
  if (edgeRun.plainReach < footprint.maxY - footprint.minY) return "ridged";
  const isCut = input.crest !== undefined || (input.grooves ?? []).length > 0;
  return isCut || section.isIntricate ? "intricate" : "plain";
}

/** Takes one more number into a signature. */
const mixed = (signature: number, value: number): number => (Math.imul(signature, 1_000_003) ^ value) | 0;

/** Both faces together, as rates along x. */
function collect(x: number, right: Float64Array, left: Float64Array, out: Float64Array): void {
  const d0 = (right[0] as number) + (left[0] as number);
  const d1 = (right[1] as number) + (left[1] as number);
  out[0] = d0;
  out[1] = x * d0;
  out[2] = d1;
  out[3] = x * x * d0;
  out[4] = (right[2] as number) + (left[2] as number);
  out[5] = (right[5] as number) + (left[5] as number);
  out[6] = x * d1;
  if (right === left) return;
  const z = (right[3] as number) - (left[3] as number);
  out[7] = z;
  out[8] = (right[4] as number) - (left[4] as number);
  out[9] = x * z;
}
