import { GRAMS_PER_POUND, MM_PER_INCH } from "./constants.js";
import { formatNumber } from "./number-text.js";
import type { FileUnits } from "./quantity.js";

const MM3_PER_CM3 = 1000;
const MM3_PER_IN3 = MM_PER_INCH ** 3;

/**
 * A density for the reader, g/cm³ or lb/in³.
 *
 * @param gramsPerMm3 - Density in g/mm³.
 * @param resolution - Step to round to, in the unit shown: 0.001 g/cm³ and 0.0001 lb/in³ by default.
 *
 * @example
 * formatDensity(0.00785, "mm"); // "7.85 g/cm³"
 * formatDensity(0.00785, "in"); // "0.2836 lb/in³"
 */
export function formatDensity(gramsPerMm3: number, units: FileUnits, resolution?: number): string {
  if (units === "mm") return `${formatNumber(gramsPerMm3 * MM3_PER_CM3, resolution ?? 0.001)} g/cm³`;
  return `${formatNumber((gramsPerMm3 * MM3_PER_IN3) / GRAMS_PER_POUND, resolution ?? 0.0001)} lb/in³`;
}

/**
 * A volume for the reader, cm³ or in³.
 *
 * @param mm3 - Volume in mm³.
 *
 * @example
 * formatVolume(25333.3, "mm"); // "25.33 cm³"
 */
export function formatVolume(mm3: number, units: FileUnits, resolution?: number): string {
  if (units === "mm") return `${formatNumber(mm3 / MM3_PER_CM3, resolution ?? 0.01)} cm³`;
  return `${formatNumber(mm3 / MM3_PER_IN3, resolution ?? 0.001)} in³`;
}

/**
 * An area for the reader, mm² or in².
 *
 * @param mm2 - Area in mm².
 *
 * @example
 * formatArea(645.16, "in"); // "1 in²"
 */
export function formatArea(mm2: number, units: FileUnits, resolution?: number): string {
  if (units === "mm") return `${formatNumber(mm2, resolution ?? 0.1)} mm²`;
  return `${formatNumber(mm2 / MM_PER_INCH ** 2, resolution ?? 0.001)} in²`;
}

/**
 * A share for the reader, in per cent.
 *
 * @example
 * formatShare(0.6); // "60 %"
 */
export function formatShare(share: number, resolution = 0.1): string {
  return `${formatNumber(share * 100, resolution)} %`;
}
