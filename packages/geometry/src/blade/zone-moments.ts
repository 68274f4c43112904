import { type GaussRule, gaussRule } from "../numeric/gauss.js";
import { CubicElement } from "./cubic-element.js";
import type { EdgeElement } from "./edge-element.js";
import type { HalfSection } from "./half-section.js";
import { RoundElement } from "./round-element.js";
import { StraightElement } from "./straight-element.js";
import {
  ARC_POINTS,
  arcPoints,
  focalRatio,
  HARD_RATIO,
  MOST_DIVISIONS,
  MOST_POINTS,
  pointsFor,
  STEEP_POINTS,
} from "./zone-rule.js";

/** Integrals over the height of one face at a station: d, d·y, d·y², and the differences of z²/2, y·z²/2, z³/3. */
export const INNER = 6;

/** Half the way between the two points of Gauss's rule on [0, 1]. */
const TWO_POINTS = Math.sqrt(1 / 12);

/** The points of one zone, filled and added up before the next: heights, half-thickness, weights. */
const heights = new Float64Array(MOST_POINTS);
const halves = new Float64Array(MOST_POINTS);
const shares = new Float64Array(MOST_POINTS);

/**
 * Sums one face of a station zone by zone. Every zone is covered with points: heights, half-thickness there, and weights;
 * what is missing from the slab at them is added to {@link sums}.
 */
export class ZoneMoments {
  /** Where the face's integrals are gathered. */
  sums: Float64Array;
  /** The station: x, half the slab's thickness, how far the bevel has come in, the face's section. */
  x = 0;
  half = 0;
  share = 1;
  section: HalfSection;
  /** One point fewer in every zone: a second opinion for the error estimate. */
  isCoarse = false;
  /** Whether any zone since this was last cleared is one whose points are not exact. */
  isInexact = false;
  /** Whether a ridge may lie in the blade, so that the nearest points of a zone may jump. */
  isRidged = false;
  /** Share of the points that a double's digits ask for; see `shareOfPoints`. */
  shareOfPoints = 1;

  constructor(section: HalfSection, sums: Float64Array) {
    this.section = section;
    this.sums = sums;
  }

  /** Takes one zone of a station; see ZoneVisitor. */
  readonly take = (
    element: EdgeElement,
    piece: number,
    ya: number,
    va: number,
    footA: number,
    yb: number,
    vb: number,
    footB: number,
  ): void => {
    if (ya === yb) return;
    if (element instanceof CubicElement) this.onCubic(element, piece, ya, va, footA, yb, vb, footB, 0);
    else if (element instanceof RoundElement) this.onRound(element, piece, ya, va, yb, vb, 0);
    else if (this.section.isArc(piece)) {
      this.circularFace(element, undefined, piece, ya, va, footA, yb, vb, footB, 0);
    } else {
      this.onStraight(this.section.a[piece] as number, this.section.b[piece] as number, ya, va, yb, vb);
    }
  };

  /** Straight edge, straight face h = a + b·v: two points are exact. */
  private onStraight(a: number, b: number, ya: number, va: number, yb: number, vb: number): void {
    const { half, share } = this;
    const middle = half - share * (half - a - (b * (va + vb)) / 2);
    const rise = share * b * (vb - va) * TWO_POINTS;
    const step = (yb - ya) * TWO_POINTS;
    const w = Math.abs(yb - ya) / 2;
    this.point(0, (ya + yb) / 2 - step, middle - rise, w);
    this.point(1, (ya + yb) / 2 + step, middle + rise, w);
    this.add(2);
  }

  /** Round edge: the distance is a root of the height. A zone that is near to the centre is divided. */
  private onRound(
    element: RoundElement,
    piece: number,
    ya: number,
    va: number,
    yb: number,
    vb: number,
    depth: number,
  ): void {
    this.isInexact = true;
    const width = Math.abs(yb - ya);
    const ratio = focalRatio(element, width, va, vb, 0, 0);
    if (ratio > HARD_RATIO && depth < MOST_DIVISIONS) {
      const y = (ya + yb) / 2;
      const v = element.distanceInside(this.x, y);
      this.onRound(element, piece, ya, va, y, v, depth + 1);
      this.onRound(element, piece, y, v, yb, vb, depth + 1);
      return;
    }
    if (this.section.isArc(piece)) {
      this.circularFace(element, undefined, piece, ya, va, 0, yb, vb, 0, ratio);
      return;
    }
    const a = this.section.a[piece] as number;
    const b = this.section.b[piece] as number;
    const { nodes, weights } = this.rule(pointsFor(ratio));
    const { half, share } = this;
    for (let k = 0; k < nodes.length; k++) {
      const y = ya + (yb - ya) * (nodes[k] as number);
      const v = element.distanceInside(this.x, y);
      this.point(k, y, half - share * (half - a - b * v), width * (weights[k] as number));
    }
    this.add(nodes.length);
  }

