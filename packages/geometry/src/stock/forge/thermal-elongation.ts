import { GeometryError } from "../../errors/errors.js";

/** The temperatures that EN 1993-1-2:2005 gives an elongation for, °C. */
export const ELONGATION_RANGE = { lowest: 20, highest: 1200 } as const;

/** Where the elongation comes from, for reports and findings. */
export const ELONGATION_BASIS =
  "EN 1993-1-2:2005, 3.4.1.1, carbon steel; tool steels may differ by 0.2 % of the size, from memory, unconfirmed";

/**
 * Relative elongation of carbon steel from 20 °C: how much longer, as a share, a piece is when hot.
 *
 * The curve is that of the standard, its small step down at 750 °C included (8.4·10⁻⁶, so it does not rise
 * everywhere), and level from 750 to 860 °C, where the steel changes over.
 *
 * @param celsius - 20 to 1200 °C.
 * @returns Share of the size at 20 °C; exactly 0 at 20 °C. Source: EN 1993-1-2:2005, 3.4.1.1.
 * @throws {GeometryError} `temperature-out-of-range` outside 20 to 1200 °C.
 *
 * @example
 * thermalElongation(950); // 0.0128
 */
export function thermalElongation(celsius: number): number {
  if (!(celsius >= ELONGATION_RANGE.lowest && celsius <= ELONGATION_RANGE.highest))
    throw new GeometryError(
      "temperature-out-of-range",
      `the elongation of steel is known from 20 to 1200 °C, not at ${celsius} °C`,
    );
  // 1.2e-5 θ + 0.4e-8 θ² − 2.416e-4 with the root at 20 °C taken out, so that nothing is left there but 0.
  if (celsius < 750) return (celsius - 20) * (1.2e-5 + 0.4e-8 * (celsius + 20));
  if (celsius <= 860) return 1.1e-2;
  return 2e-5 * celsius - 6.2e-3;
}

/**
 * Size of a piece when hot.
 *
 * @param cold - Size at 20 °C, mm.
 * @param celsius - 20 to 1200 °C.
 * @returns mm
 * @throws {GeometryError} `temperature-out-of-range`, as {@link thermalElongation}.
 *
 * @example
 * hotSize(6, 950); // 6.0768
 */
export function hotSize(cold: number, celsius: number): number {
  return cold * (1 + thermalElongation(celsius));
}

/**
 * Size at 20 °C of a piece measured hot; undoes {@link hotSize}.
 *
 * @param hot - Size at the temperature, mm.
 * @param celsius - 20 to 1200 °C.
 * @returns mm
 * @throws {GeometryError} `temperature-out-of-range`, as {@link thermalElongation}.
 *
 * @example
 * coldSize(6.0768, 950); // 6
 */
export function coldSize(hot: number, celsius: number): number {
  return hot / (1 + thermalElongation(celsius));
}

/**
 * Density of hot steel: the mass stays, every side grows.
 *
 * @param density - Density at 20 °C, any unit; the result is in the same.
 * @param celsius - 20 to 1200 °C.
 * @throws {GeometryError} `temperature-out-of-range`, as {@link thermalElongation}.
 *
 * @example
 * hotDensity(7.85, 950); // 7.556
 */
export function hotDensity(density: number, celsius: number): number {
  return density / (1 + thermalElongation(celsius)) ** 3;
}
