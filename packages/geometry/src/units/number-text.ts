/** A half that a change of units or the last digits of a double have moved by no more than this, in steps, is still one. */
const STILL_HALF = 1e-6;

/**
 * A count of steps rounded to a whole one, halves away from zero. What is a half as it was written stays one: 0.15 / 0.1 is
 * a hair below 1.5 as a double, and 3.075 mm that went through inches is 3.0749999…
 *
 * @example
 * roundHalves(1.5); // 2
 * roundHalves(-1.5); // -2
 * roundHalves(307.49999999); // 308
 */
export const roundHalves = (count: number): number =>
  // No negative zero.
  Math.sign(count) * Math.floor(Math.abs(count) + 0.5 + STILL_HALF) + 0;

/**
 * A number rounded to a multiple of `resolution`, halves away from zero, and written without trailing zeros, exponent or
 * negative zero.
 *
 * @example
 * formatNumber(190.5, 0.01); // "190.5"
 * formatNumber(1234, 50); // "1250"
 */
export function formatNumber(value: number, resolution: number): string {
  const rounded = roundHalves(value / resolution) * resolution;
  const text = rounded.toFixed(decimalsOf(resolution));
  const trimmed = text.includes(".") ? text.replace(/\.?0+$/u, "") : text;
  return trimmed === "-0" ? "0" : trimmed;
}

/**
 * A number with all its decimals, rounded as {@link formatNumber} does; what is rounded to nothing has no sign.
 *
 * @example
 * formatDecimals(3.075, 2); // "3.08"
 * formatDecimals(7, 1); // "7.0"
 */
export const formatDecimals = (value: number, decimals: number): string =>
  Number(formatNumber(value, 10 ** -decimals)).toFixed(decimals);

/**
 * Digits after the point that a resolution needs: 0.01 → 2, 0.05 → 2, 1 → 0.
 *
 * @example
 * decimalsOf(0.01); // 2
 */
export function decimalsOf(resolution: number): number {
  for (let decimals = 0; decimals < 12; decimals++) {
    const scaled = resolution * 10 ** decimals;
    if (Math.abs(scaled - Math.round(scaled)) < 1e-9 * scaled) return decimals;
  }
  return 12;
}
