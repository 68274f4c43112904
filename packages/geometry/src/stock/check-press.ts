import { count, type Issue, length, type QuantityValue, share } from "../errors/issue.js";
import { MOST_SHIMS } from "./forge/stop-blocks.js";
import { ELONGATION_RANGE } from "./forge/thermal-elongation.js";
import type { PressSpec } from "./shop.js";

/** Offsets beyond this are a stop's height or a slip of the point, mm. */
const GREATEST_OFFSET = 5;

const issue = (code: string, path: string, text: string, value: QuantityValue): Issue => ({
  code,
  path,
  text,
  values: { value },
});

const isPositive = (value: number): boolean => value > 0 && Number.isFinite(value);

function positive(path: string, value: number | undefined, kind: (value: number) => QuantityValue): Issue[] {
  if (value === undefined || isPositive(value)) return [];
  return [issue("not-positive", path, "{value} has to be more than nothing.", kind(value))];
}

/**
 * Rule by rule what has to hold of the press and its stops; every problem, paths below `press`.
 *
 * @example
 * checkPress({ stopBlocks: [6, 0] }); // [{ code: "not-positive", path: "press.stopBlocks[1]", … }]
 */
export function checkPress(press: PressSpec): Issue[] {
  const { stopBlocks = [], shims = [], stopOffset = 0, maxReduction } = press;
  return [
    ...positive("press.opening", press.opening, length),
    ...positive("press.forgeLength", press.forgeLength, length),
    ...stopBlocks.flatMap((block, i) => positive(`press.stopBlocks[${i}]`, block, length)),
    ...shims.flatMap((shim, i) => positive(`press.shims[${i}]`, shim, length)),
    ...(shims.length <= MOST_SHIMS
      ? []
      : [
          {
            code: "too-many-shims",
            path: "press.shims",
            text: "{value} shims are too many to try; {most} are the most. Leave out those that are hardly used.",
            values: { value: count(shims.length), most: count(MOST_SHIMS) },
          },
        ]),
    ...(Math.abs(stopOffset) <= GREATEST_OFFSET
      ? []
      : [
          {
            code: "offset-out-of-range",
            path: "press.stopOffset",
            text: "{value} is no offset of a stop: give what the cold piece came out thicker by, {most} at the most.",
            values: { value: length(stopOffset), most: length(GREATEST_OFFSET) },
          },
        ]),
    ...(maxReduction === undefined || (maxReduction > 0 && maxReduction < 1)
      ? []
      : [
          issue(
            "share-out-of-range",
            "press.maxReduction",
            "{value} has to be more than 0 % and less than 100 %.",
            share(maxReduction),
          ),
        ]),
    ...temperatureIssues("press.temperature", press.temperature),
    ...temperatureIssues("press.weldingTemperature", press.weldingTemperature),
    ...positive("press.die.length", press.die?.length, length),
    ...positive("press.die.width", press.die?.width, length),
    ...positive("press.forceKn", press.forceKn, count),
  ];
}

function temperatureIssues(path: string, temperature: number | undefined): Issue[] {
  const { lowest, highest } = ELONGATION_RANGE;
  if (temperature === undefined || (temperature >= lowest && temperature <= highest)) return [];
  return [
    {
      code: "temperature-out-of-range",
      path,
      text: "Steel is not pressed at {value}: give its temperature at the last squeeze, up to {most}.",
      values: {
        value: { quantity: "temperature", value: temperature },
        most: { quantity: "temperature", value: highest },
      },
    },
  ];
}
