import { type Finding, length, share } from "../errors/issue.js";
import { findingLimit } from "../limits/finding-limits.js";
import { limitBasis } from "../limits/limit.js";
import { STOCK_LIMITS } from "../limits/shop-limits.js";
import type { PlanReach } from "./plan-reach.js";
import type { FeasibleStack, StockForging } from "./search.js";
import type { RackBar, StockLimits } from "./shop.js";
import { weldHeatFindings } from "./weld-heat-findings.js";

/**
 * What is legal but unwise about a plan: a reach that is only just possible, joints that can be squeezed less than one
 * would like or for which no welding heat is planned, a bar whose steel nobody has written down.
 *
 * @param squeeze - Share of its height that the stack loses while it is welded and forged, 0–1.
 */
export function planFindings(
  stack: FeasibleStack,
  bar: RackBar,
  reach: PlanReach,
  squeeze: number,
  limits: StockLimits,
  forging: StockForging,
): Finding[] {
  const findings: Finding[] = [];
  const path = `rack[${stack.barIndex}]`;
  const tightHeight = findingLimit("tightHeight", limits.findings);
  const targetWeldReduction = findingLimit("targetWeldReduction", limits.findings);
  const tight =
    reach.worst !== undefined && reach.worst.reachableHeight < reach.worst.height * (1 + tightHeight.value);
  if (reach.class === "fullers" || tight) {
    const worst = reach.worst;
    findings.push({
      code: "reach-only-just",
      path,
      severity: "warn",
      text:
        "{share} of the thinning has to go into height" +
        (worst ? ": {needed} high is needed, {reachable} is the most to be had" : "") +
        ". Lay the fullers along the bar, or take a taller or thicker section.",
      values: {
        share: share(Math.max(reach.share, reach.wholeShare)),
        ...(worst ? { needed: length(worst.height), reachable: length(worst.reachableHeight) } : {}),
      },
      basis:
        reach.class === "fullers"
          ? limitBasis(limits.reach.flatDies, STOCK_LIMITS.reachFlatDies)
          : tightHeight.basis,
    });
  }
  findings.push(...weldHeatFindings(stack.joints, forging.weldingHeats));
  if (stack.bars > 1 && squeeze < targetWeldReduction.value)
    findings.push({
      code: "weld-reduction-low",
      path,
      severity: "warn",
      text: "The joints are squeezed by {squeeze} in all; {least} is the least and {target} is wanted. Keep squeezing at welding heat, or start from more or thicker bars.",
      values: {
        squeeze: share(squeeze),
        least: share(limits.minWeldReduction),
        target: share(targetWeldReduction.value),
      },
      basis: targetWeldReduction.basis,
    });
  if (bar.steel === undefined && forging.steel !== undefined)
    findings.push({
      code: "bar-steel-not-stated",
      path,
      severity: "note",
      text: "The shop file does not say what steel this bar is; the knife is of {steel}.",
      values: { steel: forging.steel },
      basis: "the knife file",
    });
  return findings;
}
