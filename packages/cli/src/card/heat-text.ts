import { type FileUnits, formatTemperature } from "@scantling/geometry/units";

/** A temperature this near to a whole degree was written as one: the rest is a double's last digits. */
const WHOLE = 1e-6;
/** Step of a temperature that is turned into °F, °F: no forge and few ovens are read closer. */
const STEP = 5;

const isWhole = (value: number): boolean => Math.abs(value - Math.round(value)) < WHOLE;

/** Whether a source gave it in °F: whole there and not in °C, or a round figure there. */
function isFahrenheit(celsius: number): boolean {
  const fahrenheit = celsius * 1.8 + 32;
  return isWhole(fahrenheit / STEP) || (isWhole(fahrenheit) && !isWhole(celsius));
}

/** One temperature of a heat treatment, or from the least to the most. */
export interface HeatText {
  /** `1600 °F`, `1110 to 1200 °F`. */
  readonly text: string;
  /** Whether it is rounded: what a source gives in °C has no single °F. */
  readonly about: boolean;
}

/**
 * A temperature of a source in the units of the card: °C to the degree; °F as the source gives it, and where it gives °C
 * to 5 °F.
 *
 * @example
 * heatText(870, 870, "in"); // { text: "1600 °F", about: true }
 */
export function heatText(low: number, high: number, units: FileUnits): HeatText {
  const about = units === "in" && !(isFahrenheit(low) && isFahrenheit(high));
  const write = (celsius: number): string => formatTemperature(celsius, units, about ? STEP : 1);
  const shown = write(high);
  const text = low === high ? shown : `${write(low).replace(/ ?°[CF]$/u, "")} to ${shown}`;
  return { text, about };
}

/** The same with the word before it. */
export function heatWords(low: number, high: number, units: FileUnits): string {
  const { text, about } = heatText(low, high, units);
  return about ? `about ${text}` : text;
}
