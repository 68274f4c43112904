import { angle, count, type Issue } from "../errors/issue.js";
import type { BenchTools } from "./bench-tools.js";
import { positiveIssues } from "./number-issues.js";

/** Wedges that a search tries in every way: three to this power at the most. */
export const MOST_WEDGES = 10;

/**
 * Rule by rule what has to hold of the bench's tools; every problem.
 *
 * @example
 * checkBenchTools({ wheels: [250, 0] }); // [{ code: "not-positive", path: "wheels[1]", … }]
 */
export function checkBenchTools({
  drills = [],
  wheels = [],
  wedges = [],
  jigLever,
  handleStock = [],
}: BenchTools): Issue[] {
  return [
    ...drills.flatMap(({ diameter }, i) => positiveIssues(`drills[${i}]`, diameter)),
    ...wheels.flatMap((wheel, i) => positiveIssues(`wheels[${i}]`, wheel)),
    ...wedges.flatMap((wedge, i) =>
      wedge > 0 && wedge < Math.PI / 2
        ? []
        : [
            {
              code: "angle-out-of-range",
              path: `wedges[${i}]`,
              text: "{value} is no wedge: give an angle of more than 0° and less than 90°.",
              values: { value: angle(wedge) },
            },
          ],
    ),
    ...(wedges.length <= MOST_WEDGES
      ? []
      : [
          {
            code: "too-many-wedges",
            path: "wedges",
            text: "{value} wedges are too many to try; {most} are the most. Leave out those that are hardly used.",
            values: { value: count(wedges.length), most: count(MOST_WEDGES) },
          },
        ]),
    ...positiveIssues("jigLever", jigLever),
    ...handleStock.flatMap((piece, i) =>
      (["length", "height", "thickness", "count"] as const).flatMap((key) =>
        positiveIssues(`handleStock[${i}].${key}`, piece[key]),
      ),
    ),
  ];
}
