import { count, type Finding } from "../errors/issue.js";
import type { HardnessBracket } from "../materials/hardness/file-hardness.js";
import { asQuenched } from "../materials/heat-treatment/as-quenched.js";

/** What a tester is good to, HRC either way. Basis: common practice, no source. */
export const TESTER_SCATTER = 1;

/** Beyond these no blade is read, HRC: the C scale begins at the one, and no blade steel comes out of the quench above the other. */
const READABLE = { least: 20, most: 68 } as const;

/** Readings that two ways of adding make of one number are one. */
const TIE = 1e-9;

/** A hardness that was measured, held against the one that was asked for. */
export interface HardnessHeld {
  /** `either`: files leave it open. */
  readonly is: "as-asked" | "under" | "over" | "either";
  /** What it is off by at the least, HRC; 0 on a limit that is not allowed itself. */
  readonly by: number;
}

/** Limits of a hardness, HRC; one that there is not is infinite. */
export interface HardnessLimits {
  readonly low: number;
  readonly high: number;
  /** Whether a value on a limit meets it. */
  readonly inclusive: boolean;
}

/**
 * Holds what was measured against what was asked.
 *
 * @param read - A tester's reading as both ends, or what files leave.
 *
 * @example
 * holdHardness({ low: 51, high: 51 }, { low: 57, high: 59, inclusive: true }); // { is: "under", by: 6 }
 */
export function holdHardness(read: HardnessBracket, asked: HardnessLimits): HardnessHeld {
  const meets = (value: number): boolean =>
    asked.inclusive
      ? value >= asked.low - TIE && value <= asked.high + TIE
      : value > asked.low + TIE && value < asked.high - TIE;
  if (meets(read.low) && meets(read.high)) return { is: "as-asked", by: 0 };
  const under = asked.low - read.high;
  const over = read.low - asked.high;
  const isOut = (by: number): boolean => (asked.inclusive ? by > TIE : by >= -TIE);
  if (isOut(under)) return { is: "under", by: Math.max(0, under) };
  if (isOut(over)) return { is: "over", by: Math.max(0, over) };
  return { is: "either", by: 0 };
}

/**
 * What cannot well be read on a blade of a steel: beyond what blades are, or harder than the steel comes out of the quench, which
 * a temper only softens.
 *
 * @param least - The softest that the reading allows, HRC.
 * @param most - The hardest.
 *
 * @example
 * questionHardness({ low: 66, high: 66 }, "5160").map(({ code }) => code); // ["hardness-questioned"]
 */
export function questionHardness({ low: least, high: most }: HardnessBracket, steel: string): Finding[] {
  const isBeyond = least > READABLE.most || most < READABLE.least;
  const quenched = asQuenched(steel);
  const is = count(least > READABLE.most ? least : most);
  if (isBeyond) {
    return [
      {
        code: "hardness-questioned",
        severity: "warn",
        path: "",
        text: "{is} HRC is read on no blade: {least} to {most} is what there is. Measure again, and mind the scale of the tester.",
        values: { is, least: count(READABLE.least), most: count(READABLE.most) },
        basis: "the C scale begins at 20 HRC (ISO 6508-1); common practice, no source",
      },
    ];
  }
  if (quenched === undefined || least <= quenched.hardness + TESTER_SCATTER) return [];
  return [
    {
      code: "hardness-questioned",
      severity: "warn",
      path: "",
      text: "{is} HRC is harder than {steel} comes out of the quench, {quenched} HRC, and a temper only softens it. Measure again on a ground spot that lies flat, and mind the steel.",
      values: { is: count(least), steel, quenched: count(quenched.hardness) },
      basis: `${quenched.source}; a tester is good to ± ${TESTER_SCATTER} HRC: common practice, no source`,
    },
  ];
}
