import { invariant } from "@scantling/geometry";

/** Finest step written to a drawing: 10⁻⁵ mm, far below what a printer or a caliper can tell. */
export const DECIMALS = 5;

/**
 * A coordinate in mm as text: at most five decimals, no trailing zeros, no exponent, no minus zero.
 *
 * @example
 * formatCoordinate(12.340004); // "12.34"
 * formatCoordinate(-0.000001); // "0"
 */
export function formatCoordinate(value: number): string {
  invariant(
    Number.isFinite(value) && Math.abs(value) < 1e9,
    `a drawing's coordinate is finite, got ${value}`,
  );
  const text = value.toFixed(DECIMALS).replace(/\.?0+$/, "");
  return text === "-0" ? "0" : text;
}
