import { integrateAdaptive, type Piece } from "../numeric/adaptive.js";
import { gaussRule } from "../numeric/gauss.js";
import { parametersAtX } from "../plane/at-x.js";
import { derivativeAt, pointAt, type Segment } from "../plane/segment.js";
import { lineHeight } from "./bevel-line.js";
import type { EdgeElement, FootFrame } from "./edge-element.js";
import { HalfSection } from "./half-section.js";
import type { SectionSource } from "./section-law.js";
import { slabMoments } from "./slab-moments.js";
import { stationPieces, uprightMap } from "./station-pieces.js";
import { StationZones } from "./station-zones.js";
import type { Cutout, SteelBody } from "./steel-body.js";
import { focalRatio, pointsFor } from "./zone-rule.js";

/** Step along x for the slope of a face, mm: far below any feature, far above rounding. */
const STEP = 2e-5;
const AIM = 1e-9;
/** The same where a curved edge has a ridge inside the blade. */
const WARY_AIM = 1e-6;

/**
 * Surface of a steel body, mm²: both faces with their slopes, the rim all round, the walls of cut-outs and of steps.
 *
 * Accuracy: 10⁻⁹ relative on bodies with straight and gently curved edges.
 *
 * @example
 * measureSurface(knife.body("finished")); // mm², the faces, the rim and the walls of holes
 */
export function measureSurface(body: SteelBody): number {
  const { path, cutouts } = body.input;
  const slopeFactor = (x: number): number => 2 * Math.hypot(1, body.slab.slopeAt(x) / 2);
  const flats = { thicknessAt: slopeFactor, breaks: body.slab.breaks };
  let total = slabMoments(path, flats).value[0] as number;
  const faces = new FaceSurface(body);
  const wary = body.edgeRun.isCurved && body.edgeRun.plainReach < body.footprint.maxY - body.footprint.minY;
  const tolerance = total * (wary ? WARY_AIM : AIM);
  total += faces.extraOverOutline(tolerance);
  for (const segment of path.segments) total += rim(body, segment, tolerance);
  for (const cutout of cutouts) {
    total += cutoutSurface(body, cutout, tolerance) - faces.extraOverDisc(cutout, tolerance);
  }
  return total + stepWalls(body);
}

/** What the slopes of the bevels add to the flats. */
class FaceSurface {
  private readonly body: SteelBody;
  private readonly before: SectionSource;
  private readonly after: SectionSource;
  private readonly zones: StationZones;
  private readonly frame: FootFrame = { normalX: 0, normalY: 1 };
  private sum = 0;
  private x = 0;
  private flat = 0;

  constructor(body: SteelBody) {
    this.body = body;
    this.before = body.section.copy();
    this.after = body.section.copy();
    this.zones = new StationZones(body.edgeRun, new HalfSection());
  }

  extraOverOutline(tolerance: number): number {
    const { body } = this;
    let total = 0;
    for (const interval of body.footprint.intervals) {
      const x0 = Math.max(body.input.plunge.at, interval.x0);
      if (interval.x1 <= x0) continue;
      const map = uprightMap(interval);
      const pieces = stationPieces(body, x0, interval.x1).map(
        (piece): Piece => ({ from: map.u(piece.from), to: map.u(piece.to) }),
      );
      total += integrateAdaptive(
        (u, out) => {
          const x = map.x(u);
          const heights = interval.spans.map(
            ({ lower, upper }) => [lower.heightAt(x), upper.heightAt(x)] as const,
          );
          out[0] = (this.station(x, heights) + this.walls(x)) * map.slope(u);
        },
        1,
        pieces,
        { tolerance: new Float64Array([tolerance]), maxPieces: 120 },
      ).value[0] as number;
    }
    return total;
  }

