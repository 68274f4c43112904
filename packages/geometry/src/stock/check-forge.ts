import { count, type Issue, type QuantityValue, share, temperature } from "../errors/issue.js";
import { ELONGATION_RANGE } from "./forge/thermal-elongation.js";
import { lengthIssues, positiveIssues } from "./number-issues.js";
import type { ShopSpec } from "./shop.js";

/** Beyond this it is no quench oil but a salt bath, °C. */
const HOTTEST_OIL = 300;

function issueUnless(
  good: boolean,
  code: string,
  path: string,
  text: string,
  value: QuantityValue,
  most?: QuantityValue,
): Issue[] {
  return good ? [] : [{ code, path, text, values: { value, ...(most === undefined ? {} : { most }) } }];
}

/**
 * Rule by rule what has to hold of fullers, oven, quench tank, a measured sweep and the limits of forging.
 *
 * @example
 * checkForge({ ...DEFAULT_SHOP, oven: { length: 0 } }); // [{ code: "not-positive", path: "oven.length", … }]
 */
export function checkForge({
  oven = {},
  quenchTank = {},
  fullers = [],
  preCurve,
  limits,
}: ShopSpec): Issue[] {
  const { bevelSpreadShare: spread, shoulderRatio: ratio, ...forge } = limits.forge ?? {};
  const { lowest, highest } = ELONGATION_RANGE;
  const heat = oven.temperature;
  const oil = quenchTank.temperature;
  return [
    ...positiveIssues("oven.length", oven.length),
    ...positiveIssues("oven.height", oven.height),
    ...(heat === undefined
      ? []
      : issueUnless(
          heat >= lowest && heat <= highest,
          "temperature-out-of-range",
          "oven.temperature",
          "Steel is not hardened from {value}: give the temperature of the oven, up to {most}.",
          temperature(heat),
          temperature(highest),
        )),
    ...positiveIssues("quenchTank.depth", quenchTank.depth),
    ...positiveIssues("quenchTank.litres", quenchTank.litres, count),
    ...(oil === undefined
      ? []
      : issueUnless(
          oil > -20 && oil <= HOTTEST_OIL,
          "temperature-out-of-range",
          "quenchTank.temperature",
          "A quench is not kept at {value}: give the temperature of the oil before the blade goes in, up to {most}.",
          temperature(oil),
          temperature(HOTTEST_OIL),
        )),
    ...fullers.flatMap((radius, i) => positiveIssues(`fullers[${i}]`, radius)),
    ...lengthIssues("preCurve.sweep", preCurve?.sweep),
    ...positiveIssues("preCurve.length", preCurve?.length),
    ...(spread === undefined
      ? []
      : issueUnless(
          spread >= 0 && spread <= 1,
          "share-out-of-range",
          "limits.forge.bevelSpreadShare",
          "{value} has to be from 0 % to 100 %.",
          share(spread),
        )),
    ...(ratio === undefined
      ? []
      : issueUnless(
          ratio > 1 && Number.isFinite(ratio),
          "ratio-too-small",
          "limits.forge.shoulderRatio",
          "{value} has to be more than 1: the area before a pass over the area after it.",
          count(ratio),
        )),
    ...lengthIssues("limits.forge.cornerRadius", forge.cornerRadius),
    ...positiveIssues("limits.forge.shoulderPasses", forge.shoulderPasses, count),
    ...lengthIssues("limits.forge.ovenClearance", forge.ovenClearance),
    ...lengthIssues("limits.forge.tankClearance", forge.tankClearance),
  ];
}
