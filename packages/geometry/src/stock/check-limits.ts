import { type Issue, share } from "../errors/issue.js";
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
    ...insideShareIssues("gates.massRise", gates.massRise),
    ...insideShareIssues("gates.leastSimilar", gates.leastSimilar),
  ];
}
