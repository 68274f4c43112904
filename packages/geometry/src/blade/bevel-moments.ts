import { integrateAdaptive, type Piece } from "../numeric/adaptive.js";
import type { EdgeElement } from "./edge-element.js";
import type { BoundaryPiece } from "./footprint.js";
import { MOMENTS, type Moments } from "./moments.js";
import { stationPieces, uprightMap } from "./station-pieces.js";
import { StationZones, zoneRule } from "./station-zones.js";
import type { Cutout, SteelBody } from "./steel-body.js";
import { StraightElement } from "./straight-element.js";

/**
 * What the bevels take from the slab, as integrals over stations: at each x the section is exact, the zones between
 * its knots are integrated one by one, and the stations are summed by adaptive quadrature between the places where
 * anything changes its form.
 */
export class BevelMoments {
  private readonly body: SteelBody;
  private readonly zones: StationZones;
  private readonly inner = new Float64Array(4);
  private x = 0;
  private half = 0;
  private share = 1;

  constructor(body: SteelBody) {
    this.body = body;
    this.zones = new StationZones(body.edgeRun, body.section.half);
  }

  /** Integrals of what is missing from the slab over the outline (cut-outs not counted). */
  overOutline(scale: Float64Array, tolerance: number): Moments {
    const { body } = this;
    const from = body.input.plunge.at;
    let value = new Float64Array(MOMENTS);
    let error = new Float64Array(MOMENTS);
    for (const interval of body.footprint.intervals) {
      const x0 = Math.max(from, interval.x0);
      if (interval.x1 <= x0) continue;
      const map = uprightMap(interval);
      const pieces = stationPieces(body, x0, interval.x1);
      const result = integrateAdaptive(
        (u, out) => {
          const x = map.x(u);
          const stretch = map.slope(u);
          this.station(x, interval.spans, out);
          for (let i = 0; i < MOMENTS; i++) out[i] = (out[i] as number) * stretch;
        },
        MOMENTS,
        pieces.map((piece): Piece => ({ from: map.u(piece.from), to: map.u(piece.to) })),
        { tolerance: scale.map((s) => s * tolerance) },
      );
      value = value.map((v, i) => v + (result.value[i] as number));
      error = error.map((e, i) => e + (result.error[i] as number));
    }
    return { value, error };
  }

  /** Integrals of what is missing from the slab inside a round cut-out. */
  overDisc({ centre, radius }: Cutout, scale: Float64Array, tolerance: number): Moments {
    const { body } = this;
    const from = Math.max(centre.x - radius, body.input.plunge.at);
    const to = centre.x + radius;
    const pieces = stationPieces(body, from, to).map(
      (piece): Piece => ({
        from: Math.asin(Math.max(-1, (piece.from - centre.x) / radius)),
        to: Math.asin(Math.min(1, (piece.to - centre.x) / radius)),
      }),
    );
    const result = integrateAdaptive(
      (angle, out) => {
        const x = centre.x + radius * Math.sin(angle);
        const half = radius * Math.cos(angle);
        this.begin(x);
        this.span(centre.y - half, centre.y + half);
        this.collect(out);
        for (let i = 0; i < MOMENTS; i++) out[i] = (out[i] as number) * half;
      },
      MOMENTS,
      pieces,
      { tolerance: scale.map((s) => s * tolerance) },
    );
    return result;
  }

  /** Area and its moments that the bevels take at station x, as rates per mm of x. */
  station(
    x: number,
    spans: readonly { readonly lower: BoundaryPiece; readonly upper: BoundaryPiece }[],
    out: Float64Array,
  ): void {
    this.begin(x);
    for (const span of spans) this.span(span.lower.heightAt(x), span.upper.heightAt(x));
    this.collect(out);
  }

  private begin(x: number): void {
    this.x = x;
    this.half = this.body.slab.thicknessAt(x) / 2;
    this.share = this.body.plungeShareAt(x);
    this.inner.fill(0);
    this.body.sectionAt(x);
  }

  private collect(out: Float64Array): void {
    const x = this.x;
    const [d0, d1, d2, z2] = this.inner as unknown as [number, number, number, number];
    out[0] = 2 * d0;
    out[1] = 2 * x * d0;
    out[2] = 2 * d1;
    out[3] = 2 * x * x * d0;
    out[4] = 2 * d2;
    out[5] = 2 * z2;
    out[6] = 2 * x * d1;
  }

  private span(y0: number, y1: number): void {
    this.zones.walk(this.x, y0, y1, this.body.section.half, this.half, this.zone);
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
    const section = this.body.section.half;
    // An arc stands upright at the edge or a little way before it: nodes even in the root of the distance from there
    // take the root out of the integrand.
    const arc = section.isArc(piece);
    const upright = arc ? section.uprightAt(piece) : 0;
    const rootA = arc ? Math.sqrt(Math.max(0, va - upright)) : 0;
    const rootB = arc ? Math.sqrt(Math.max(0, vb - upright)) : 0;
    const rooted = rootB > rootA;
    const rule = zoneRule(element, arc, width, va, vb, foot);
    const straight = element instanceof StraightElement;
    const { nodes, weights } = rule;
    const s = this.half;
    const inner = this.inner;
    let hint = foot;
    for (let k = 0; k < nodes.length; k++) {
      const node = nodes[k] as number;
      const root = rootA + (rootB - rootA) * node;
      const u = rooted ? (node * (root + rootA)) / (rootA + rootB) : node;
      const y = ya + (yb - ya) * u;
      let v = va + (vb - va) * u;
      if (!straight) {
        const d = element.distance(this.x, y, hint);
        if (d < Number.POSITIVE_INFINITY) {
          v = d;
          hint = element.foot;
        }
      }
      const d = this.share * (s - section.pieceValue(piece, v));
      const h = s - d;
      const w = (weights[k] as number) * width * (rooted ? (2 * root) / (rootA + rootB) : 1);
      inner[0] = (inner[0] as number) + w * d;
      inner[1] = (inner[1] as number) + w * d * y;
      inner[2] = (inner[2] as number) + w * d * y * y;
      inner[3] = (inner[3] as number) + (w * (s * s * s - h * h * h)) / 3;
    }
  };
}
