import type { SizeSlips } from "@scantling/geometry";
import { MM_PER_INCH } from "@scantling/geometry/units";

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
