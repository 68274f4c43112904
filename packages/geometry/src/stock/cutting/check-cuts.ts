import { count, type Issue } from "../../errors/issue.js";
import { lengthIssues, positiveIssues } from "../number-issues.js";
import type { CutRequest } from "./cut-types.js";

/**
 * What has to hold of a request before it can be cut; every problem, in its order.
 *
 * @example
 * checkCuts({ pieces: [{ order: "A-1", length: 0, count: 1 }], bars: [], kerf: 1.5, minKeep: 75 });
 * // [{ code: "not-positive", path: "pieces[0].length", … }]
 */
export function checkCuts({ pieces, bars, kerf, minKeep }: CutRequest): Issue[] {
  return [
    ...pieces.flatMap((piece, i) => [
      ...positiveIssues(`pieces[${i}].length`, piece.length),
      ...countIssues(`pieces[${i}].count`, piece.count),
    ]),
    ...bars.flatMap((bar, i) => [
      ...positiveIssues(`bars[${i}].length`, bar.length),
      ...countIssues(`bars[${i}].count`, bar.count),
    ]),
    ...lengthIssues("kerf", kerf),
    ...lengthIssues("minKeep", minKeep),
  ];
}

function countIssues(path: string, value: number | undefined): Issue[] {
  if (value === undefined || (Number.isInteger(value) && value >= 1)) return [];
  return [
    {
      code: "not-a-count",
      path,
      text: "{value} has to be a whole number, 1 or more.",
      values: { value: count(value) },
    },
  ];
}
