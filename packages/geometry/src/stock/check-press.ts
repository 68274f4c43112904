import { count, type Issue, length } from "../errors/issue.js";
import { MOST_SHIMS } from "./forge/stop-blocks.js";
import { ELONGATION_RANGE } from "./forge/thermal-elongation.js";
import { insideShareIssues, positiveIssues } from "./number-issues.js";
import type { PressSpec } from "./shop.js";

/** Offsets beyond this are a stop's height or a slip of the point, mm. */
const GREATEST_OFFSET = 5;

/**
 * Rule by rule what has to hold of the press and its stops; every problem, paths below `press`.
 *
 * @example
 * checkPress({ stopBlocks: [6, 0] }); // [{ code: "not-positive", path: "press.stopBlocks[1]", … }]
 */
export function checkPress(press: PressSpec): Issue[] {
  const { stopBlocks = [], shims = [], stopOffset = 0, maxReduction } = press;
  return [
    ...positiveIssues("press.opening", press.opening),
    ...positiveIssues("press.forgeLength", press.forgeLength),
    ...stopBlocks.flatMap((block, i) => positiveIssues(`press.stopBlocks[${i}]`, block)),
    ...shims.flatMap((shim, i) => positiveIssues(`press.shims[${i}]`, shim)),
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
            text: "{value} is no offset of a stop: give how much thicker than its stop the piece was while hot, which is its cold size grown by the heat, less the stop; {most} at the most.",
            values: { value: length(stopOffset), most: length(GREATEST_OFFSET) },
          },
        ]),
    ...insideShareIssues("press.maxReduction", maxReduction),
    ...temperatureIssues("press.temperature", press.temperature),
    ...temperatureIssues("press.weldingTemperature", press.weldingTemperature),
    ...positiveIssues("press.die.length", press.die?.length),
    ...positiveIssues("press.die.width", press.die?.width),
    ...positiveIssues("press.forceKn", press.forceKn, count),
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
