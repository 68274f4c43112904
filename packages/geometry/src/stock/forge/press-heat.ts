import type { FindingCode } from "../../errors/finding-codes.js";
import type { Finding } from "../../errors/issue.js";
import { findingLimit, type GivenLimits } from "../../limits/finding-limits.js";
import type { PressSpec } from "../shop.js";

/**
 * What is unwise about the heats that the shop says it presses at: steel that is too cold to move, or to weld. Nothing
 * is said of what the shop does not give.
 *
 * @example
 * pressHeatFindings({ temperature: 510 }).map(({ code }) => code); // ["forging-heat-low"]
 */
export function pressHeatFindings(
  { temperature, weldingTemperature }: PressSpec,
  given: GivenLimits = {},
): Finding[] {
  const coolestForging = findingLimit("coolestForging", given);
  const coolestWelding = findingLimit("coolestWelding", given);
  return [
    ...(temperature === undefined || temperature >= coolestForging.value
      ? []
      : [
          tooCold(
            "forging-heat-low",
            "press.temperature",
            "{temperature} is no forging heat: below {least} steel hardly moves and cracks.",
            temperature,
            coolestForging,
          ),
        ]),
    ...(weldingTemperature === undefined || weldingTemperature >= coolestWelding.value
      ? []
      : [
          tooCold(
            "welding-heat-low",
            "press.weldingTemperature",
            "{temperature} is no welding heat: below {least} the joints do not take.",
            weldingTemperature,
            coolestWelding,
          ),
        ]),
  ];
}

function tooCold(
  code: FindingCode,
  path: string,
  text: string,
  temperature: number,
  least: { readonly value: number; readonly basis: string },
): Finding {
  return {
    code,
    path,
    severity: "warn",
    text: `${text} Give the heat of the steel at the last squeeze; °F or °C behind the number says which.`,
    values: {
      temperature: { quantity: "temperature", value: temperature },
      least: { quantity: "temperature", value: least.value },
    },
    basis: least.basis,
  };
}
