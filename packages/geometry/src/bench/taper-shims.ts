import type { Knife } from "../blade/knife.js";

/** How far each face of a tapered tang leans from the centre plane, and what its ends measure. mm, rad. */
export interface TangTaper {
  /** Thickness at the handle front and at the butt. */
  readonly front: number;
  readonly butt: number;
  readonly length: number;
  /** Of each face from the centre plane; below 0 where the tang thickens toward the butt. */
  readonly lean: number;
  /** Whether the thickness falls evenly, so that each face can be ground in one setting. */
  readonly even: boolean;
}

/** Shims under a tang that lies on a plate which ends at its thickest place, usually the handle front. mm, 0 or more. */
export interface TangShim {
  /** Behind the handle front. */
  readonly at: number;
  /** Brings the centre plane level: for drilling, and for grinding the first face of a parallel tang. */
  readonly oneFace: number;
  /** For grinding the second face, the first and tapered one below; brings the upper of two tapered faces level. */
  readonly twoFace: number;
}

/**
 * Lean of each face of a tang that tapers evenly: atan((front − butt)/(2·length)).
 *
 * @param front - Thickness at the handle front, mm.
 * @param butt - At the butt, mm.
 * @param length - mm, more than 0.
 * @returns rad
 *
 * @example
 * taperLean(4.6, 2.4, 128); // 0.0086, half a degree
 */
export function taperLean(front: number, butt: number, length: number): number {
  return Math.atan((front - butt) / (2 * length));
}

/**
 * The shims at one place of a tang.
 *
 * @param thickest - Thickness where the tang rests on the plate, its thickest place, mm.
 * @param thickness - At the shim, mm.
 * @param at - Behind the handle front, mm.
 *
 * @example
 * taperShim(4.6, 3.5, 64); // { at: 64, oneFace: 0.55, twoFace: 1.1 }
 */
export function taperShim(thickest: number, thickness: number, at: number): TangShim {
  const gone = thickest - thickness;
  return { at, oneFace: gone / 2, twoFace: gone };
}

/**
 * The taper of a finished knife's tang; undefined where it is parallel.
 *
 * @example
 * tangTaper(makeKnife({ ...spec, tang: { ...spec.tang, buttThickness: 2 } }))?.lean; // 0.0057
 * tangTaper(knife); // undefined
 */
export function tangTaper(knife: Knife): TangTaper | undefined {
  const { outline, laws } = knife;
  const { tang } = laws;
  if (tang === undefined || tang.breaks.length === 0) return undefined;
  const length = outline.handleFront - outline.butt;
  const front = tang.valueAt(0);
  const butt = tang.valueAt(length);
  const chord = (at: number): number => front + ((butt - front) * at) / length;
  const even = tang.isStraight && tang.points.every(({ at, is }) => Math.abs(is - chord(at)) < 1e-9);
  return { front, butt, length, lean: taperLean(front, butt, length), even };
}

/**
 * Shims under a knife's tang at distances behind the handle front, by its own law of thickness. Differences of thickness
 * only, measured from its thickest place: they hold for the finished tang and for one with an even allowance on it.
 *
 * @param at - mm behind the handle front.
 *
 * @example
 * const tapered = makeKnife({ ...spec, tang: { ...spec.tang, buttThickness: 2 } });
 * tangShims(tapered, [105]); // [{ at: 105, oneFace: 0.6, twoFace: 1.2 }]
 */
export function tangShims(knife: Knife, at: readonly number[]): TangShim[] {
  const { slab } = knife.body("finished");
  const { handleFront } = knife.outline;
  const thickest = thickestOfTang(knife);
  return at.map((distance) => taperShim(thickest, slab.tangThicknessAt(handleFront - distance), distance));
}

/**
 * Thickness of the finished tang where it is thickest, and rests on a plate, mm.
 *
 * @example
 * thickestOfTang(knife); // 3.2, parallel
 */
export function thickestOfTang(knife: Knife): number {
  const { slab } = knife.body("finished");
  const { handleFront, butt } = knife.outline;
  // A law never leaves the range of its stations.
  const places = [handleFront, butt, ...slab.breaks.filter((x) => x > butt && x < handleFront)];
  return Math.max(...places.map((x) => slab.tangThicknessAt(x)));
}
