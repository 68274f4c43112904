import {
  type Finding,
  findingLimit,
  type GivenLimits,
  length,
  mass,
  PIECE_WORDS,
  type ReadingAnswer,
} from "@scantling/geometry";
import {
  type FileUnits,
  formatNumber,
  GRAMS_PER_OUNCE,
  GRAMS_PER_POUND,
  MM_PER_INCH,
} from "@scantling/geometry/units";
import type { GateReading } from "./gate-input.js";

const GRAMS_PER_KILOGRAM = 1000;

/** Pairs of units that are taken for one another, and how many times the one is the other. */
const SLIPS = [
  { small: "g", great: "oz", factor: GRAMS_PER_OUNCE },
  { small: "g", great: "lb", factor: GRAMS_PER_POUND },
  { small: "g", great: "kg", factor: GRAMS_PER_KILOGRAM },
] as const;

/** Shares of what is needed between which a mass is that of a piece for this knife, slip or not. */
const LIKELY = { least: 0.6, most: 1.7 } as const;
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
export function unitSlip(
  scale: number,
  tare: number,
  needed: number,
  given: GivenLimits = {},
): Finding | undefined {
  // Outside these a mass is no slip of the hand or of the loss book.
  const slip = findingLimit("massSlip", given);
  if (isWithin((scale - tare) / needed, { least: 1 / slip.value, most: slip.value })) return undefined;
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
        basis: slip.basis,
      };
    }
  }
  return undefined;
}

/** Thousandths of an inch in one. */
const THOU = 1000;

/** How a thickness is put down wrong: the point, or the unit. `times` makes what was meant of what was read. */
interface ReadingSlip {
  readonly times: number;
  /** The unit that was meant and the one that was taken; left out where the point is wrong. */
  readonly units?: readonly [meant: "mm" | "in" | "thou", taken: FileUnits];
}

const READING_SLIPS: readonly ReadingSlip[] = [
  { times: 0.1 },
  { times: 10 },
  { times: 0.01 },
  { times: 100 },
  { times: 1 / MM_PER_INCH, units: ["mm", "in"] },
  { times: MM_PER_INCH, units: ["in", "mm"] },
  { times: 1 / THOU, units: ["thou", "in"] },
  { times: MM_PER_INCH / THOU, units: ["thou", "mm"] },
];

/** As many millimetres as one of the unit. */
const MM_IN: Readonly<Record<FileUnits, number>> = { mm: 1, in: MM_PER_INCH };

/**
 * What the finding of a questioned reading becomes where one slip would explain it: the one that comes nearest to what is
 * meant there. Undefined where none would.
 *
 * @param given - As it was written.
 * @param taken - The unit of a bare number.
 */
export function readingSlip(
  { x, thickness, target, stage }: ReadingAnswer,
  given: GateReading,
  taken: FileUnits,
): Finding | undefined {
  const off = ({ times }: ReadingSlip): number => Math.abs(Math.log((thickness * times) / target));
  const [best] = READING_SLIPS.filter(
    ({ times, units }) =>
      // A unit that stands there is the one that was meant.
      (units === undefined || (given.bare && units[1] === taken)) &&
      isWithin((thickness * times) / target, LIKELY),
  ).sort((a, b) => off(a) - off(b));
  if (best === undefined) return undefined;
  const number = formatNumber(thickness / MM_IN[taken], 0.001);
  const [meant] = best.units ?? [];
  const ask =
    meant === undefined
      ? "Was {as} meant, the point put wrong?"
      : `Were {number} ${meant} meant, not ${taken}? That is {as}. Write the unit: {option} {at}={number}${meant}.`;
  return {
    code: "reading-slip",
    severity: "warn",
    path: "",
    text: `{is} thick {place} ahead of the heel cannot be: the {stage} is meant to have {target} there. ${ask} The reading is not used.`,
    values: {
      is: length(thickness),
      place: length(x),
      stage: PIECE_WORDS[stage],
      target: length(target),
      as: length(thickness * best.times),
      number,
      at: given.place,
      option: given.option,
    },
    basis: "what the stage is meant to have there; twice or half of it is a slip",
  };
}
