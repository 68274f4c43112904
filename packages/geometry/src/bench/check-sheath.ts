import type { Knife } from "../blade/knife.js";
import { type Issue, length } from "../errors/issue.js";
import { sheathMouth, thickestAhead } from "./sheath-blade.js";
import { type SheathSizes, withDefaultSheath } from "./sheath-defaults.js";

/**
 * What is wrong with the sizes of a knife's sheath: sizes that are nothing, and a welt that leaves no seam beside the blade.
 *
 * @param given - mm; what is left out is as usual.
 * @param own - Those of them that were asked for this knife alone: a seam that fails is put down to one of these first.
 *
 * @example
 * checkSheath(knife, { welt: 5 }).map(({ code }) => code); // ["sheath-no-seam"]
 */
export function checkSheath(
  knife: Knife,
  given: Partial<SheathSizes> = {},
  own: Partial<SheathSizes> = given,
): Issue[] {
  const sizes = withDefaultSheath(given);
  const empty = Object.entries(sizes)
    .filter(([, size]) => !(size > 0))
    .map(
      ([name, size]): Issue => ({
        code: "not-positive",
        path: `sheath.${name}`,
        text: "{size} has to be more than 0.",
        values: { size: length(size) },
      }),
    );
  if (empty.length > 0) return empty;
  const { welt, stitchInset } = sizes;
  const thickness = thickestAhead(knife, sheathMouth(knife));
  if (welt - stitchInset > thickness / 2) return [];
  return [
    {
      code: "sheath-no-seam",
      path: `sheath.${seamSize(own) ?? seamSize(given) ?? "welt"}`,
      text: "A welt of {welt} with stitches {inset} in leaves {seam} beside a blade {thickness} thick: the seam needs more than {least}. Make the welt wider, or set the stitches less far in.",
      values: {
        welt: length(welt),
        inset: length(stitchInset),
        seam: length(welt - stitchInset),
        thickness: length(thickness),
        least: length(thickness / 2),
      },
    },
  ];
}

/** Which of the two sizes that make the seam is given, the welt first. */
const seamSize = (sizes: Partial<SheathSizes>): "welt" | "stitchInset" | undefined =>
  (["welt", "stitchInset"] as const).find((name) => sizes[name] !== undefined);
