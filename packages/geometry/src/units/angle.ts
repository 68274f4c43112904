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

/**
 * Radians of an angle in degrees.
 *
 * @example
 * degreesToRadians(180); // 3.14159
 */
export const degreesToRadians = (degrees: number): number => degrees * RADIANS_PER_DEGREE;
/**
 * Degrees of an angle in rad.
 *
 * @example
 * radiansToDegrees(Math.PI); // 180
 */
export const radiansToDegrees = (radians: number): number => radians / RADIANS_PER_DEGREE;
