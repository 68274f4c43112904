import { RADIANS_PER_DEGREE } from "./constants.js";
import { formatNumber } from "./number-text.js";

/**
 * An angle for the reader, in degrees.
 *
 * @param radians - Angle in rad.
 * @param resolution - Step to round to, degrees.
 *
 * @example
 * formatAngle(Math.PI / 12); // "15°"
 */
export function formatAngle(radians: number, resolution = 0.1): string {
  return `${formatNumber(radiansToDegrees(radians), resolution)}°`;
}

export const degreesToRadians = (degrees: number): number => degrees * RADIANS_PER_DEGREE;
export const radiansToDegrees = (radians: number): number => radians / RADIANS_PER_DEGREE;
