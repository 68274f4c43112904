import { type Finding, length } from "../errors/issue.js";
import type { FindingLimitName, FindingLimits } from "../limits/finding-limits.js";
import type { SheathSizes } from "./sheath-defaults.js";

/** What each size is called at the beginning of a sentence, and the limit above which it is hardly that of a sheath. */
const MOST: Readonly<
  Record<keyof SheathSizes, { readonly limit: FindingLimitName; readonly words: string }>
> = {
  leather: { limit: "sheathLeather", words: "Leather {size} thick" },
  welt: { limit: "sheathWelt", words: "A welt {size} wide" },
  trim: { limit: "sheathTrim", words: "{size} left on to be sanded off" },
  stitchInset: { limit: "sheathInset", words: "A seam {size} in from the edge" },
  stitchPitch: { limit: "sheathPitch", words: "{size} from stitch to stitch" },
};

/**
 * Sizes of a sheath that can be drawn but that no sheath has: a unit or a point is wrong.
 *
 * @param given - Those that a file gives, mm; the usual ones are usual.
 *
 * @example
 * sheathFindings({ leather: 9 }, findingLimits()).map(({ path }) => path); // ["sheath.leather"]
 */
export function sheathFindings(given: Partial<SheathSizes>, limits: FindingLimits): Finding[] {
  return (Object.keys(MOST) as (keyof SheathSizes)[]).flatMap((name): Finding[] => {
    const { limit, words } = MOST[name];
    const size = given[name] ?? 0;
    const { value, basis } = limits[limit];
    if (size <= value + 1e-9) return [];
    return [
      {
        code: "sheath-size-unusual",
        severity: "warn",
        path: `sheath.${name}`,
        text: `${words} is more than a sheath usually has, {most} at the most. Is the unit right?`,
        values: { size: length(size), most: length(value) },
        basis,
      },
    ];
  });
}