  /** The same inside a round cut-out; walls of steps that it meets are left standing. */
  extraOverDisc({ centre, radius }: Cutout, tolerance: number): number {
    const from = Math.max(centre.x - radius, this.body.input.plunge.at);
    const to = centre.x + radius;
    if (to <= from) return 0;
    const angle = (x: number): number => Math.asin(Math.max(-1, Math.min(1, (x - centre.x) / radius)));
    const pieces = stationPieces(this.body, from, to).map(
      (piece): Piece => ({ from: angle(piece.from), to: angle(piece.to) }),
    );
    return integrateAdaptive(
      (u, out) => {
        const half = radius * Math.cos(u);
        out[0] = this.station(centre.x + radius * Math.sin(u), [[centre.y - half, centre.y + half]]) * half;
      },
      1,
      pieces,
      { tolerance: new Float64Array([tolerance]), maxPieces: 60 },
    ).value[0] as number;
  }

  /** Rate per mm of x: what the faces have over the flats between the given heights. */
  private station(x: number, heights: readonly (readonly [number, number])[]): number {
    const { body } = this;
    this.x = x;
    this.sum = 0;
    this.flat = Math.hypot(1, body.slab.slopeAt(x) / 2);
    this.before.at(x - STEP, body.spineDistanceAt(x - STEP));
    this.after.at(x + STEP, body.spineDistanceAt(x + STEP));
    const section = body.sectionAt(x);
    const whole = body.slab.thicknessAt(x) / 2;
    for (const [low, high] of heights) this.zones.walk(x, low, high, section, whole, this.zone);
    return 2 * this.sum;
  }

  /** Half-thickness with the plunge eased in. */
  private eased(x: number, half: number): number {
    const slab = this.body.slab.thicknessAt(x) / 2;
    return slab - this.body.plungeShareAt(x) * (slab - half);
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
    const { nodes, weights } = gaussRule(
      Math.max(10, pointsFor(focalRatio(element, width, va, vb, foot, foot))),
    );
    const share = this.body.plungeShareAt(this.x);
    let hint = foot;
    for (let k = 0; k < nodes.length; k++) {
      const u = nodes[k] as number;
      const y = ya + (yb - ya) * u;
      let v = va + (vb - va) * u;
      const d = element.distance(this.x, y, hint);
      if (d < Number.POSITIVE_INFINITY) {
        v = d;
        hint = element.foot;
      }
      element.frame(this.x, y, this.frame);
      const hv = share * section.pieceSlope(piece, v);
      const hx =
        (this.eased(this.x + STEP, this.after.half.valueAt(v)) -
          this.eased(this.x - STEP, this.before.half.valueAt(v))) /
        (2 * STEP);
      const face = Math.sqrt(1 + hv * hv + 2 * hv * hx * this.frame.normalX + hx * hx);
      this.sum += (weights[k] as number) * width * (face - this.flat);
    }
  };

  /** Walls where one piece of the section does not meet the next (a face that was not ground beside one that was). */
  private walls(x: number): number {
    const section = this.body.sectionAt(x);
    let walls = 0;
    for (let i = 0; i + 1 < section.count; i++) {
      const v = section.start[i + 1] as number;
      const gap = Math.abs(section.pieceValue(i, v) - section.pieceValue(i + 1, v));
      if (gap < 1e-12) continue;
      const slope = (lineHeight(this.body, x + STEP) - lineHeight(this.body, x - STEP)) / (2 * STEP);
      walls += gap * Math.hypot(1, slope);
    }
    return 2 * walls;
  }
}

