import type { Reading } from "./reading.js";

/** How a number came to be put down wrong. */
export type SlipCode = "slipped-digit" | "wrong-unit" | "swapped-digits";

/** What a reading would have been, had it been put down right. */
export interface Slip {
  readonly code: SlipCode;
  readonly meant: number;
  /** What happened, for a sentence: `ounces written as grams`. */
  readonly words: string;
  /** How likely it is beside other slips: 1 the likeliest. */
  readonly rank: number;
}

const ONE_PLACE = [0.1, 10];
const TWO_PLACES = [0.01, 100];

/**
 * What a reading may have been meant to be: the point one or two places off, a unit taken for another, two neighbouring
 * digits in each other's place. A mass that was weighed again is none of these.
 *
 * @example
 * slipsOf(heatsReading(21)).map(({ meant }) => meant); // [12]
 */
export function slipsOf(reading: Reading): Slip[] {
  if (reading.confirmed === true) return [];
  const { value, written } = reading;
  const points = (rank: number, factors: readonly number[]): Slip[] =>
    factors.map((times) => ({
      code: "slipped-digit",
      meant: value * times,
      words: "the point slipped",
      rank,
    }));
  const units = written.mixUps.map(
    ({ times, words }): Slip => ({ code: "wrong-unit", meant: value * times, words, rank: 2 }),
  );
  const countable = ({ meant }: Slip): boolean =>
    reading.kind !== "heats" || (Math.abs(meant - Math.round(meant)) < WHOLE && meant <= MOST_HEATS);
  return [...points(1, ONE_PLACE), ...units, ...points(3, TWO_PLACES), ...swapped(reading)].filter(countable);
}

/** Nobody takes more heats over a blade than this. Basis: common practice, no source. */
const MOST_HEATS = 60;

/** Counts carry the last digits of a double. */
const WHOLE = 1e-9;
/** No scale, caliper or clock of a shop shows more digits. */
const DECIMALS = 3;

/** Every way in which two neighbouring digits of what was written may have changed places. */
function swapped({ value, written: { unit } }: Reading): Slip[] {
  const digits = String(Number((value / unit).toFixed(DECIMALS)));
  const places = [...digits].flatMap((digit, index) => (/\d/u.test(digit) ? [index] : []));
  return places.slice(1).flatMap((place, index): Slip[] => {
    const before = places[index] ?? place;
    if (digits[before] === digits[place]) return [];
    const turned = [...digits];
    [turned[before], turned[place]] = [digits[place] ?? "", digits[before] ?? ""];
    const meant = Number(turned.join("")) * unit;
    return [{ code: "swapped-digits", meant, words: "two digits changed places", rank: 4 }];
  });
}
