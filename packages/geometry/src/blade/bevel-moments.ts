import { integrateAdaptive, type Piece } from "../numeric/adaptive.js";
import { gaussRule } from "../numeric/gauss.js";
import { crestCrossing } from "./crest.js";
import { cutoutPath } from "./cutout-path.js";
import type { EdgeElement } from "./edge-element.js";
import { type BoundaryPiece, Footprint } from "./footprint.js";
import type { HalfSection } from "./half-section.js";
import { MOMENTS, type Moments, noMoments } from "./moments.js";
import { stationPieces, uprightMap } from "./station-pieces.js";
import { StationZones, zoneRule } from "./station-zones.js";
import type { Cutout, SteelBody } from "./steel-body.js";
import { StraightElement } from "./straight-element.js";

type Span = { readonly lower: BoundaryPiece; readonly upper: BoundaryPiece };

/** Half the way between the two points of Gauss's rule on [0, 1]. */
const TWO_POINTS = Math.sqrt(1 / 12);

/** Integrals over the height of one face at a station: d, d·y, d·y², and the differences of z²/2, y·z²/2, z³/3. */
const INNER = 6;

/**
 * What the bevels take from the slab, as integrals over stations: at each x the section is exact, the zones between
 * its knots are integrated one by one, and the stations are summed by adaptive quadrature between the places where
 * anything changes its form.
 */
export class BevelMoments {
  private readonly body: SteelBody;
  private readonly zones: StationZones;
  private readonly right = new Float64Array(INNER);
  private readonly leftSide = new Float64Array(INNER);
  private inner: Float64Array = this.right;
  private section: HalfSection;
  private x = 0;
  /** Nearest point of the station's highest point, as the section's making left it. */
  private topDistance = 0;
  private topElement = 0;
  private topFoot = 0;
  private half = 0;
  private share = 1;
  /** Fewer points in every zone: a second opinion for the error estimate. */
  private coarse = false;
  /** Whether any zone since this was last cleared is one whose points are not exact. */
  private inexact = false;

  constructor(body: SteelBody) {
    this.body = body;
    this.section = body.section.half;
    this.zones = new StationZones(body.edgeRun, this.section);
  }

