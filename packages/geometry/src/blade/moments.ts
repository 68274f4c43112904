/**
 * Volume integrals of a body: 1, x, y, x², y², z², xy, z, yz, zx (mm³ to mm⁵), in this order. The last three are 0 for a
 * body that is the same on both faces.
 */
export const MOMENTS = 10;
/** Without the last three. */
export const MOMENTS_OF_LIKE_FACES = 7;
export const VOLUME = 0;
export const X = 1;
export const Y = 2;
export const XX = 3;
export const YY = 4;
export const ZZ = 5;
export const XY = 6;
export const Z = 7;
export const YZ = 8;
export const ZX = 9;

/** Integrals of one body, with their estimated absolute errors. */
export interface Moments {
  readonly value: Float64Array;
  readonly error: Float64Array;
}

export function addMoments(a: Moments, b: Moments, factor = 1): Moments {
  const value = new Float64Array(MOMENTS);
  const error = new Float64Array(MOMENTS);
  for (let i = 0; i < MOMENTS; i++) {
    value[i] = (a.value[i] as number) + factor * (b.value[i] as number);
    error[i] = (a.error[i] as number) + (b.error[i] as number);
  }
  return { value, error };
}

export const noMoments = (): Moments => ({
  value: new Float64Array(MOMENTS),
  error: new Float64Array(MOMENTS),
});
