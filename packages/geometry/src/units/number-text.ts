/**
 * A number rounded to a multiple of `resolution` and written without trailing zeros, exponent or negative zero.
 *
 * @example
 * formatNumber(190.5, 0.01); // "190.5"
 * formatNumber(1234, 50); // "1250"
 */
export function formatNumber(value: number, resolution: number): string {
  const rounded = Math.round(value / resolution) * resolution;
  const text = rounded.toFixed(decimalsOf(resolution));
  const trimmed = text.includes(".") ? text.replace(/\.?0+$/u, "") : text;
  return trimmed === "-0" ? "0" : trimmed;
}

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
