import type { HalfSection } from "../../blade/half-section.js";
import type { Knife } from "../../blade/knife.js";
import { invariant } from "../../errors/errors.js";
import { findRoot } from "../../numeric/roots.js";

/** How near a core line is solved for, mm. */
const NEAR = 1e-9;

/**
 * Share of a stack's thickness that is core, joints cleaned; it stays while all layers are thinned alike.
 *
 * @param core - Thickness of the core bar as bought, mm.
 * @param cladding - Thickness of each of the two bars beside it, mm.
 * @param cleaning - Ground off each face of both joints, mm.
 *
 * @example
 * coreShare(3.556, 3.175, 0.2) * 3.4; // 1.18 mm of core in a blade forged 3.4 mm thick
 */
export function coreShare(core: number, cladding: number, cleaning: number): number {
  const cleaned = core - 2 * cleaning;
  return cleaned / (cleaned + 2 * (cladding - cleaning));
}

/**
 * Height of the core line on a flat bevel, mm above the edge before sharpening: `y = b(c − e)/(Tb − e)`. Negative where
 * the edge is thicker than the core.
 *
 * @param core - Thickness of the core there, mm.
 * @param bevel - Edge thickness, thickness at the bevel line, and height of the bevel, mm.
 *
 * @example
 * flatCoreLine(1.178, { edge: 0.25, bevelLine: 2.4, height: 30 }); // 12.95
 */
export function flatCoreLine(
  core: number,
  bevel: { readonly edge: number; readonly bevelLine: number; readonly height: number },
): number {
  return (bevel.height * (core - bevel.edge)) / (bevel.bevelLine - bevel.edge);
}

/** Where the core comes out on both faces at a station, mm from the edge; undefined: it goes up to the spine. */
export interface CoreLines {
  readonly right: number | undefined;
  readonly left: number | undefined;
}

/**
 * Heights of the core line on both faces of the finished blade at a station, mm from the edge and square to it, on the
 * true section: bevel of any form, sharpening bevel, flats.
 *
 * @param x - mm from the heel, within the edge.
 * @param core - Thickness of the core there, mm.
 * @param off - How far the core's middle lies off the centre plane, toward the right-hand face, mm.
 *
 * @example
 * // full flat from 0.4 at the edge to 3.2 at the spine, 28 up: 28·(1.2 − 0.4)/(3.2 − 0.4)
 * coreLinesAt(knife, 0, 1.2).right; // 8
 */
export function coreLinesAt(knife: Knife, x: number, core: number, off = 0): CoreLines {
  const body = knife.body("finished");
  const spine = body.spineDistanceAt(x);
  const right = body.section.at(x, spine);
  const left = body.section.left ?? right;
  return {
    right: heightOf(right, core / 2 + off, spine),
    left: heightOf(left, core / 2 - off, spine),
  };
}

/** Least distance from the edge at which the face is as far as `half` from the centre plane, mm. */
function heightOf(face: HalfSection, half: number, spine: number): number | undefined {
  for (let piece = 0; piece < face.count; piece++) {
    const start = face.start[piece] ?? 0;
    const end = Math.min(face.endOf(piece), spine);
    if (start > spine) break;
    if (face.pieceValue(piece, start) >= half) return start;
    if (face.pieceValue(piece, end) < half) continue;
    return findRoot((v) => face.pieceValue(piece, v) - half, start, end, NEAR) ?? end;
  }
  return undefined;
}

/** How far the core may lie off the centre plane at a station, either way, mm; negative: too far already in the middle. */
export interface CoreBudget {
  /** Before cladding reaches the edge as it is before sharpening: (c − e)/2 on a blade with two like faces. */
  readonly edge: number;
  /** Before the apex itself leaves the core: c/2. */
  readonly apex: number;
}

/**
 * How far off the middle the core may lie at a station.
 *
 * @param x - mm from the heel.
 * @param core - Thickness of the core there, mm.
 *
 * @example
 * coreBudget(knife, 0, 1.2); // { edge: 0.4, apex: 0.6 }
 */
export function coreBudget(knife: Knife, x: number, core: number): CoreBudget {
  const share = knife.spec.blade.bevel.apex ?? 0;
  const edge = knife.laws.edgeThickness.valueAt(x);
  const apex = (share * knife.laws.spine.valueAt(x)) / 2;
  const right = apex + (edge * (1 - share)) / 2;
  const left = -(apex - (edge * (1 + share)) / 2);
  return { edge: core / 2 - Math.max(right, left), apex: core / 2 - Math.abs(apex) };
}

/**
 * How far off the middle the core may lie before its line leaves a band on either face, mm: on a flat bevel
 * `Δ(Tb − e)/(2b)` with Δ the room from the line to the nearer limit. Negative where it lies outside already.
 *
 * @param band - Least and greatest height of the line, mm from the edge.
 *
 * @example
 * // 28·(1.2 − 0.4)/2.8 = 8; a core 0.05 mm off moves the line by 1 mm
 * bandBudget(knife, 0, 1.2, { low: 7, high: 10 }); // 0.05
 */
export function bandBudget(
  knife: Knife,
  x: number,
  core: number,
  band: { readonly low: number; readonly high: number },
): number {
  const body = knife.body("finished");
  const spine = body.spineDistanceAt(x);
  const right = body.section.at(x, spine);
  const faces = [right, body.section.left ?? right];
  invariant(band.low <= band.high, "a band goes from the lower limit to the higher one");
  const room = faces.map((face) => {
    const above = face.valueAt(Math.min(band.high, spine)) - core / 2;
    const below = core / 2 - face.valueAt(Math.max(0, Math.min(band.low, spine)));
    return Math.min(above, below);
  });
  return Math.min(...room);
}

/**
 * Thickness of the core that puts its line at a height on the more distant of the two faces, mm.
 *
 * @example
 * coreForLine(knife, 0, 8); // 1.2
 */
export function coreForLine(knife: Knife, x: number, height: number): number {
  const body = knife.body("finished");
  const spine = body.spineDistanceAt(x);
  const right = body.section.at(x, spine);
  const at = Math.max(0, Math.min(height, spine));
  return 2 * Math.max(right.valueAt(at), (body.section.left ?? right).valueAt(at));
}
