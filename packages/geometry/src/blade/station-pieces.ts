import type { Piece } from "../numeric/adaptive.js";
import { findRoot } from "../numeric/roots.js";
import { distinct, type Footprint, type FootprintInterval } from "./footprint.js";
import type { SteelBody } from "./steel-body.js";

/** Samples per smooth stretch when looking for places where the section changes its structure. */
const SAMPLES = 6;

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
  const { at, length } = body.input.plunge;
  const fixed = distinct(
    [
      x0,
      x1,
      at,
      at + length,
      ...body.footprint.intervals.map((interval) => interval.x0),
      ...(region === body.footprint ? [] : region.intervals.map((interval) => interval.x0)),
      ...(body.input.crest?.breaks ?? []),
      ...(body.input.crest === undefined ? [] : body.slab.breaks),
      ...body.section.breaks,
      ...body.edgeRun.joints.map((joint) => joint.at.x),
    ].filter((x) => x >= x0 && x <= x1),
  );
  const cuts: number[] = [];
  for (let i = 0; i + 1 < fixed.length; i++) {
    const a = fixed[i] as number;
    const b = fixed[i + 1] as number;
    cuts.push(a, ...structureChanges(body, a, b));
  }
  cuts.push(x1);
  const sorted = graded(distinct(cuts));
  const pieces: Piece[] = [];
  for (let i = 0; i + 1 < sorted.length; i++) {
    pieces.push({ from: sorted[i] as number, to: sorted[i + 1] as number });
  }
  return pieces;
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

function structureChanges(body: SteelBody, a: number, b: number): number[] {
  const found: number[] = [];
  let xBefore = a + (b - a) * 1e-9;
  let before = indicators(body, xBefore);
  let footBefore = topElement(body, xBefore);
  for (let k = 1; k <= SAMPLES; k++) {
    const x = k === SAMPLES ? b - (b - a) * 1e-9 : a + ((b - a) * k) / SAMPLES;
    const here = indicators(body, x);
    for (let i = 0; i < Math.min(here.length, before.length); i++) {
      if ((before[i] as number) > 0 !== (here[i] as number) > 0) {
        const root = findRoot((t) => indicators(body, t)[i] ?? 0, xBefore, x, 1e-11);
        if (root !== undefined) found.push(root);
      }
    }
    const foot = topElement(body, x);
    if (foot !== footBefore) {
      // The spine's nearest point jumps from one part of the edge to another: a ridge reaches the spine here.
      const root = findRoot((t) => (topElement(body, t) === footBefore ? -1 : 1), xBefore, x, 1e-11);
      if (root !== undefined) found.push(root);
    }
    before = here;
    footBefore = foot;
    xBefore = x;
  }
  return found;
}

/** Which element of the edge is nearest to the station's highest point. */
function topElement(body: SteelBody, x: number): number {
  const top = body.footprint.topAt(x);
  if (top === undefined) return -1;
  body.edgeRun.nearest(x, top);
  return body.edgeRun.element;
}

/** Continuous numbers, each of which changes its sign where the section changes its structure. */
function indicators(body: SteelBody, x: number): number[] {
  const out: number[] = [];
  const top = body.footprint.topAt(x);
  if (top === undefined) return out;
  const spineDistance = body.spineDistanceAt(x);
  body.section.structureAt(x, spineDistance, out);
  const right = body.section.at(x, spineDistance);
  const left = body.section.left;
  const bevelLine = body.section.bevelHeight;
  const firstKnot = right.count > 1 ? (right.start[1] as number) : bevelLine;
  const firstLeft = left !== undefined && left.count > 1 ? (left.start[1] as number) : undefined;
  for (const joint of body.edgeRun.joints) {
    const { at, normal } = joint;
    // On which side of the joint's normal is the spine point, the bevel line, the sharpening bevel's upper end?
    out.push((x - at.x) * normal.y - (top - at.y) * normal.x);
    if (Math.abs(normal.x) > 1e-6) {
      const along = (x - at.x) / normal.x;
      out.push(along - bevelLine, along - firstKnot);
      if (firstLeft !== undefined) out.push(along - firstLeft);
    }
  }
  return out;
}

/** Takes the square-root behaviour out of a stretch that begins or ends where the outline stands upright. */
export interface StationMap {
  x(u: number): number;
  u(x: number): number;
  slope(u: number): number;
}

export function uprightMap(interval: FootprintInterval): StationMap {
  const { x0, x1, spans } = interval;
  const pieces = spans.flatMap(({ lower, upper }) => [lower, upper]);
  const upright = pieces.some(
    (piece) => (piece.uprightAt0 && piece.x0 === x0) || (piece.uprightAt1 && piece.x1 === x1),
  );
  if (!upright) return { x: (u) => u, u: (x) => x, slope: () => 1 };
  const width = x1 - x0;
  // x = x0 + width·sin²(πu/2): near either end x moves with the square of u, as the outline's height does.
  return {
    x: (u) => x0 + width * Math.sin((Math.PI * u) / 2) ** 2,
    u: (x) => (2 / Math.PI) * Math.asin(Math.sqrt(Math.min(1, Math.max(0, (x - x0) / width)))),
    slope: (u) => (width * Math.PI * Math.sin(Math.PI * u)) / 2,
  };
}
