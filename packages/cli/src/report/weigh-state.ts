import type { Knife } from "@scantling/geometry";
import { type FileUnits, formatArea, formatCaliper } from "@scantling/geometry/units";
import type { Measured } from "../measure.js";
import { STATE_WORDS } from "../models/pattern-model.js";
import type { WeighedState } from "../weigh-in-state.js";
import { fineMassText, fixed, inBoth, lengthText, placeText, volumeText } from "./figures.js";
import { findingJson } from "./findings.js";
import { layOutTable, REPORT_WIDTH, wrap } from "./layout.js";
import { densityLines, materialsJson } from "./materials.js";

/** Columns of the table of stations; fewer where they would not fit on the page. */
const MOST_COLUMNS = 5;

/** One size state for people: what the scale shows, and what a caliper finds at stations. */
export function weighStateText(weighed: WeighedState, { job, knife }: Measured): string[] {
  const { weight, ledgerMass } = weighed;
  const { units } = job;
  const { state, mass, volume, surface, centre } = weight;
  return [
    ...wrap(
      `${capital(STATE_WORDS[state])}: ${inBoth(fineMassText, mass, units)} of steel, ${inBoth(volumeText, volume, units)}, surface ${surfaceText(surface, units)}, blade and tang in one piece, no handle. It balances ${placeText(centre.x, units)}.`,
    ),
    ...wrap(
      `The ledger has ${inBoth(fineMassText, ledgerMass, units)} here: with the scale that hardening will take, at usual losses.`,
    ),
    ...wrap(allowanceWords(knife, state, units)),
    ...densityLines(job.spec, units),
    "",
    ...stationTable(weighed, units),
  ];
}

/** Whole square centimetres, or square inches: of a whole blade. */
const surfaceText = (mm2: number, units: FileUnits): string =>
  units === "mm" ? `${fixed(mm2 / 100, 0)} cm²` : formatArea(mm2, units);

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** What is still on in this state. */
function allowanceWords({ allowances, finish }: Knife, state: string, units: FileUnits): string {
  const { face, outline, tip, butt, afterHardening, minEdge } = allowances;
  const show = (mm: number): string => formatCaliper(mm, units);
  const ground = [
    ...(finish.bevels === "ground" ? ["bevels"] : []),
    ...(finish.flats === "ground" ? ["flats"] : []),
    "tang",
  ].join(" and ");
  const after = `${show(afterHardening)} on each face to grind after hardening (${ground}), the edge at least ${show(minEdge)} thick`;
  if (state === "ready") return `Still on: ${after}.`;
  return `Still on: ${after}; ${show(face)} more on each of those faces; ${show(outline)} along edge side and spine side; ${show(tip)} at the tip and ${show(butt)} at the butt. Faces left from the hammer have none.`;
}

function stationTable({ stations }: WeighedState, units: FileUnits): string[] {
  const tables = (columns: number): string[] =>
    stations.flatMap((_, i) =>
      i % columns > 0 ? [] : [...(i > 0 ? [""] : []), ...table(stations.slice(i, i + columns), units)],
    );
  for (let columns = MOST_COLUMNS; columns > 1; columns--) {
    const lines = tables(columns);
    if (lines.every((line) => line.length <= REPORT_WIDTH)) return lines;
  }
  return tables(1);
}

function table(columns: WeighedState["stations"], units: FileUnits): string[] {
  type Station = WeighedState["stations"][number];
  const row = (label: string, cell: (station: Station) => string): string[] => [label, ...columns.map(cell)];
  const heights = [...new Set(columns.flatMap(({ section }) => section.aboveEdge.map(({ above }) => above)))];
  return layOutTable(
    [
      row("ahead of the heel", ({ x }) => lengthText(x, units)),
      row("thickness, spine", ({ section }) => formatCaliper(section.thickness, units)),
      row("thickness, edge", ({ section }) => formatCaliper(section.edgeThickness, units)),
      row("height", ({ section }) => lengthText(section.height, units)),
      row("area", ({ section }) => formatArea(section.area, units)),
      ...heights
        .sort((a, b) => a - b)
        .map((above) =>
          row(`${above} mm above edge`, ({ section }) => {
            const found = section.aboveEdge.find((one) => one.above === above);
            return found === undefined ? "–" : formatCaliper(found.thickness, units);
          }),
        ),
    ],
    ["left", ...columns.map(() => "right" as const)],
  );
}

/**
 * One size state for programs: `scantling/weigh-state/1`. mm, mm², mm³, g, g·mm². x is counted from the finished heel; the
 * edge of the forged state lies lower by the allowance along the outline.
 */
export function weighStateJson({ weight, ledgerMass, stations }: WeighedState, measured: Measured): unknown {
  const { job, knife, findings } = measured;
  const { state, volume, mass, surface, centre, inertia } = weight;
  const { xx, yy, zz, xy, yz, zx } = inertia;
  const { face, outline, tip, butt, afterHardening, minEdge } = knife.allowances;
  return {
    schema: "scantling/weigh-state/1",
    state,
    steel: {
      volumeMm3: volume,
      massG: mass,
      surfaceMm2: surface,
      centreMm: [centre.x, centre.y, centre.z],
      inertiaGMm2: { xx, yy, zz, xy, yz, zx },
    },
    ledgerMassG: ledgerMass,
    allowances: {
      afterHardeningMm: afterHardening,
      minEdgeMm: minEdge,
      ...(state === "forged" ? { faceMm: face, outlineMm: outline, tipMm: tip, buttMm: butt } : {}),
    },
    materials: materialsJson(job.spec),
    stations: stations.map(({ x, asked, section }) => ({
      xMm: x,
      thicknessMm: section.thickness,
      edgeThicknessMm: section.edgeThickness,
      heightMm: section.height,
      areaMm2: section.area,
      aboveEdge: section.aboveEdge.map(({ above, thickness }) => ({
        aboveMm: above,
        thicknessMm: thickness,
      })),
      ...(asked ? { contoursMm: section.contours.map((contour) => contour.map((p) => [p.x, p.y])) } : {}),
    })),
    findings: findings.map((finding) => findingJson(finding, job)),
  };
}
