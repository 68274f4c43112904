import type { SizeSlip, SizeSlips } from "@scantling/geometry";
import { GRAMS_PER_OUNCE, GRAMS_PER_POUND, MM_PER_INCH } from "@scantling/geometry/units";

const MM_PER_CM = 10;

/** How a size is put down wrong: the point, another unit, both sides' angle for one side's. */
export const SIZE_SLIPS: SizeSlips = {
  length: [
    { times: MM_PER_INCH, words: "inches, not mm" },
    { times: 1 / MM_PER_INCH, words: "mm, not inches" },
    { times: MM_PER_CM / MM_PER_INCH, words: "cm, not inches" },
    { times: MM_PER_INCH / MM_PER_CM, words: "inches, not cm" },
    { times: MM_PER_CM, words: "cm, not mm, or the point put wrong" },
    { times: 1 / MM_PER_CM, words: "mm, not cm, or the point put wrong" },
  ],
  angle: [{ times: 1 / 2, words: "both sides together, to be written { included: … }" }],
};

const GRAMS_PER_KG = 1000;

/** A mass that is asked for, the other way round too; pounds and kilograms are too near each other to be told apart. */
export const MASS_SLIPS: readonly SizeSlip[] = (
  [
    ["g", "kg", GRAMS_PER_KG],
    ["g", "oz", GRAMS_PER_OUNCE],
    ["g", "lb", GRAMS_PER_POUND],
    ["oz", "lb", GRAMS_PER_POUND / GRAMS_PER_OUNCE],
    ["oz", "kg", GRAMS_PER_KG / GRAMS_PER_OUNCE],
  ] as const
).flatMap(([small, large, times]) => [
  { times: 1 / times, words: `${small}, not ${large}` },
  { times, words: `${large}, not ${small}` },
]);
