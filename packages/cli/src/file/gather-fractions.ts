import type { Problem } from "./problem.js";
import type { FileTree } from "./yaml-tree.js";

const FRACTION = "quantity-fraction-without-unit";

/** More bare fractions than this are one mistake: the file is in inches and does not say so. */
const MOST_FRACTIONS = 3;

/**
 * Problems with those that come of wrong units alone told once, or left out where the file's units are not known: there
 * nobody can say whether a bare fraction is wrong.
 */
export function gatherFractions(problems: readonly Problem[], tree: FileTree): readonly Problem[] {
  const fractions = problems.filter(({ code }) => code === FRACTION);
  const others = problems.filter(({ code }) => code !== FRACTION);
  if (others.some(({ path }) => path === "units")) return others;
  const [first] = fractions;
  if (first === undefined || fractions.length <= MOST_FRACTIONS) return problems;
  const given = tree.positionOf(["units"]);
  return [
    ...others,
    {
      code: FRACTION,
      file: tree.fileName,
      path: "units",
      line: given?.line ?? first.line,
      column: given?.column ?? first.column,
      message: `${fractions.length} fractions have no unit in a file in mm, the first on line ${first.line}: did you mean units: in${given === undefined ? "" : ` (line ${given.line})`}? If not, write each one's unit: 3/16 in`,
    },
  ];
}