  /** Integrals of what is missing from the slab inside a region, the body's own outline or a cut-out in it. */
  over(region: Footprint, scale: Float64Array, tolerance: number): Moments {
    const { body } = this;
    const sum = noMoments();
    const run = body.edgeRun;
    // A ridge leaves the blade somewhere between two breaks, and its kink may be short.
    const wary = run.plainReach < body.footprint.maxY - body.footprint.minY;
    // Along the ridge of a curve the stations bend without end toward its focal point: less is asked there.
    const reached = wary && run.isCurved ? Math.max(tolerance * 100, 1e-9) : tolerance;
    const aim = scale.map((s) => s * reached);
    for (const interval of region.intervals) {
      const x0 = Math.max(body.groundFrom, interval.x0);
      if (interval.x1 <= x0) continue;
      const map = uprightMap(interval);
      const at = (u: number, out: Float64Array): void => {
        this.station(map.x(u), interval.spans, out);
        const stretch = map.slope(u);
        for (let i = 0; i < MOMENTS; i++) out[i] = (out[i] as number) * stretch;
      };
      const pieces = stationPieces(body, x0, interval.x1, region).map(
        (piece): Piece => ({ from: map.u(piece.from), to: map.u(piece.to) }),
      );
      const result = integrateAdaptive(at, MOMENTS, pieces, {
        tolerance: aim,
        wary,
        maxPieces: wary ? 160 : 400,
      });
      const inner = this.innerError(at, pieces);
      for (let i = 0; i < MOMENTS; i++) {
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

  /** What the points inside the zones may have missed: each piece's middle station with fewer points, against all. */
  private innerError(at: (u: number, out: Float64Array) => void, pieces: readonly Piece[]): Float64Array {
    const error = new Float64Array(MOMENTS);
    const fine = new Float64Array(MOMENTS);
    const rough = new Float64Array(MOMENTS);
    for (const { from, to } of pieces) {
      const u = (from + to) / 2;
      this.inexact = false;
      this.coarse = true;
      at(u, rough);
      this.coarse = false;
      if (!this.inexact) continue;
      at(u, fine);
      for (let i = 0; i < MOMENTS; i++) {
        const size = Math.abs(fine[i] as number);
        const gap = Math.abs((fine[i] as number) - (rough[i] as number));
        // The finer rule squares the gap of the coarser one, as in the outer quadrature.
        const share = size > 0 ? (30 * gap) / size : 1;
        error[i] = (error[i] as number) + Math.min(size * share * Math.sqrt(share), gap) * (to - from);
      }
    }
    return error;
  }

  /** Area and its moments that the bevels take at station x, as rates per mm of x. */
  station(x: number, spans: readonly Span[], out: Float64Array): void {
    const { body } = this;
    this.x = x;
    this.half = body.slab.thicknessAt(x) / 2;
    this.share = body.plungeShareAt(x);
    const right = body.sectionAt(x);
    const run = body.edgeRun;
    this.topDistance = run.distance;
    this.topElement = run.element;
    this.topFoot = run.foot;
    const left = body.section.left;
    this.face(right, this.right, spans);
    if (left !== undefined) this.face(left, this.leftSide, spans);
    this.collect(this.right, left === undefined ? this.right : this.leftSide, out);
  }

  private face(section: HalfSection, inner: Float64Array, spans: readonly Span[]): void {
    this.section = section;
    this.inner = inner.fill(0);
    for (let i = 0; i < spans.length; i++) this.span(spans[i] as Span, spans);
  }

  /** One face over a height interval of the station. */
  private span({ lower, upper }: Span, spans: readonly Span[]): void {
    const { body, x } = this;
    const y0 = lower.heightAt(x);
    const y1 = upper.heightAt(x);
    const crest = body.crestAt(x);
    if (crest === undefined) {
      if (this.share === 0) return;
      const outermost = spans.length === 1 && lower.edgeElement >= 0 && upper.edgeElement < 0;
      if (outermost && upper === body.topPiece) {
        // Both ends are known: the edge itself, and the spine point from which the section was made.
        const foot = lower.footAt(x);
        this.zones.walkBetween(
          x,
          y0,
          0,
          lower.edgeElement,
          foot,
          y1,
          this.topDistance,
          this.topElement,
          this.topFoot,
          this.section,
          this.half,
          this.zone,
        );
      } else this.zones.walk(x, y0, y1, this.section, this.half, this.zone);
      return;
    }
    const top = body.footprint.topAt(x) ?? y1;
    const from = crestCrossing(body, this.section, x, top);
    if (this.share > 0) this.zones.walk(x, y0, Math.min(y1, from), this.section, this.half, this.zone);
    if (y1 > from) this.crestZone(crest, top, Math.max(y0, from), y1);
  }

  private collect(right: Float64Array, left: Float64Array, out: Float64Array): void {
    const x = this.x;
    const d0 = (right[0] as number) + (left[0] as number);
    const d1 = (right[1] as number) + (left[1] as number);
    out[0] = d0;
    out[1] = x * d0;
    out[2] = d1;
    out[3] = x * x * d0;
    out[4] = (right[2] as number) + (left[2] as number);
    out[5] = (right[5] as number) + (left[5] as number);
    out[6] = x * d1;
    const z = (right[3] as number) - (left[3] as number);
    out[7] = z;
    out[8] = (right[4] as number) - (left[4] as number);
    out[9] = x * z;
  }

  private readonly zone = (
    element: EdgeElement,
    piece: number,
    ya: number,
    va: number,
    foot: number,
    yb: number,
    vb: number,
  ): void => {
    const width = Math.abs(yb - ya);
    if (width === 0) return;
    const { section } = this;
    const arc = section.isArc(piece);
    const isStraight = element instanceof StraightElement;
    if (isStraight && !arc) {
      this.straightZone(section.a[piece] as number, section.b[piece] as number, ya, va, yb, vb);
      return;
    }
    this.inexact = true;
    // An arc stands upright at the edge or a little way before it: nodes even in the root of the distance from there
    // take the root out of the integrand.
    const upright = arc ? section.uprightAt(piece) : 0;
    const rootA = arc ? Math.sqrt(Math.max(0, va - upright)) : 0;
    const rootB = arc ? Math.sqrt(Math.max(0, vb - upright)) : 0;
    const rooted = rootB > rootA;
    const rule =
      arc && section.comesDown(piece, vb)
        ? gaussRule(this.coarse ? 20 : 24)
        : zoneRule(element, arc, width, va, vb, foot, this.coarse);
    const { nodes, weights } = rule;
    const { x, half: s, share: ground, inner } = this;
    let hint = foot;
    let footBefore = foot;
    let d0 = 0;
    let d1 = 0;
    let d2 = 0;
    let z0 = 0;
    let z1 = 0;
    let zz = 0;
    for (let k = 0; k < nodes.length; k++) {
      const node = nodes[k] as number;
      const root = rootA + (rootB - rootA) * node;
      const u = rooted ? (node * (root + rootA)) / (rootA + rootB) : node;
      const y = ya + (yb - ya) * u;
      let v = va + (vb - va) * u;
      if (!isStraight) {
        const d = element.distanceInside(x, y, hint);
        if (d < Number.POSITIVE_INFINITY) {
          v = d;
          // The feet of evenly advancing points advance about evenly: the next one is near where the last step leads.
          hint = element.foot + (k === 0 ? 0 : (element.foot - footBefore) * gapAhead(nodes, k));
          footBefore = element.foot;
        }
      }
      const h = s - ground * (s - section.pieceValue(piece, v));
      const d = (s - h) * (weights[k] as number) * (rooted ? (2 * root) / (rootA + rootB) : 1);
      const z = d * (s + h);
      d0 += d;
      d1 += d * y;
      d2 += d * y * y;
      z0 += z;
      z1 += z * y;
      zz += d * (s * s + s * h + h * h);
    }
    inner[0] = (inner[0] as number) + width * d0;
    inner[1] = (inner[1] as number) + width * d1;
    inner[2] = (inner[2] as number) + width * d2;
    inner[3] = (inner[3] as number) + (width * z0) / 2;
    inner[4] = (inner[4] as number) + (width * z1) / 2;
    inner[5] = (inner[5] as number) + (width * zz) / 3;
  };

  /** Straight edge and straight face h = a + b·v: two points are exact. */
  private straightZone(a: number, b: number, ya: number, va: number, yb: number, vb: number): void {
    const { half: s, share, inner } = this;
    const y = (ya + yb) / 2;
    const v = (va + vb) / 2;
    const dy = (yb - ya) * TWO_POINTS;
    const rise = share * b * (vb - va) * TWO_POINTS;
    const middle = s - share * (s - a - b * v);
    const w = Math.abs(yb - ya) / 2;
    const h0 = middle - rise;
    const h1 = middle + rise;
    const y0 = y - dy;
    const y1 = y + dy;
    const d0 = w * (s - h0);
    const d1 = w * (s - h1);
    const z0 = (d0 * (s + h0)) / 2;
    const z1 = (d1 * (s + h1)) / 2;
    inner[0] = (inner[0] as number) + d0 + d1;
    inner[1] = (inner[1] as number) + d0 * y0 + d1 * y1;
    inner[2] = (inner[2] as number) + d0 * y0 * y0 + d1 * y1 * y1;
    inner[3] = (inner[3] as number) + z0 + z1;
    inner[4] = (inner[4] as number) + z0 * y0 + z1 * y1;
    inner[5] =
      (inner[5] as number) + (d0 * (s * s + s * h0 + h0 * h0) + d1 * (s * s + s * h1 + h1 * h1)) / 3;
  }

  /** Above the crossing the face follows the crest: eased spine and swedge, by the depth below the spine. */
  private crestZone(crest: HalfSection, top: number, y0: number, y1: number): void {
    this.inexact = true;
    for (let i = 0; i < crest.count; i++) {
      const u0 = Math.max(crest.start[i] as number, top - y1);
      const u1 = Math.min(crest.endOf(i), top - y0);
      if (u1 <= u0) continue;
      const upright = crest.isArc(i) && crest.k[i] === 0 && u0 === 0;
      const { nodes, weights } = gaussRule(crest.isArc(i) ? (this.coarse ? 10 : 14) : 2);
      for (let k = 0; k < nodes.length; k++) {
        const node = nodes[k] as number;
        const u = u0 + (u1 - u0) * (upright ? node * node : node);
        this.add(
          top - u,
          crest.pieceValue(i, u),
          (weights[k] as number) * (u1 - u0) * (upright ? 2 * node : 1),
        );
      }
    }
  }

  private add(y: number, h: number, w: number): void {
    const { inner, half: s } = this;
    const d = s - h;
    const z = (s * s - h * h) / 2;
    inner[0] = (inner[0] as number) + w * d;
    inner[1] = (inner[1] as number) + w * d * y;
    inner[2] = (inner[2] as number) + w * d * y * y;
    inner[3] = (inner[3] as number) + w * z;
    inner[4] = (inner[4] as number) + w * z * y;
    inner[5] = (inner[5] as number) + (w * (s * s * s - h * h * h)) / 3;
  }
}

/** Length of the step from node k to the next, over that from the node before. */
function gapAhead(nodes: Float64Array, k: number): number {
  if (k + 1 >= nodes.length) return 0;
  return (
    ((nodes[k + 1] as number) - (nodes[k] as number)) / ((nodes[k] as number) - (nodes[k - 1] as number))
  );
}
