import type { Piece } from "../numeric/adaptive.js";
import { findRoot, findRootBetween } from "../numeric/roots.js";
import type { Joint } from "./edge-run-parts.js";
import { type BoundaryPiece, distinct, type Footprint, type FootprintInterval } from "./footprint.js";
import { SignList } from "./sign-list.js";
import type { SteelBody } from "./steel-body.js";

/** Samples per smooth stretch when looking for places where the section changes its structure. */
const SAMPLES = 4;

/**
 * Cuts a stretch of x into pieces over which every station has a section of the same structure. A change that is missed
 * costs time, not truth: the quadrature over the pieces is adaptive.
 */
export function stationPieces(
  body: SteelBody,
  x0: number,
  x1: number,
  region: Footprint = body.footprint,
): Piece[] {
  return new StationCuts(body, region).pieces(x0, x1);
}

/** The same for many stretches of one body: what is known of it is gathered once. */
export class StationCuts {
  /** Places where the outline, a law, or the edge has a joint, ascending. */
  private readonly fixed: readonly number[];
  private readonly changes: StructureChanges;

  /** @param aim - relative error of what is to be summed over the pieces. */
  constructor(body: SteelBody, region: Footprint, aim = 0) {
    this.fixed = fixedCuts(body, region);
    this.changes = new StructureChanges(
      body,
      Math.min(COARSEST, Math.max(FINEST, WIDTH_OF_AIM * Math.sqrt(aim))),
    );
  }

  /** How far beside the end of a piece a station is sure to belong to it, mm. */
  get slack(): number {
    return 2 * this.changes.width;
  }

  pieces(x0: number, x1: number): Piece[] {
    const { fixed, changes } = this;
    const found: number[] = [];
    let a = x0;
    for (let i = firstAbove(fixed, x0); i < fixed.length && (fixed[i] as number) < x1; i++) {
      const b = fixed[i] as number;
      found.push(a);
      changes.find(a, b, found);
      a = b;
    }
    found.push(a);
    changes.find(a, x1, found);
    found.push(x1);
    const sorted = graded(apart(distinct(found), this.slack));
    const pieces: Piece[] = [];
    for (let i = 0; i + 1 < sorted.length; i++) {
      pieces.push({ from: sorted[i] as number, to: sorted[i + 1] as number });
    }
    return pieces;
  }
}

function fixedCuts(body: SteelBody, region: Footprint): number[] {
  const { plunge, crest } = body.input;
  const found = [plunge.at, plunge.at + plunge.length];
  const take = (x: number): void => {
    found.push(x);
  };
  for (const interval of body.footprint.intervals) take(interval.x0);
  if (region !== body.footprint) for (const interval of region.intervals) take(interval.x0);
  if (crest !== undefined) {
    crest.breaks.forEach(take);
    body.slab.breaks.forEach(take);
  }
  body.section.breaks.forEach(take);
  for (const { at } of body.edgeRun.joints) take(at.x);
  return distinct(found.filter((x) => Number.isFinite(x)));
}