  /**
   * Cubic edge. Where it leans the points can be spread by their feet, and none has to be looked for: then the singularity
   * lies where the curve is level. Spread by their heights it lies at the focal point. The farther one is chosen; a zone
   * that is near to both is divided.
   */
  private onCubic(
    element: CubicElement,
    piece: number,
    ya: number,
    va: number,
    footA: number,
    yb: number,
    vb: number,
    footB: number,
    depth: number,
  ): void {
    this.isInexact = true;
    const level = element.levelRatio(footA, footB);
    // The way to the focal point is not worth asking for where the curve leans well.
    const focal = level < 0.8 ? level : focalRatio(element, Math.abs(yb - ya), va, vb, footA, footB);
    const ratio = Math.min(level, focal);
    const curve = level <= focal && this.areFeet(element, ya, footA, yb, footB) ? element : undefined;
    if (ratio > HARD_RATIO && depth < MOST_DIVISIONS) {
      const foot = (footA + footB) / 2;
      element.stand(this.x, foot);
      const y = element.standY;
      const v = element.standV;
      if ((y - ya) * (yb - y) > 0) {
        this.onCubic(element, piece, ya, va, footA, y, v, foot, depth + 1);
        this.onCubic(element, piece, y, v, foot, yb, vb, footB, depth + 1);
        return;
      }
    }
    if (this.section.isArc(piece)) {
      this.circularFace(element, curve, piece, ya, va, footA, yb, vb, footB, ratio);
      return;
    }
    const { half, share } = this;
    const a = this.section.a[piece] as number;
    const b = this.section.b[piece] as number;
    const { nodes, weights } = this.rule(pointsFor(ratio));
    if (curve !== undefined) {
      const width = Math.abs(footB - footA);
      for (let k = 0; k < nodes.length; k++) {
        curve.stand(this.x, footA + (footB - footA) * (nodes[k] as number));
        const h = half - share * (half - a - b * curve.standV);
        this.point(k, curve.standY, h, width * (weights[k] as number) * Math.abs(curve.standSlope));
      }
    } else this.alongHeights(element, a, b, nodes, weights, ya, va, footA, yb, vb);
    this.add(nodes.length);
  }

  /** Whether the ends of a zone stand where their feet say: at an end of a curve that reaches no farther they do not. */
  private areFeet(element: CubicElement, ya: number, footA: number, yb: number, footB: number): boolean {
    if (!this.isRidged) return true;
    const slack = 1e-9 + 1e-6 * Math.abs(yb - ya);
    element.stand(this.x, footA);
    if (!(Math.abs(element.standY - ya) <= slack)) return false;
    element.stand(this.x, footB);
    return Math.abs(element.standY - yb) <= slack;
  }

  private alongHeights(
    element: CubicElement,
    a: number,
    b: number,
    nodes: Float64Array,
    weights: Float64Array,
    ya: number,
    va: number,
    footA: number,
    yb: number,
    vb: number,
  ): void {
    const { half, share } = this;
    const width = Math.abs(yb - ya);
    let hint = footA;
    let footBefore = footA;
    for (let k = 0; k < nodes.length; k++) {
      const node = nodes[k] as number;
      const y = ya + (yb - ya) * node;
      let v = va + (vb - va) * node;
      const d = element.distanceInside(this.x, y, hint);
      if (d < Number.POSITIVE_INFINITY) {
        v = d;
        hint = nextHint(element.foot, footBefore, nodes, k);
        footBefore = element.foot;
      }
      this.point(k, y, half - share * (half - a - b * v), width * (weights[k] as number));
    }
  }

