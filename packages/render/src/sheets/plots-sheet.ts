import { type DrawingItem, moveItem } from "../drawing.js";
import type { Part } from "../lay-out/part.js";
import type { SheetContent } from "../lay-out/sheet-content.js";
import type { PlotsModel } from "../models/plots-model.js";
import type { Block } from "../plot/block.js";
import { areaPlot, thicknessPlot } from "./plots/along-blade.js";
import { ledgerPlot } from "./plots/ledger.js";
import { massPlot } from "./plots/mass.js";
import { plansPlot } from "./plots/plans.js";
import { plotsDescription, plotsFields, plotsTitle } from "./plots/words.js";

/** Width of a plot, mm: that of a column, with lettering of 2.5 mm. */
const PLOT_WIDTH = 80;

/**
 * Plots of a knife for those who would rather look than read: thickness and section area along the blade, the steel
 * ledger as a stacked bar, the interval of the mass with its causes, the plans of the rack. Each is a part by itself;
 * none is to scale.
 *
 * @param width - of each plot, mm; 80 by default and at least.
 *
 * @example
 * layOutSheet(plotsContents(model), { kind: "paper", paper: paperNamed("A4") });
 */
export function plotsContents(model: PlotsModel, width = PLOT_WIDTH): SheetContent[] {
  // The tall ones with lower ones between them: so they fill two columns of a standing sheet of A4 or Letter.
  const plots = [
    ["plot-ledger", ledgerPlot],
    ["plot-thickness", thicknessPlot],
    ["plot-area", areaPlot],
    ["plot-plans", plansPlot],
    ["plot-mass", massPlot],
  ] as const;
  return [
    {
      name: "plots",
      trueSize: false,
      title: plotsTitle(model),
      describe: () => plotsDescription(model),
      fields: (page) => plotsFields(model, page),
      parts: plots.map(([name, draw]) => partOf(name, draw(model, width), width)),
    },
  ];
}

/** Clear space about a plot, mm: half a line's width, and what keeps neighbours apart. */
const AROUND = 1;

function partOf(name: string, block: Block, width: number): Part {
  const height = Math.ceil(block.height) + 2 * AROUND;
  return {
    name,
    width: width + 2 * AROUND,
    height,
    wish: "foot",
    items: ({ x, y }): DrawingItem[] =>
      block.items.map((item) => moveItem(item, x + AROUND, y + height - AROUND)),
  };
}
