import { formatNumber, formatTemperature } from "@scantling/geometry/units";
import { onOneLine } from "../../label-text.js";
import type { PreformModel } from "../../models/preform-model.js";
import { mainUnits } from "../../sheet-units.js";
import { ruleText } from "./figures.js";

/** The temperature of the hot size. */
export const temperatureWords = ({ temperature, units }: PreformModel): string =>
  formatTemperature(temperature, mainUnits(units));

/** What is to be known of the sheet besides its figures. */
export function preformNotes(model: PreformModel): string[] {
  const { elongation, bendDown, units } = model;
  const bend =
    bendDown === undefined
      ? "The point comes up as the bevels go in: measure how far, for the next blade (preCurve in the shop file)."
      : `Before the bevels go in, bend the point down by ${onOneLine(ruleText(bendDown, units))}, as an earlier blade came up.`;
  return [
    `Wide: size at ${temperatureWords(model)}, ${formatNumber(elongation * 100, 0.1)} % greater than cold. Dashed: size when cold.`,
    "Straight between the sections of the forge card. It gives heights and not where they lie: drawn with the blade's spine side straight.",
    bend,
    "Hot steel lights paper: cut sheet steel to the line and lay the bar on that. Eye protection, gloves, air.",
  ];
}
