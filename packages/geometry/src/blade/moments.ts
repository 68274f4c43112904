/**
 * Volume integrals of a body: 1, x, y, x², y², z², xy, z, yz, zx (mm³ to mm⁵), in this order. The last three are 0 for a
 * body that is the same on both faces.
 */
export const MOMENTS = 10;
/** Without the last three. */
export const MOMENTS_OF_LIKE_FACES = 7;
/** Place of ∭ 1 dV in {@link Moments}, mm³; the others likewise, ∭ x dV and so on. */
export const VOLUME = 0;
/** Place of ∭ x dV in {@link Moments}. */
export const X = 1;
/** Place of ∭ y dV in {@link Moments}. */
export const Y = 2;
/** Place of ∭ x² dV in {@link Moments}. */
export const XX = 3;
/** Place of ∭ y² dV in {@link Moments}. */
export const YY = 4;
/** Place of ∭ z² dV in {@link Moments}. */
export const ZZ = 5;
/** Place of ∭ x·y dV in {@link Moments}. */
export const XY = 6;
/** Place of ∭ z dV in {@link Moments}. */
export const Z = 7;
/** Place of ∭ y·z dV in {@link Moments}. */
export const YZ = 8;
/** Place of ∭ z·x dV in {@link Moments}. */
export const ZX = 9;

/** Integrals of one body, with their estimated absolute errors. */
export interface Moments {
  readonly value: Float64Array;
  readonly error: Float64Array;
}

/**
 * Sum of two bodies' integrals, the second times a factor (−1 takes it out); errors add up.
 *
 * @example
 * addMoments(noMoments(), noMoments(), -1).value[VOLUME]; // 0
 */
export function addMoments(a: Moments, b: Moments, factor = 1): Moments {
  const value = new Float64Array(MOMENTS);
  const error = new Float64Array(MOMENTS);
  for (let i = 0; i < MOMENTS; i++) {
    value[i] = (a.value[i] as number) + factor * (b.value[i] as number);
    error[i] = (a.error[i] as number) + (b.error[i] as number);
  }
  return { value, error };
}

/**
 * Integrals over nothing.
 *
 * @example
 * noMoments().value.length; // 10
 */
export const noMoments = (): Moments => ({
  value: new Float64Array(MOMENTS),
  error: new Float64Array(MOMENTS),
});