function rim(body: SteelBody, segment: Segment, tolerance: number): number {
  const cuts = new Set([0, 1]);
  const breaks = [...body.slab.breaks, ...body.section.breaks, body.input.plunge.at];
  breaks.push(body.input.plunge.at + body.input.plunge.length);
  for (const x of breaks) for (const t of parametersAtX(segment, x)) cuts.add(t);
  const sorted = [...cuts].sort((a, b) => a - b);
  const pieces: Piece[] = [];
  for (let i = 0; i + 1 < sorted.length; i++) {
    pieces.push({ from: sorted[i] as number, to: sorted[i + 1] as number });
  }
  return integrateAdaptive(
    (t, out) => {
      const d = derivativeAt(segment, t);
      out[0] = body.thicknessIgnoringOutline(pointAt(segment, t)) * Math.hypot(d.x, d.y);
    },
    1,
    pieces,
    { tolerance: new Float64Array([tolerance]), maxPieces: 100 },
  ).value[0] as number;
}

function cutoutSurface(body: SteelBody, { centre, radius }: Cutout, tolerance: number): number {
  const result = integrateAdaptive(
    (angle, out) => {
      const x = centre.x + radius * Math.cos(angle);
      const y = centre.y + radius * Math.sin(angle);
      out[0] = body.thicknessIgnoringOutline({ x, y }) * radius;
      // The face that the hole takes, in strips across x; its slope is that of the flats.
      out[1] = 2 * Math.hypot(1, body.slab.slopeAt(x) / 2) * (radius * Math.sin(angle)) ** 2;
    },
    2,
    [
      { from: 0, to: Math.PI },
      { from: Math.PI, to: 2 * Math.PI },
    ],
    { tolerance: new Float64Array([tolerance, tolerance]), maxPieces: 60 },
  );
  return (result.value[0] as number) - (result.value[1] as number);
}

/**
 * Walls across the stations where the thickness may step: the start of a plunge of no length, and the handle front
 * where a tang has a thickness of its own. Only where there is steel on both sides; elsewhere the rim has it.
 */
function stepWalls(body: SteelBody): number {
  let walls = 0;
  for (const x of new Set([body.slab.handleFront, body.input.plunge.at])) {
    for (const [low, high] of sharedSpans(body, x)) walls += wallBetween(body, x, low, high);
  }
  return walls;
}

/** Heights at x that have steel both behind and ahead. */
function sharedSpans(body: SteelBody, x: number): (readonly [number, number])[] {
  const behind = body.footprint.intervals.find((interval) => x > interval.x0 && x <= interval.x1);
  if (behind === undefined) return [];
  return behind.spans.flatMap(({ lower, upper }) =>
    body.footprint
      .spansAt(x)
      .map(([low, high]) => [Math.max(low, lower.heightAt(x)), Math.min(high, upper.heightAt(x))] as const)
      .filter(([low, high]) => high > low),
  );
}

/** Difference of the thicknesses behind and ahead of x, summed over a stretch of heights; both faces together. */
function wallBetween(body: SteelBody, x: number, low: number, high: number): number {
  const { plunge } = body.input;
  const slab = body.slab.thicknessAt(x);
  const behind = x <= body.slab.handleFront ? body.slab.tangThicknessAt(x) : slab;
  if (x < plunge.at || plunge.length > 0) return Math.abs(slab - behind) * (high - low);
  const cuts = stationKnots(body, x, low, high);
  let wall = 0;
  for (let i = 0; i + 1 < cuts.length; i++) {
    wall += integrateAdaptive(
      (y, out) => {
        out[0] = Math.abs(behind - 2 * body.section.half.valueAt(body.edgeRun.nearest(x, y)));
      },
      1,
      [{ from: cuts[i] as number, to: cuts[i + 1] as number }],
      { tolerance: new Float64Array([1e-9]), maxPieces: 60 },
    ).value[0] as number;
  }
  return wall;
}

function stationKnots(body: SteelBody, x: number, low: number, high: number): number[] {
  const section = body.sectionAt(x);
  const cuts = [low, high];
  const zones = new StationZones(body.edgeRun, section);
  zones.walk(x, low, high, section, Number.NaN, (_element, _piece, ya, _va, _foot, yb) => {
    cuts.push(ya, yb);
  });
  return [...new Set(cuts)].sort((a, b) => a - b);
}
