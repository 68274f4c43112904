import { count, type Issue, length, type QuantityValue, share } from "../errors/issue.js";
import { ELONGATION_RANGE } from "./forge/thermal-elongation.js";
import type { ShopSpec } from "./shop.js";

const temperature = (value: number): QuantityValue => ({ quantity: "temperature", value });

function issueUnless(good: boolean, code: string, path: string, text: string, value: QuantityValue): Issue[] {
  return good ? [] : [{ code, path, text, values: { value } }];
}

/** Positive and finite, or an issue; nothing where it is left out. */
function positive(
  path: string,
  value: number | undefined,
  kind: (value: number) => QuantityValue = length,
): Issue[] {
  if (value === undefined) return [];
  const good = value > 0 && Number.isFinite(value);
  return issueUnless(good, "not-positive", path, "{value} has to be more than nothing.", kind(value));
}

function clearance(path: string, value: number | undefined): Issue[] {
  if (value === undefined) return [];
  const good = value >= 0 && Number.isFinite(value);
  return issueUnless(good, "length-negative", path, "A length cannot be {value}.", length(value));
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
  return [
    ...positive("oven.length", oven.length),
    ...positive("oven.height", oven.height),
    ...(heat === undefined
      ? []
      : issueUnless(
          heat >= lowest && heat <= highest,
          "temperature-out-of-range",
          "oven.temperature",
          "Steel is not hardened from {value}: give the temperature of the oven, up to 1200 °C.",
          temperature(heat),
        )),
    ...positive("quenchTank.depth", quenchTank.depth),
    ...fullers.flatMap((radius, i) => positive(`fullers[${i}]`, radius)),
    ...clearance("preCurve.sweep", preCurve?.sweep),
    ...positive("preCurve.length", preCurve?.length),
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
    ...clearance("limits.forge.cornerRadius", forge.cornerRadius),
    ...positive("limits.forge.shoulderPasses", forge.shoulderPasses, count),
    ...clearance("limits.forge.ovenClearance", forge.ovenClearance),
    ...clearance("limits.forge.tankClearance", forge.tankClearance),
  ];
}
