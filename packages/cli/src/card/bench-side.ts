import { type BenchSetUp, type StationFigures, stationFigures } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import type { CardCell, CardPanel, CardSide } from "@scantling/render";
import type { Measured } from "../measure.js";
import { caliperText, fixed, inBoth, otherUnits } from "../report/figures.js";
import { stationsOf } from "../stations.js";
import { bareCaliper, bareLength, degrees, tableBlock, words } from "./card-blocks.js";
import { edgePanels, gluingPanel, handlePanels } from "./handle-panels.js";
import { heatPanel } from "./heat-panel.js";

/** From the forged blade to the sharp knife. */
export function benchSide(measured: Measured, bench: BenchSetUp): CardSide {
  const { job } = measured;
  const { units } = job;
  const panels = [
    stationPanel(measured),
    drillPanel(bench, units),
    ...taperPanels(bench, units),
    scribePanel(bench, units),
    ...bevelPanels(bench, units),
    heatPanel(job),
    ...handlePanels(bench, units),
    ...gluingPanel(bench, units),
    ...edgePanels(bench, units),
  ];
  return { name: "At the bench", panels: panels.filter(({ blocks }) => blocks.length > 0) };
}

/** Head of a column of distances from the heel, ahead of it above 0. */
const FROM_HEEL = "from heel";

function stationPanel({ knife, job }: Measured): CardPanel {
  const { units } = job;
  const stations = stationsOf(knife).map(({ x }) => stationFigures(knife, x));
  const behind = ({ right, left }: StationFigures): string => {
    const bevel = right?.edgeBevel ?? left?.edgeBevel;
    return bevel === undefined ? "–" : bareCaliper(bevel.behind, units);
  };
  const rows: CardCell[][] = [
    [FROM_HEEL, "spine", "behind the edge", "high", "measured"],
    ...stations.map((station): CardCell[] => [
      bareLength(station.x, units),
      bareCaliper(station.atSwedge ?? station.thickness, units),
      behind(station),
      bareLength(station.height, units),
      { box: "" },
    ]),
  ];
  return { title: "Finished blade", tool: `caliper, ${units}`, blocks: [tableBlock(rows)] };
}

function drillPanel({ holes, taper }: BenchSetUp, units: FileUnits): CardPanel {
  const rows = holes.map((hole, index): CardCell[] => [
    `${holeName(index)} ${hole.kind}`,
    bareCaliper(hole.at.x, units),
    bareCaliper(hole.at.y, units),
    bareCaliper(hole.diameter, units),
    hole.steel?.drill.name ?? "–",
  ]);
  const shim =
    taper?.drillingNeedsShim === true ? [words("Drill with the tang shimmed level: see below.")] : [];
  return {
    title: "Drill the steel",
    tool: `from the heel, ${units}`,
    blocks: rows.length === 0 ? [] : [tableBlock([["", "x", "y", "Ø", "drill"], ...rows]), ...shim],
  };
}

/** A, B, … as on the pattern. */
const holeName = (index: number): string => String.fromCharCode(65 + (index % 26));

function taperPanels({ taper }: BenchSetUp, units: FileUnits): CardPanel[] {
  if (taper === undefined) return [];
  const rows = taper.shims.map((shim): CardCell[] => [
    bareLength(shim.at, units),
    bareCaliper(shim.oneFace, units),
    bareCaliper(shim.twoFace, units),
  ]);
  return [
    {
      title: "Taper the tang",
      tool: `shims, ${units}`,
      blocks: [
        words(
          `From ${inBoth(caliperText, taper.front, units)} to ${inBoth(caliperText, taper.butt, units)}, ${degrees(taper.lean)} a face.`,
        ),
        tableBlock([["behind front", "first face, drilling", "second face"], ...rows]),
      ],
    },
  ];
}

function scribePanel({ scribe }: BenchSetUp, units: FileUnits): CardPanel {
  const { level, stations, oneSetting, drills } = scribe;
  const [first] = stations;
  if (first === undefined) return { title: "Scribe the edge", blocks: [] };
  const [drill] = drills.leftDown;
  const rows = oneSetting
    ? []
    : stations.map((station): CardCell[] => [
        bareLength(station.x, units),
        bareCaliper(station.leftDown, units),
        bareCaliper(station.rightDown, units),
      ]);
  return {
    title: "Scribe the edge lines",
    tool: `height gauge, ${units}`,
    blocks: [
      {
        kind: "figures",
        figures: [
          {
            label: oneSetting ? "gauge, from either face" : "gauge at the heel, left face down",
            figure: caliperText(first.leftDown, units),
            beside: `(${caliperText(first.leftDown, otherUnits(units))})`,
          },
          { label: "leaves an edge of", figure: caliperText(first.edge, units) },
          ...(drill === undefined
            ? []
            : [
                {
                  label: "or scribe with drill",
                  figure: drill.drill.name,
                  beside: offText(drill.error, units),
                },
              ]),
        ],
      },
      words(
        `Holds for ${caliperText(level.thickness, units)} measured where it rests; else (thickness − edge) / 2.`,
      ),
      ...(rows.length === 0 ? [] : [tableBlock([[FROM_HEEL, "left down", "right down"], ...rows])]),
      ...(level.shims.length === 0
        ? [words("Nothing tapers: no shim.")]
        : [
            tableBlock([
              ["shim under", "shim"],
              ...[...level.shims]
                .sort((a, b) => b.x - a.x)
                .map(({ x, shim }): CardCell[] => [bareLength(x, units), bareCaliper(shim, units)]),
            ]),
          ]),
    ],
  };
}

/** How far a line comes out beside its place; nothing to tell below what a caliper shows. */
function offText(error: number, units: FileUnits): string {
  const size = caliperText(Math.abs(error), units);
  return /[1-9]/u.test(size) ? `${size} ${error < 0 ? "low" : "high"}` : "as wanted";
}

function bevelPanels({ bevels }: BenchSetUp, units: FileUnits): CardPanel[] {
  return bevels.map(({ side, form, stations, droop, leverShim, wheels }) => {
    const rows = stations.map((station): CardCell[] => [
      bareLength(station.x, units),
      bareLength(station.height, units),
      degrees(station.angle),
      bareCaliper(station.depth, units),
    ]);
    const notes = [
      ...(droop === undefined || droop >= 0.995
        ? []
        : [`One angle all along leaves the line at ${fixed(droop * 100, 0)} % of its height at the lowest.`]),
      ...(leverShim === undefined ? [] : [`Shim under the jig: ${inBoth(caliperText, leverShim, units)}.`]),
      ...(wheels ?? []).map(
        ({ diameter, fits }) =>
          `Wheel ${caliperText(diameter, units)}: ${fits ? "fits" : "too small, it thins the blade above the edge"}.`,
      ),
    ];
    const table = tableBlock([[FROM_HEEL, "bevel high", "angle a face", "off at the edge"], ...rows]);
    return {
      title: side === "both" ? `Grind the bevels, ${form}` : `Grind the ${side} bevel, ${form}`,
      tool: `jig, ${units}`,
      blocks: [table, ...notes.map(words)],
    };
  });
}