  /**
   * Circular face. It stands upright at the edge or a little way before it: points even in the root of the distance from
   * there take the root out of the integrand.
   *
   * @param curve - the element, where its points are to be spread by their feet.
   */
  private circularFace(
    element: EdgeElement,
    curve: CubicElement | undefined,
    piece: number,
    ya: number,
    va: number,
    footA: number,
    yb: number,
    vb: number,
    footB: number,
    ratio: number,
  ): void {
    this.isInexact = true;
    const { section, half, share, x } = this;
    const upright = section.uprightAt(piece);
    const rootA = Math.sqrt(Math.max(0, va - upright));
    const rootB = Math.sqrt(Math.max(0, vb - upright));
    const isRooted = rootB > rootA;
    const overRoots = 1 / (rootA + rootB);
    const isStraight = element instanceof StraightElement;
    // Beside a curved edge the root is not quite that of the height, and what is left of it wants all the points.
    const onFace = isStraight ? arcPoints(rootA, rootB, section.radiusOf(piece)) : ARC_POINTS;
    const { nodes, weights } = this.rule(
      section.comesDown(piece, vb) ? STEEP_POINTS : Math.max(pointsFor(ratio), onFace),
    );
    const width = curve === undefined ? Math.abs(yb - ya) : Math.abs(footB - footA);
    let hint = footA;
    let footBefore = footA;
    for (let k = 0; k < nodes.length; k++) {
      const node = nodes[k] as number;
      const root = rootA + (rootB - rootA) * node;
      const u = isRooted ? node * (root + rootA) * overRoots : node;
      let y = ya + (yb - ya) * u;
      let v = va + (vb - va) * u;
      let w = width * (weights[k] as number) * (isRooted ? 2 * root * overRoots : 1);
      if (curve !== undefined) {
        curve.stand(x, footA + (footB - footA) * u);
        y = curve.standY;
        v = curve.standV;
        w *= Math.abs(curve.standSlope);
      } else if (!isStraight) {
        const d = element.distanceInside(x, y, hint);
        if (d < Number.POSITIVE_INFINITY) {
          v = d;
          hint = nextHint(element.foot, footBefore, nodes, k);
          footBefore = element.foot;
        }
      }
      this.point(k, y, half - share * (half - section.pieceValue(piece, v)), w);
    }
    this.add(nodes.length);
  }

  /** Above the crossing the face follows the crest, by the depth below the spine at `top`: eased spine and swedge. */
  takeCrest(crest: HalfSection, top: number, y0: number, y1: number): void {
    this.isInexact = true;
    for (let i = 0; i < crest.count; i++) {
      const u0 = Math.max(crest.start[i] as number, top - y1);
      const u1 = Math.min(crest.endOf(i), top - y0);
      if (u1 <= u0) continue;
      const isUpright = crest.isArc(i) && crest.k[i] === 0 && u0 === 0;
      const { nodes, weights } = this.rule(crest.isArc(i) ? 14 : 2);
      for (let k = 0; k < nodes.length; k++) {
        const node = nodes[k] as number;
        const u = u0 + (u1 - u0) * (isUpright ? node * node : node);
        const w = (weights[k] as number) * (u1 - u0) * (isUpright ? 2 * node : 1);
        this.point(k, top - u, crest.pieceValue(i, u), w);
      }
      this.add(nodes.length);
    }
  }

  private rule(points: number): GaussRule {
    const enough = Math.max(2, Math.ceil(points * this.shareOfPoints));
    return gaussRule(this.isCoarse && enough > 2 ? enough - 1 : enough);
  }

  private point(k: number, y: number, h: number, w: number): void {
    heights[k] = y;
    halves[k] = h;
    shares[k] = w;
  }

  private add(count: number): void {
    const { sums, half: s } = this;
    let d0 = 0;
    let d1 = 0;
    let d2 = 0;
    let z0 = 0;
    let z1 = 0;
    let zz = 0;
    for (let k = 0; k < count; k++) {
      const y = heights[k] as number;
      const h = halves[k] as number;
      const d = (s - h) * (shares[k] as number);
      const dy = d * y;
      d0 += d;
      d1 += dy;
      d2 += dy * y;
      z0 += d * (s + h);
      z1 += dy * (s + h);
      zz += d * (s * s + s * h + h * h);
    }
    sums[0] = (sums[0] as number) + d0;
    sums[1] = (sums[1] as number) + d1;
    sums[2] = (sums[2] as number) + d2;
    sums[3] = (sums[3] as number) + z0 / 2;
    sums[4] = (sums[4] as number) + z1 / 2;
    sums[5] = (sums[5] as number) + zz / 3;
  }
}

/**
 * Where to look for the next foot: the feet of evenly advancing points advance about evenly, so that it is near where the
 * last step leads.
 */
function nextHint(foot: number, before: number, nodes: Float64Array, k: number): number {
  if (k === 0 || k + 1 >= nodes.length) return foot;
  const ahead = (nodes[k + 1] as number) - (nodes[k] as number);
  return foot + ((foot - before) * ahead) / ((nodes[k] as number) - (nodes[k - 1] as number));
}
