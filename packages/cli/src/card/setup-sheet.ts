import type { Measured } from "../measure.js";
import { cautionLines } from "../report/cautions.js";
import { headingLines } from "../report/heading.js";
import { panelSections } from "../report/panel-text.js";
import type { Setup } from "../report/setup-json.js";
import { setupText } from "../report/setup-text.js";
import type { Bars } from "../stock-report.js";
import { benchSide } from "./bench-side.js";
import { heatSheetPanels } from "./heat-sheet.js";

/** All of `setup` for people: the forge card, then what is set at the bench and in the oven. */
export function setupSheet(measured: Measured, setup: Setup, bars: Bars): string[] {
  const heat = heatSheetPanels(measured, setup.bench);
  const { name, panels, hazards } = benchSide(measured, setup.bench, [], heat);
  const bench = [[`${name}: in the order of use`], ...panelSections(panels), cautionLines(hazards)];
  return [
    ...headingLines(measured),
    "",
    ...setupText(setup, bars, measured.job),
    ...bench.flatMap((lines) => ["", ...lines]),
  ];
}
