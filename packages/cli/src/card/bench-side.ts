import { type BenchSetUp, type StationFigures, stationFigures } from "@scantling/geometry";
import type { CardCell, CardFigure, CardPanel, CardSide } from "@scantling/render";
import { ASK_KINDS } from "../file/index.js";
import type { Measured } from "../measure.js";
import { besideUnits } from "../models/sheet-units.js";
import { askedHardness } from "../report/hardness-text.js";
import { stationsOf } from "../stations.js";
import { BALANCE, madeAskRows } from "./card-asks.js";
import { BOX, bareCaliper, bareLength, figures, massUnit, panel, table, words } from "./card-blocks.js";
import { grindPanels } from "./grind-panels.js";
import { edgePanels, handlePanels } from "./handle-panels.js";
import { heatLines } from "./heat-lines.js";
import { heatPanels } from "./heat-panel.js";
import { tangPanels } from "./tang-panels.js";

/** What can hurt someone at the bench. */
const HAZARDS = [
  "burning oil (lid, extinguisher at hand)",
  "hot steel",
  "sparks",
  "grinding and wood dust",
  "noise",
  "glue",
  "sharp edges",
] as const;

/**
 * From the forged blade to the sharp knife.
 *
 * @param before - Panels that go before all others.
 * @param heat - What is told of the heat treatment.
 */
export function benchSide(
  measured: Measured,
  bench: BenchSetUp,
  before: readonly CardPanel[] = [],
  heat: readonly CardPanel[] = heatPanels(measured, bench, heatLines(measured)),
): CardSide {
  const { job } = measured;
  const { units } = job;
  const other = besideUnits(job);
  const panels = [
    ...before,
    ...tangPanels(measured, bench),
    ...grindPanels(bench, measured.knife.outline.butt, units, other),
    ...heat,
    ...stationPanel(measured),
    ...handlePanels(bench, units, other),
    ...edgePanels(bench, units),
    ...donePanel(measured),
  ];
  return { name: "At the bench", hazards: HAZARDS, panels };
}

function stationPanel({ knife, job }: Measured): CardPanel[] {
  const { units } = job;
  const stations = stationsOf(knife).map(({ x }) => stationFigures(knife, x));
  const behind = ({ right, left }: StationFigures): string => {
    const bevel = right?.edgeBevel ?? left?.edgeBevel;
    return bevel === undefined ? "–" : bareCaliper(bevel.behind, units);
  };
  const rows = stations.map((station): CardCell[] => [
    bareLength(station.x, units),
    bareLength(station.height, units),
    behind(station),
    station.atSwedge === undefined
      ? bareCaliper(station.thickness, units)
      : `${bareCaliper(station.atSwedge, units)} *`,
    BOX,
  ]);
  const swedged = stations.some(({ atSwedge }) => atSwedge !== undefined);
  return panel("Finished blade", `caliper, ${units}`, [
    ...table(["from heel", "high", "thick behind edge", "thick at spine", "spine measured"], rows),
    ...(swedged ? [words("* with swedge")] : []),
  ]);
}

/** What the finished knife is weighed and measured for: mass and balance always, and all else that was asked for. */
function donePanel({ answers, job, hardness }: Measured): CardPanel[] {
  const { units } = job;
  const rows = madeAskRows(answers, units);
  const asked = answers.flatMap(({ ask }, index): CardFigure[] => {
    const kind = ASK_KINDS[ask.name];
    const [name = "", condition = ""] = rows[index] ?? [];
    return kind === "count"
      ? []
      : [
          {
            label: name,
            beside: condition,
            boxes: [kind === "mass" ? massUnit(units) : kind === "angle" ? "°" : units],
          },
        ];
  });
  const names = new Set(answers.map(({ ask }) => ask.name));
  const usual: CardFigure[] = [
    ...(names.has("mass") ? [] : [{ label: "mass", boxes: [massUnit(units)] }]),
    ...(names.has("balance") ? [] : [{ label: BALANCE, boxes: [units] }]),
  ];
  const tested =
    hardness === undefined ? [] : [{ label: "hardness", beside: askedHardness(hardness), boxes: ["HRC"] }];
  return panel("The knife as made", "scale, rule", [figures(...asked, ...usual, ...tested)]);
}
