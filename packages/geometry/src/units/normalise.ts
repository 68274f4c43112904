import { spellFractions } from "./fraction.js";

/**
 * Brings the many ways of typing a quantity down to one: plain minus signs, primes, spaces and fractions.
 *
 * @example
 * normaliseQuantity("7½″ +/- ⅛″"); // '7 1/2" ±1/8"'
 */
export function normaliseQuantity(text: string): string {
  const plain = text
    .replace(/[\u2010-\u2015\u2212]/gu, "-")
    .replace(/[\u201C-\u201F\u2033\u02BA\u3003]/gu, '"')
    .replace(/[\u2018-\u201B\u2032\u02B9\u00B4`]/gu, "'")
    .replaceAll("''", '"')
    .replace(/\s+/gu, " ")
    .replaceAll("\u2103", "°C")
    .replaceAll("\u2109", "°F")
    .replace(/\u00BA/gu, "°")
    .replace(/\bdeg(?:ree)?s?\.? ?(celsius|c|fahrenheit|f)\b/giu, (_, scale: string) =>
      scale.toLowerCase().startsWith("c") ? "°C" : "°F",
    )
    .replace(/° ?([CF])\b/giu, "°$1")
    .replace(/\+ ?\/ ?-|\+-/gu, "±")
    .replace(/([±+-]) /gu, "$1")
    .trim();
  return spellFractions(plain);
}
