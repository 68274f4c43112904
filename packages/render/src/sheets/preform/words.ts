import { formatNumber, formatTemperature } from "@scantling/geometry/units";
import { onOneLine } from "../../label-text.js";
import type { PreformModel } from "../../models/preform-model.js";
import { mainUnits } from "../../sheet-units.js";
import { ruleText } from "./figures.js";
import { LEVEL } from "./view.js";

/** The temperature of the hot size. */
export const temperatureWords = ({ temperature, units }: PreformModel): string =>
  formatTemperature(temperature, mainUnits(units));

/** What is to be known of the sheet besides its figures. */
export function preformNotes(model: PreformModel): string[] {
  const { elongation, bendDown, pointDrop, units } = model;
  const rule = (mm: number): string => onOneLine(ruleText(mm, units));
  const bend =
    bendDown === undefined
      ? "Hammering in the bevels lifts the point: measure how far, for the next blade (preCurve in the shop file)."
      : `Before the bevels go in, bend the point down by ${rule(bendDown)}, cold size, more, as an earlier blade came up.`;
  const end =
    Math.abs(pointDrop) < LEVEL
      ? "level with"
      : `${rule(Math.abs(pointDrop))}, cold size, ${pointDrop > 0 ? "below" : "above"}`;
  return [
    `Wide: size at ${temperatureWords(model)}, ${formatNumber(elongation * 100, 0.1)} % greater than cold. Dashed: size when cold.`,
    `Height: forge to the outline as it is drawn; between the numbered sections it need not be straight. Its spine side lies where the forged blade has it: that of the end ${end} that of the heel.`,
    "Thickness: straight between the numbered sections and the places of the forge card's taper.",
    bend,
    "Hot steel lights paper: cut sheet steel to the line and lay the bar on that. Eye protection, gloves, air.",
  ];
}