/** Index of the first of some ascending numbers that lies above x by more than rounding. */
function firstAbove(values: readonly number[], x: number): number {
  const above = x + 1e-11 * Math.max(1, Math.abs(x));
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((values[middle] as number) > above) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Changes that were found as one as well as they are found: the first of them stays, and so do both ends. */
function apart(cuts: readonly number[], width: number): number[] {
  const last = cuts.length - 1;
  const kept: number[] = [];
  cuts.forEach((x, i) => {
    if (i > 0 && i < last && x - (kept[kept.length - 1] as number) < width) return;
    kept.push(x);
  });
  return kept;
}

/** Greatest ratio of the lengths of two neighbouring pieces. */
const GRADE = 6;

/**
 * Divides a long piece beside a short one so that lengths grow step by step: where two changes of structure lie close
 * together, the section changes fast on both sides of them.
 */
function graded(cuts: readonly number[]): number[] {
  const out = [...cuts];
  for (let i = 1; i + 1 < cuts.length; i++) {
    const x = cuts[i] as number;
    const before = x - (cuts[i - 1] as number);
    const after = (cuts[i + 1] as number) - x;
    for (let d = GRADE * Math.max(after, 1e-3); d < before / 2; d *= GRADE) out.push(x - d);
    for (let d = GRADE * Math.max(before, 1e-3); d < after / 2; d *= GRADE) out.push(x + d);
  }
  return distinct(out);
}

/**
 * Width to which a change of structure is found, mm: a kink so close to the end of a piece costs the sum its square times a
 * change of slope of a millimetre or so, of a volume of a thousand cubic millimetres and more.
 */
const FINEST = 1e-6;
const COARSEST = 0.1;
const WIDTH_OF_AIM = 2;

/** A joint's normal that leans less than this against the stations is taken as upright. */
const LEAN = 1e-6;

/** Filled anew by every search: small arrays are dear to make. */
const lists = [new SignList(), new SignList(), new SignList()] as const;

/** Finds the places along x where the section changes its structure. */
class StructureChanges {
  private readonly body: SteelBody;
  readonly width: number;
  private before: SignList = lists[0];
  private here: SignList = lists[1];
  private readonly between: SignList = lists[2];
  /** Joints of the edge whose normal passes through the stretch that is looked at. */
  private joints: Joint[] = [];
  /** All joints: those whose normal leans, with the stretch of x that it covers, and the others by their x. */
  private readonly leaning: readonly { readonly joint: Joint; readonly from: number; readonly to: number }[];
  private readonly upright: readonly Joint[];
  private readonly uprightAt: readonly number[];
  /** Whether any of them leans, so that the section's knots may cross it. */
  private isLeaning = false;
  /** Which element of the edge is nearest to the last station's highest point, and how far it is. */
  private topElement = -1;
  private spineDistance = 0;

  /** @param width - to which changes are found, mm. */
  constructor(body: SteelBody, width: number) {
    this.body = body;
    this.width = width;
    const { footprint, edgeRun } = body;
    const reach = footprint.maxX - footprint.minX + footprint.maxY - footprint.minY;
    const leans = ({ normal }: Joint): boolean => Math.abs(normal.x) > LEAN;
    this.leaning = edgeRun.joints.filter(leans).map((joint) => {
      const end = joint.at.x + joint.normal.x * reach;
      return { joint, from: Math.min(joint.at.x, end), to: Math.max(joint.at.x, end) };
    });
    this.upright = edgeRun.joints.filter((joint) => !leans(joint)).sort((a, b) => a.at.x - b.at.x);
    this.uprightAt = this.upright.map(({ at }) => at.x);
  }

  /** Appends the changes between a and b, where the outline has its pieces all the way. */
  find(a: number, b: number, found: number[]): void {
    const { edgeRun } = this.body;
    this.joints = this.leaning.filter(({ from, to }) => from <= b && to >= a).map(({ joint }) => joint);
    for (let i = firstAbove(this.uprightAt, a - 1e-9); i < this.upright.length; i++) {
      if ((this.uprightAt[i] as number) > b + 1e-9) break;
      this.joints.push(this.upright[i] as Joint);
    }
    this.isLeaning = this.joints.some(({ normal }) => Math.abs(normal.x) > LEAN);
    let xBefore = a + (b - a) * 1e-9;
    this.look(xBefore, this.before);
    let topBefore = this.topElement;
    for (let k = 1; k <= SAMPLES; k++) {
      const x = k === SAMPLES ? b - (b - a) * 1e-9 : a + ((b - a) * k) / SAMPLES;
      this.look(x, this.here);
      const top = this.topElement;
      const isPlain = this.spineDistance <= edgeRun.plainReach;
      const count = found.length;
      this.findSigns(xBefore, x, found);
      // The spine's nearest point goes from one part of the edge to another: at a joint, which its own sign has told, or
      // at a ridge that reaches the spine.
      if (top !== topBefore && !(isPlain && found.length > count)) {
        const change = findRoot(
          (t) => (this.topElementAt(t) === topBefore ? -1 : 1),
          xBefore,
          x,
          this.width / 1000,
        );
        if (change !== undefined) found.push(change);
      }
      const spare = this.before;
      this.before = this.here;
      this.here = spare;
      topBefore = top;
      xBefore = x;
    }
  }

  private findSigns(a: number, b: number, found: number[]): void {
    const { before, here, between } = this;
    for (let i = 0; i < here.count && i < before.count; i++) {
      const atA = before.values[i] as number;
      const atB = here.values[i] as number;
      if (atA > 0 === atB > 0) continue;
      const sign = (x: number): number => {
        this.look(x, between);
        return i < between.count ? (between.values[i] as number) : 0;
      };
      const root = findRootBetween(sign, a, atA, b, atB, this.width);
      if (root !== undefined) found.push(root);
    }
  }

  /** Which element of the edge is nearest to the station's highest point. */
  private topElementAt(x: number): number {
    const { footprint, edgeRun } = this.body;
    const top = footprint.topAt(x);
    if (top === undefined) return -1;
    edgeRun.nearest(x, top);
    return edgeRun.element;
  }

  /** Continuous numbers, each of which changes its sign where the section changes its structure. */
  private look(x: number, out: SignList): void {
    const { section, edgeRun } = this.body;
    out.clear();
    const spineDistance = this.body.spineDistanceAt(x);
    this.spineDistance = spineDistance;
    const top = this.body.topPiece?.heightAt(x);
    // Where the edge turns back over the station the spine's distance is that of another place.
    this.topElement = this.body.isTopSpine ? edgeRun.element : this.topElementAt(x);
    if (top === undefined) return;
    section.structureAt(x, spineDistance, out);
    this.body.input.crest?.structureAt(x, out);
    if (!this.isLeaning) {
      for (const { at, normal } of this.joints) out.push((x - at.x) * normal.y - (top - at.y) * normal.x);
      return;
    }
    const right = section.at(x, spineDistance);
    const left = section.left;
    const bevelLine = section.bevelHeight;
    const firstKnot = right.count > 1 ? (right.start[1] as number) : bevelLine;
    const firstLeft = left !== undefined && left.count > 1 ? (left.start[1] as number) : undefined;
    for (const { at, normal } of this.joints) {
      // On which side of the joint's normal is the spine point, the bevel line, the sharpening bevel's upper end?
      out.push((x - at.x) * normal.y - (top - at.y) * normal.x);
      if (Math.abs(normal.x) > LEAN) {
        const along = (x - at.x) / normal.x;
        out.push(along - bevelLine);
        out.push(along - firstKnot);
        if (firstLeft !== undefined) out.push(along - firstLeft);
      }
    }
  }
}

/** Takes the square-root behaviour out of a stretch that begins or ends where the outline stands upright. */
export interface StationMap {
  x(u: number): number;
  u(x: number): number;
  slope(u: number): number;
}

const LEVEL: StationMap = { x: (u) => u, u: (x) => x, slope: () => 1 };

export function uprightMap(interval: FootprintInterval): StationMap {
  const { x0, x1, spans } = interval;
  const isUpright = (piece: BoundaryPiece): boolean =>
    (piece.uprightAt0 && piece.x0 === x0) || (piece.uprightAt1 && piece.x1 === x1);
  if (!spans.some(({ lower, upper }) => isUpright(lower) || isUpright(upper))) return LEVEL;
  const width = x1 - x0;
  // x = x0 + width·sin²(πu/2): near either end x moves with the square of u, as the outline's height does.
  return {
    x: (u) => x0 + width * Math.sin((Math.PI * u) / 2) ** 2,
    u: (x) => (2 / Math.PI) * Math.asin(Math.sqrt(Math.min(1, Math.max(0, (x - x0) / width)))),
    slope: (u) => (width * Math.PI * Math.sin(Math.PI * u)) / 2,
  };
}
