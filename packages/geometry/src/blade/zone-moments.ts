import { type GaussRule, gaussRule } from "../numeric/gauss.js";
import { CubicElement } from "./cubic-element.js";
import type { EdgeElement } from "./edge-element.js";
import type { HalfSection } from "./half-section.js";
import { RoundElement } from "./round-element.js";
import { StraightElement } from "./straight-element.js";
import {
  ARC_POINTS,
  arcPoints,
  GREATEST_LEVEL_RATIO,
  levelPoints,
  MOST_POINTS,
  STEEP_POINTS,
  zonePoints,
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
    const { section } = this;
    if (section.isArc(piece)) this.circularFace(element, piece, ya, va, footA, yb, vb, footB);
    else {
      const a = section.a[piece] as number;
      const b = section.b[piece] as number;
      if (element instanceof StraightElement) this.onStraight(a, b, ya, va, yb, vb);
      else if (element instanceof RoundElement) this.onRound(element, a, b, ya, va, yb, vb);
      else if (element instanceof CubicElement) this.onCubic(element, a, b, ya, va, footA, yb, vb, footB);
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

  /** Round edge, straight face: the distance is a root of the height. */
  private onRound(
    element: RoundElement,
    a: number,
    b: number,
    ya: number,
    va: number,
    yb: number,
    vb: number,
  ): void {
    this.isInexact = true;
    const width = Math.abs(yb - ya);
    const { nodes, weights } = this.rule(zonePoints(element, width, va, vb, 0));
    const { half, share } = this;
    for (let k = 0; k < nodes.length; k++) {
      const y = ya + (yb - ya) * (nodes[k] as number);
      const v = element.distanceInside(this.x, y);
      this.point(k, y, half - share * (half - a - b * v), width * (weights[k] as number));
    }
    this.add(nodes.length);
  }

  /** Cubic edge, straight face: by the feet of the points where the curve leans enough, else by searching each foot. */
  private onCubic(
    element: CubicElement,
    a: number,
    b: number,
    ya: number,
    va: number,
    footA: number,
    yb: number,
    vb: number,
    footB: number,
  ): void {
    this.isInexact = true;
    const { half, share } = this;
    const ratio = element.levelRatio(footA, footB);
    if (ratio < GREATEST_LEVEL_RATIO) {
      const { nodes, weights } = this.rule(levelPoints(ratio));
      const width = Math.abs(footB - footA);
      for (let k = 0; k < nodes.length; k++) {
        element.stand(this.x, footA + (footB - footA) * (nodes[k] as number));
        const h = half - share * (half - a - b * element.standV);
        this.point(k, element.standY, h, width * (weights[k] as number) * Math.abs(element.standSlope));
      }
      this.add(nodes.length);
      return;
    }
    const width = Math.abs(yb - ya);
    const { nodes, weights } = this.rule(zonePoints(element, width, va, vb, footA));
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
    this.add(nodes.length);
  }

  /**
   * Circular face. It stands upright at the edge or a little way before it: points even in the root of the distance from
   * there take the root out of the integrand.
   */
  private circularFace(
    element: EdgeElement,
    piece: number,
    ya: number,
    va: number,
    footA: number,
    yb: number,
    vb: number,
    footB: number,
  ): void {
    this.isInexact = true;
    const { section, half, share, x } = this;
    const upright = section.uprightAt(piece);
    const rootA = Math.sqrt(Math.max(0, va - upright));
    const rootB = Math.sqrt(Math.max(0, vb - upright));
    const isRooted = rootB > rootA;
    const overRoots = 1 / (rootA + rootB);
    const isStraight = element instanceof StraightElement;
    const isSteep = section.comesDown(piece, vb);
    const ratio =
      element instanceof CubicElement && !isSteep
        ? element.levelRatio(footA, footB)
        : Number.POSITIVE_INFINITY;
    const curve = element instanceof CubicElement && ratio < GREATEST_LEVEL_RATIO ? element : undefined;
    const onEdge =
      curve === undefined ? zonePoints(element, Math.abs(yb - ya), va, vb, footA) : levelPoints(ratio);
    // Beside a curved edge the root is not quite that of the height, and what is left of it wants all the points.
    const onFace = isStraight ? arcPoints(rootA, rootB, section.radiusOf(piece)) : ARC_POINTS;
    const { nodes, weights } = this.rule(isSteep ? STEEP_POINTS : Math.max(onEdge, onFace));
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
    return gaussRule(this.isCoarse && points > 2 ? points - 1 : points);
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
