import { type Finding, mass } from "@scantling/geometry";
import { formatNumber, GRAMS_PER_OUNCE, GRAMS_PER_POUND } from "@scantling/geometry/units";

const GRAMS_PER_KILOGRAM = 1000;

/** Pairs of units that are taken for one another, and how many times the one is the other. */
const SLIPS = [
  { small: "g", great: "oz", factor: GRAMS_PER_OUNCE },
  { small: "g", great: "lb", factor: GRAMS_PER_POUND },
  { small: "g", great: "kg", factor: GRAMS_PER_KILOGRAM },
] as const;

/** Shares of what is needed between which a mass is that of a piece for this knife, slip or not. */
const LIKELY = { least: 0.6, most: 1.7 } as const;
/** Shares outside which a mass is no slip of the hand or of the loss book. */
const UNLIKELY = { least: 0.2, most: 5 } as const;

const isWithin = (
  ratio: number,
  { least, most }: { readonly least: number; readonly most: number },
): boolean => ratio >= least && ratio <= most;

/**
 * A finding where what the scale shows is so far off what the stage needs that its unit must be another: ounces or pounds
 * written as grams, or the other way round. Undefined where it is not, or where no other unit would make sense.
 *
 * @param scale - As read, g.
 * @param needed - g
 */
export function unitSlip(scale: number, tare: number, needed: number): Finding | undefined {
  if (isWithin((scale - tare) / needed, UNLIKELY)) return undefined;
  for (const { small, great, factor } of SLIPS) {
    for (const [meant, taken, times] of [
      [great, small, factor],
      [small, great, 1 / factor],
    ] as const) {
      if (!isWithin((scale * times - tare) / needed, LIKELY)) continue;
      const number = taken === "g" ? scale : scale / factor;
      return {
        code: "mass-unit-slip",
        severity: "warn",
        path: "",
        text: `{scale} cannot be a piece for this knife, which needs {needed} here. Were {number} ${meant} meant, not ${taken}? That is {as}. Write the unit: --mass {number}${meant}.`,
        values: {
          scale: mass(scale),
          needed: mass(needed),
          number: formatNumber(number, 0.001),
          as: mass(scale * times),
        },
        basis: "what the stage needs; a mass five times off is no loss",
      };
    }
  }
  return undefined;
}
