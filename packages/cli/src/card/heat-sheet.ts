import {
  type BenchSetUp,
  FILE_SOURCE,
  fileAnswer,
  HARDNESS_SOURCE,
  hardeningSizes,
  hardnessByFiles,
  soakByThickness,
  USUAL_FILES,
  vickersOf,
} from "@scantling/geometry";
import { formatCaliper, formatTemperature } from "@scantling/geometry/units";
import type { CardBlock, CardPanel } from "@scantling/render";
import type { Measured } from "../measure.js";
import { besideUnits } from "../models/sheet-units.js";
import { fixed } from "../report/figures.js";
import { roomText } from "../report/setup-sizes.js";
import { figures, panel, table, withOther, words } from "./card-blocks.js";
import { thickestToHarden } from "./heat-lines.js";
import { HARDNESSES, heatPanels } from "./heat-panel.js";
import { recipesOf } from "./heat-recipes.js";
import { quenchMedia } from "./quench-media.js";

/** The heat treatment at length: what the card has, whether blade and oven go together, the soak, and how hardness is proved. */
export function heatSheetPanels(measured: Measured, bench: BenchSetUp): CardPanel[] {
  return [
    ...fitPanel(measured, bench),
    ...heatPanels(measured, bench),
    ...soakPanel(measured),
    ...provePanel(),
  ];
}

/** The blade beside the oven and the tank; what does not fit is a finding, and stops. */
function fitPanel({ job, knife }: Measured, { quench }: BenchSetUp): CardPanel[] {
  const { units, shop } = job;
  const { oven = {}, quenchTank = {} } = shop;
  const media = quenchMedia(recipesOf(job));
  const isOil = media.includes("oil");
  const { hotLength, hotHeight } = hardeningSizes(knife, quench.from);
  const inside = (mm: number | undefined): string =>
    mm === undefined ? "" : `, of ${roomText(mm, units)} inside`;
  return panel("Oven and tank", "rule", [
    figures(
      {
        label: `blade with tang at ${formatTemperature(quench.from, units)}${media.length === 0 ? " (if so hot)" : ""}, long`,
        figure: `${roomText(hotLength, units)}${inside(oven.length)}`,
      },
      { label: "high, on its back", figure: `${roomText(hotHeight, units)}${inside(oven.height)}` },
      {
        label: `${isOil ? "oil" : media.includes("water") ? "water" : "tank, if one is used,"} deep`,
        figure: `${roomText(quench.depthNeeded, units)}${quenchTank.depth === undefined ? "" : `, of ${roomText(quenchTank.depth, units)}`}`,
      },
      ...(quench.rise === undefined || !isOil
        ? []
        : [
            {
              label: "a blade warms the oil by",
              figure: riseText(quench.rise, units),
              beside: "(heats of steel and oil from memory)",
            },
          ]),
    ),
  ]);
}

const riseText = (kelvin: number, units: "mm" | "in"): string =>
  units === "mm" ? `${fixed(kelvin, 0)} °C` : `${fixed(kelvin * 1.8, 0)} °F`;

/** Only for steels that a source counts by thickness. */
function soakPanel({ job, knife }: Measured): CardPanel[] {
  const { units } = job;
  const thickness = thickestToHarden(knife);
  const soaks = recipesOf(job).flatMap(({ steel }) =>
    soakByThickness(steel, thickness).map((soak) => ({ steel, ...soak })),
  );
  return panel(
    "Soak by thickness",
    "timer",
    soaks.length === 0
      ? []
      : [
          figures(
            ...soaks.map(({ steel, minutes, source }) => ({
              label: `${steel}, ${withOther(formatCaliper, thickness, units, besideUnits(job))} thick`,
              figure: `${fixed(minutes, 0)} min`,
              beside: `(${source})`,
            })),
          ),
          words("Counted from when the oven has come back to its heat. Normalised steel wants less."),
        ],
  );
}

/** What proves a hardness: a tester, or files. */
function provePanel(): CardPanel[] {
  const files = USUAL_FILES.filter((file) => file >= 50);
  return panel("Prove the hardness", "tester or files", [
    ...table(
      ["HRC", "HV", ...files.map((file) => `file ${file}`)],
      HARDNESSES.map((hardness) => [
        `${hardness}`,
        `${vickersOf(hardness) ?? "–"}`,
        ...files.map((file) => fileAnswer(file, hardness)),
      ]),
    ),
    words(`HV: ${HARDNESS_SOURCE}.`),
    words(`Files: ${FILE_SOURCE}. A bracket, not a reading.`),
    ...bracketWords(),
  ]);
}

/** The two files that a usual blade lies between, and what they tell together. */
function bracketWords(): CardBlock[] {
  const found = hardnessByFiles([
    { file: 60, answer: "barely skates" },
    { file: 65, answer: "cuts" },
  ]);
  return found === undefined
    ? []
    : [words(`60 barely skates and 65 cuts: ${found.low} to ${found.high} HRC.`)];
}
