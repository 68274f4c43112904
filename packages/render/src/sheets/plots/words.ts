import { cleanText } from "../../clean-text.js";
import { massText, onOneLine } from "../../label-text.js";
import type { PageInfo } from "../../lay-out/sheet-content.js";
import type { PlotsModel } from "../../models/plots-model.js";
import type { TitleField } from "../../title-block.js";

/** The fields of the title block, row by row. */
export function plotsFields(model: PlotsModel, { page, pages }: PageInfo): TitleField[][] {
  const { code, title, steel, units, revision, mass, densityFromMemory } = model;
  return [
    [
      { label: "Order", value: code, share: 0.28, lines: 2 },
      { label: "Title", value: title, share: 0.72, lines: 2 },
    ],
    [
      { label: "Steel", value: steel, share: 0.25, lines: 2 },
      {
        label: densityFromMemory ? "Mass, density from memory" : "Knife mass",
        value: onOneLine(massText(mass.value, units)),
        share: 0.47,
      },
      {
        label: "Plots, not to scale",
        value: pages === 1 ? "1 page" : `page ${page} of ${pages}`,
        share: 0.28,
      },
    ],
    ...(revision === undefined ? [] : [[{ label: "Revision", value: revision, share: 1, lines: 2 }]]),
  ];
}

/** What the sheet is called. */
export const plotsTitle = ({ code, title }: PlotsModel): string =>
  `${cleanText(`${code} ${title}`) || "Blade"}: plots`;

/** What the sheet shows, for those who hear it read. */
export function plotsDescription(model: PlotsModel): string {
  const { units, mass, plans, ledger } = model;
  const [low, high] = mass.interval.map((grams) => onOneLine(massText(grams, units)));
  const bars = ledger.at(-1);
  return cleanText(
    `Plots, not to scale: thickness along the blade, steel in its sections, the steel ledger, the interval of the mass, ` +
      `the plans of the rack. The knife weighs ${onOneLine(massText(mass.value, units))}, 95 in 100 from ${low} to ${high}. ` +
      `${bars === undefined ? "No bars are planned." : `It takes ${onOneLine(massText(bars.mass, units))} of bar.`} ` +
      `${plans.length === 1 ? "1 plan is" : `${plans.length} plans are`} compared.`,
  );
}
