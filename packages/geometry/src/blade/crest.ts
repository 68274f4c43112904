import type { Law } from "../numeric/law.js";
import { findRoot } from "../numeric/roots.js";
import { HalfSection } from "./half-section.js";
import type { SignList } from "./sign-list.js";
import type { SlabLaw } from "./slab-law.js";
import type { SteelBody } from "./steel-body.js";

/** Planes along the spine between two x (mm): `thickness` is the full thickness left at the spine. */
export interface Swedge {
  readonly from: number;
  readonly to: number;
  readonly tan: number;
  readonly thickness: Law;
}

export interface CrestInput {
  /** Radius of the quarter circle along both edges of the spine, mm; 0: none. */
  readonly easing: number;
  /** x from which the spine is eased: the handle front. */
  readonly from: number;
  readonly swedge?: Swedge;
  readonly slab: SlabLaw;
}

/** No face stands prouder than this many times the flat. */
const CLEAR = 2;

/**
 * What is taken off along the spine: half-thickness over the depth below the station's highest point, the same on both
 * faces. It is an upper bound on the faces down to where its quarter circle ends and its planes are clear of any face; lower
 * down it bounds nothing.
 */
export class CrestLaw {
  readonly input: CrestInput;
  private readonly eased = new HalfSection();
  private readonly planes = new HalfSection();
  private readonly both = new HalfSection();

  constructor(input: CrestInput) {
    this.input = input;
  }

  /** x from which anything is taken off. */
  get start(): number {
    const { easing, from, swedge } = this.input;
    return easing > 0 ? from : (swedge?.from ?? Number.POSITIVE_INFINITY);
  }

  /** The crest at x; undefined where nothing is taken off. */
  at(x: number): HalfSection | undefined {
    const { easing, from, swedge, slab } = this.input;
    const half = slab.thicknessAt(x) / 2;
    const isEased = easing > 0 && x >= from;
    const isSwedged = swedge !== undefined && x >= swedge.from && x <= swedge.to;
    if (!isEased && !isSwedged) return undefined;
    const r = Math.min(easing, half);
    if (isEased) {
      this.eased
        .clear()
        .addArc(0, half - r, r, 0, 1)
        .addLine(r, CLEAR * half, 0);
    }
    if (!isSwedged) return this.eased;
    const left = swedge.thickness.valueAt(x) / 2;
    this.planes.clear().addLine(0, left, swedge.tan);
    if (left < CLEAR * half) this.planes.addLine((CLEAR * half - left) / swedge.tan, CLEAR * half, 0);
    return isEased ? this.both.combine(this.eased, this.planes, "smaller") : this.planes;
  }

  /** Numbers that change their sign along x where the crest changes its form. */
  structureAt(x: number, out: SignList): void {
    const { easing, swedge, slab } = this.input;
    const half = slab.thicknessAt(x) / 2;
    out.push(half - easing);
    if (swedge !== undefined) out.push(half - swedge.thickness.valueAt(x) / 2);
  }

  get breaks(): number[] {
    const { from, swedge } = this.input;
    return [from, ...(swedge === undefined ? [] : [swedge.from, swedge.to, ...swedge.thickness.breaks])];
  }
}

/** Depth below the spine down to which a crest bounds the faces, mm. */
export const crestReach = (crest: HalfSection): number => crest.start[crest.count - 1] as number;

/**
 * y at which, going up the station, the face meets the crest: below it the section holds, above it the crest. The face
 * rises toward the spine and the crest falls, so there is one such place.
 */
export function crestCrossing(body: SteelBody, section: HalfSection, x: number, top: number): number {
  const crest = body.crestAt(x);
  if (crest === undefined) return top;
  const slab = body.slab.thicknessAt(x) / 2;
  const share = body.plungeShareAt(x);
  const gap = (y: number): number => {
    const half = share === 0 ? slab : section.valueAt(body.edgeRun.nearest(x, y));
    return slab - share * (slab - half) - crest.valueAt(top - y);
  };
  if (gap(top) <= 0) return top;
  const reach = crestReach(crest);
  const bottom = Math.max(body.footprint.spansAt(x)[0]?.[0] ?? top - reach, top - reach);
  if (gap(bottom) >= 0) return bottom;
  return findRoot(gap, bottom, top, 1e-13 * Math.max(1, Math.abs(top))) ?? top;
}
