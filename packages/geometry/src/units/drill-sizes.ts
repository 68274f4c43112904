import { MM_PER_INCH } from "./constants.js";
import { formatMixed } from "./fraction.js";

/** The sets that drills are sold in. */
export const DRILL_SETS = ["number", "letter", "fraction", "metric"] as const;
/** Name of a set of drills. */
export type DrillSetName = (typeof DRILL_SETS)[number];

/** A drill of a standard set. */
export interface DrillSize {
  readonly set: DrillSetName;
  /** `#30`, `F`, `1/8 in`, `4.1 mm`. */
  readonly name: string;
  /** mm, exact. */
  readonly diameter: number;
}

/** Number drills 1 to 60, thousandths of an inch. Source: ASME B94.11M, as six public tables agree. */
const NUMBER_DRILLS = [
  228, 221, 213, 209, 205.5, 204, 201, 199, 196, 193.5, 191, 189, 185, 182, 180, 177, 173, 169.5, 166, 161,
  159, 157, 154, 152, 149.5, 147, 144, 140.5, 136, 128.5, 120, 116, 113, 111, 110, 106.5, 104, 101.5, 99.5,
  98, 96, 93.5, 89, 86, 82, 81, 78.5, 76, 73, 70, 67, 63.5, 59.5, 55, 52, 46.5, 43, 42, 41, 40,
] as const;

/** Letter drills A to Z, thousandths of an inch. Source: ASME B94.11M, as six public tables agree. */
const LETTER_DRILLS = [
  234, 238, 242, 246, 250, 257, 261, 266, 272, 277, 281, 290, 295, 302, 316, 323, 332, 339, 348, 358, 368,
  377, 386, 397, 404, 413,
] as const;

/** Fractional drills go by 1/64 in up to this many of them: 1/2 in, the most that a small chuck takes. */
const SIXTY_FOURTHS = 32;

/** Metric drills go by tenths of a mm from 1 to 10 mm (ISO 235; sizes from memory, unconfirmed). */
const TENTHS = { from: 10, to: 100 } as const;

const thousandths = (value: number): number => (value * MM_PER_INCH) / 1000;

/**
 * The drills of some sets, smallest first; sizes of inch sets are exact.
 *
 * @param sets - Left out: all of them.
 * @returns mm. Sources: ASME B94.11M (numbers, letters), n/64 in exactly (fractions), ISO 235 from memory (metric).
 *
 * @example
 * drillSizes(["number"]).find(({ name }) => name === "#30")?.diameter; // 3.2639
 * drillSizes(["fraction"]).length; // 32
 */
export function drillSizes(sets: readonly DrillSetName[] = DRILL_SETS): DrillSize[] {
  return DRILL_SETS.filter((set) => sets.includes(set))
    .flatMap(drillsOf)
    .sort((a, b) => a.diameter - b.diameter);
}

function drillsOf(set: DrillSetName): DrillSize[] {
  switch (set) {
    case "number":
      return NUMBER_DRILLS.map((size, i) => ({ set, name: `#${i + 1}`, diameter: thousandths(size) }));
    case "letter":
      return LETTER_DRILLS.map((size, i) => ({
        set,
        name: String.fromCharCode(65 + i),
        diameter: thousandths(size),
      }));
    case "fraction":
      return Array.from({ length: SIXTY_FOURTHS }, (_, i) => ({
        set,
        name: `${formatMixed(i + 1, 64)} in`,
        diameter: ((i + 1) * MM_PER_INCH) / 64,
      }));
    case "metric":
      return Array.from({ length: TENTHS.to - TENTHS.from + 1 }, (_, i) => ({
        set,
        name: `${(TENTHS.from + i) / 10} mm`,
        diameter: (TENTHS.from + i) / 10,
      }));
  }
}

/**
 * The drill of a number or letter set by its name: `#30`, `No 30`, `F`; undefined where there is none of that name.
 *
 * @example
 * findDrill("No. 30")?.name; // "#30"
 * findDrill("#99"); // undefined
 */
export function findDrill(text: string): DrillSize | undefined {
  const word = text.trim();
  const number = /^(?:#|no\.?|number)\s*(\d{1,2})$/iu.exec(word)?.[1];
  const name = number === undefined ? word.toUpperCase() : `#${Number(number)}`;
  return [...drillsOf("number"), ...drillsOf("letter")].find((drill) => drill.name === name);
}
