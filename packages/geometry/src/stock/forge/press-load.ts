import { GeometryError } from "../../errors/errors.js";
import type { DieFace } from "../shop.js";

/** Where the load comes from, for reports and findings. */
export const LOAD_BASIS = "load and hot strength of carbon steel, from memory, unconfirmed";

/** Where die and piece touch, mm. */
export interface DieContact {
  /** Along the bar. */
  readonly length: number;
  /** Across the bar. */
  readonly width: number;
  /** Height of the piece at the end of the squeeze, where the load is greatest. */
  readonly height: number;
}

/** Low and high end of an estimate. */
export interface Estimate {
  readonly low: number;
  readonly high: number;
}

/**
 * Flow stress of steel with 0.6 to 1 % carbon, MPa at °C: low ends as for a slow press, high ends as for a quick one
 * (about 10/s). All from memory, unconfirmed.
 */
export const FLOW_STRESS: readonly (Estimate & { readonly celsius: number })[] = [
  { celsius: 850, low: 120, high: 200 },
  { celsius: 1000, low: 60, high: 150 },
  { celsius: 1100, low: 60, high: 110 },
  { celsius: 1200, low: 50, high: 80 },
];

/** The temperatures that the flow stress is estimated for, °C. */
export const FLOW_STRESS_RANGE = { lowest: 850, highest: 1200 } as const;

/**
 * Flow stress of hot carbon steel, straight between the points of {@link FLOW_STRESS}. From memory, unconfirmed.
 *
 * @param celsius - 850 to 1200 °C.
 * @returns MPa
 * @throws {GeometryError} `temperature-out-of-range` outside 850 to 1200 °C.
 *
 * @example
 * flowStress(1050); // { low: 60, high: 130 }
 */
export function flowStress(celsius: number): Estimate {
  const after = FLOW_STRESS.findIndex((point) => celsius <= point.celsius);
  const b = FLOW_STRESS[after];
  const a = FLOW_STRESS[Math.max(0, after - 1)];
  if (a === undefined || b === undefined || celsius < a.celsius)
    throw new GeometryError(
      "temperature-out-of-range",
      `hot strength is estimated from 850 to 1200 °C, not at ${celsius} °C`,
    );
  const part = a === b ? 0 : (celsius - a.celsius) / (b.celsius - a.celsius);
  return { low: a.low + part * (b.low - a.low), high: a.high + part * (b.high - a.high) };
}

/**
 * Where a die touches a flat piece that reaches past it along the bar.
 *
 * @param piece - Width under the die and height at the end of the squeeze, mm.
 *
 * @example
 * dieContact({ length: 50, width: 80 }, { width: 40, height: 10 }); // { length: 50, width: 40, height: 10 }
 */
export function dieContact(
  die: DieFace,
  piece: { readonly width: number; readonly height: number },
): DieContact {
  return { length: die.length, width: Math.min(die.width, piece.width), height: piece.height };
}

/** Plane strain makes steel between dies this much harder to push than a tensile test says: 2/√3. */
const PLANE_STRAIN = 1.15;

/**
 * Load of a squeeze between flat dies, 1.15 σ A (1 + b/(4h)): `A` the contact, `b` its smaller side, `h` the height at
 * the end. An estimate; from memory, unconfirmed.
 *
 * @param stress - Flow stress, MPa.
 * @returns N
 *
 * @example
 * pressLoad({ length: 40, width: 40, height: 10 }, 100); // 368 000
 */
export function pressLoad({ length, width, height }: DieContact, stress: number): number {
  return PLANE_STRAIN * stress * length * width * (1 + Math.min(length, width) / (4 * height));
}

/**
 * The longest bite that a press can move: undoes {@link pressLoad} for the contact along the bar.
 *
 * @param force - N
 * @param piece - DieContact across the bar and height at the end of the squeeze, mm.
 * @param stress - Flow stress, MPa.
 * @returns mm
 *
 * @example
 * longestBite(368_000, { width: 40, height: 10 }, 100); // 40
 */
export function longestBite(
  force: number,
  { width, height }: { readonly width: number; readonly height: number },
  stress: number,
): number {
  const plain = force / (PLANE_STRAIN * stress * width);
  // While the bite is the smaller side, L + L²/(4h) = plain; after that L(1 + w/(4h)) = plain.
  const short = (2 * plain) / (1 + Math.sqrt(1 + plain / height));
  return short <= width ? short : plain / (1 + width / (4 * height));
}
