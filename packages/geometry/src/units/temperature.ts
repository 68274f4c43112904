import { FAHRENHEIT_AT_ZERO_CELSIUS, FAHRENHEIT_PER_CELSIUS } from "./constants.js";
import { formatNumber } from "./number-text.js";
import type { FileUnits } from "./quantity.js";

/**
 * A temperature for the reader, °C or °F.
 *
 * @param celsius - Temperature in °C; not a difference.
 * @param resolution - Step to round to, in the unit shown.
 *
 * @example
 * formatTemperature(815, "in"); // "1499 °F"
 */
export function formatTemperature(celsius: number, units: FileUnits, resolution = 1): string {
  if (units === "mm") return `${formatNumber(celsius, resolution)} °C`;
  return `${formatNumber(celsius * FAHRENHEIT_PER_CELSIUS + FAHRENHEIT_AT_ZERO_CELSIUS, resolution)} °F`;
}

/**
 * How much warmer or colder, for the reader: °C or °F.
 *
 * @param kelvin - A difference of two temperatures, K.
 * @param resolution - Step to round to, in the unit shown.
 *
 * @example
 * formatTemperatureDifference(28, "in"); // "50 °F"
 */
export function formatTemperatureDifference(kelvin: number, units: FileUnits, resolution = 1): string {
  if (units === "mm") return `${formatNumber(kelvin, resolution)} °C`;
  return `${formatNumber(kelvin * FAHRENHEIT_PER_CELSIUS, resolution)} °F`;
}
