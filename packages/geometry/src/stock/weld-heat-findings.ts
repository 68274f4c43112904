import { count, type Finding } from "../errors/issue.js";

/**
 * Whether joints are to be forge-welded for which no welding heat is planned: the plan's heats, and the scale they cost, would
 * be those of a solid bar.
 *
 * @param joints - Of the whole stack, restacks included.
 * @param weldingHeats - Planned for each weld.
 *
 * @example
 * weldHeatFindings(2, 0).map(({ code }) => code); // ["no-welding-heat"]
 */
export function weldHeatFindings(joints: number, weldingHeats: number): Finding[] {
  if (joints === 0 || weldingHeats >= 1) return [];
  return [
    {
      code: "no-welding-heat",
      severity: "warn",
      path: "forging.weldingHeats",
      text: "{joints} joints are to be forge-welded, and {heats} welding heats are planned: a stack needs at least one for each weld, and scale is lost in it. Write forging: weldingHeats: 3, or as many as you take.",
      values: { joints: count(joints), heats: count(weldingHeats) },
      basis: "a forge weld is made at welding heat",
    },
  ];
}
