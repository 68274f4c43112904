import { type Issue, share } from "../errors/issue.js";
import { FINDING_LIMIT_NAMES, FINDING_LIMITS, type GivenLimits } from "../limits/finding-limits.js";
import { insideShareIssues, positiveIssues } from "./number-issues.js";
import type { ShopSpec } from "./shop.js";

/**
 * Rule by rule what has to hold of the limits at the weighing gates and of those of stacks of two or more steels.
 *
 * @example
 * checkLimits({ ...DEFAULT_SHOP, gates: { massRise: -0.1 } }); // [{ code: "share-out-of-range", path: "gates.massRise", … }]
 */
export function checkLimits({ gates = {}, limits }: ShopSpec): Issue[] {
  const { coreCentring, minLayerThickness, maxGrooveDepth } = limits.mixed ?? {};
  return [
    ...positiveIssues("limits.mixed.coreCentring", coreCentring),
    ...positiveIssues("limits.mixed.minLayerThickness", minLayerThickness),
    ...(maxGrooveDepth === undefined || (maxGrooveDepth >= 0 && maxGrooveDepth <= 1)
      ? []
      : [
          {
            code: "share-out-of-range",
            path: "limits.mixed.maxGrooveDepth",
            text: "{value} has to be from 0 % to 100 %.",
            values: { value: share(maxGrooveDepth) },
          },
        ]),
    ...findingIssues(limits.findings),
    ...insideShareIssues("gates.massRise", gates.massRise),
    ...insideShareIssues("gates.leastSimilar", gates.leastSimilar),
  ];
}

/** A limit below nothing trips everything or nothing. */
function findingIssues(given: GivenLimits = {}): Issue[] {
  return FINDING_LIMIT_NAMES.flatMap((name): Issue[] => {
    const value = given[name];
    if (value === undefined || (value >= 0 && Number.isFinite(value))) return [];
    const { quantity } = FINDING_LIMITS[name];
    return [
      {
        code: "limit-out-of-range",
        path: `limits.findings.${name}`,
        text: "{value} cannot be a limit: give 0 or more.",
        values: { value: { quantity, value } },
      },
    ];
  });
}
