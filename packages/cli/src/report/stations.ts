import { type FaceFigures, type StationFigures, sectionAt, stationFigures } from "@scantling/geometry";
import { type FileUnits, formatArea, formatCaliper, radiansToDegrees } from "@scantling/geometry/units";
import type { Measured } from "../measure.js";
import type { ReportStation } from "../stations.js";
import { fixed, lengthText } from "./figures.js";
import { layOutTable, REPORT_WIDTH } from "./layout.js";

/** Columns of a table of stations; fewer where they would not fit on the page. */
const MOST_COLUMNS = 5;

/** What a caliper and a protractor find at stations of the finished knife, as tables for people. */
export function stationLines({ knife, job }: Measured, stations: readonly ReportStation[]): string[] {
  const figures = stations.map(({ x }) => stationFigures(knife, x));
  const tables = (columns: number): string[] =>
    figures.flatMap((_, i) =>
      i % columns > 0
        ? []
        : [...(i > 0 ? [""] : []), ...table(figures.slice(i, i + columns), knife.laws.symmetric, job.units)],
    );
  for (let columns = MOST_COLUMNS; columns > 1; columns--) {
    const lines = tables(columns);
    if (lines.every((line) => line.length <= REPORT_WIDTH)) return lines;
  }
  return tables(1);
}

type Cell = (station: StationFigures) => string;

function table(columns: readonly StationFigures[], symmetric: boolean, units: FileUnits): string[] {
  const row = (label: string, cell: Cell): string[] => [label, ...columns.map(cell)];
  const sides = symmetric ? (["right"] as const) : (["right", "left"] as const);
  const ofFace = (label: string, show: (face: FaceFigures) => string): string[][] =>
    sides.map((side) =>
      row(symmetric ? label : `${label}, ${side}`, (station) => {
        const face = station[side];
        return face === undefined ? "–" : show(face);
      }),
    );
  const swedged = columns.some(({ atSwedge }) => atSwedge !== undefined);
  const heights = columns.flatMap(({ aboveEdge }) => aboveEdge.map(({ above }) => above));
  const rows = [
    row("ahead of the heel", ({ x }) => lengthText(x, units)),
    row(swedged ? "thickness, no swedge" : "thickness", ({ thickness }) => formatCaliper(thickness, units)),
    row("spine with swedge", ({ atSwedge }) =>
      atSwedge === undefined ? "–" : formatCaliper(atSwedge, units),
    ),
    row("height", ({ height }) => lengthText(height, units)),
    row("area", ({ area }) => formatArea(area, units)),
    ...ofFace("bevel height", ({ bevelHeight }) => lengthText(bevelHeight, units)),
    ...ofFace("bevel angle", ({ bevelAngle }) => `${fixed(radiansToDegrees(bevelAngle), 1)}°`),
    ...[...new Set(heights)]
      .sort((a, b) => a - b)
      .map((above) =>
        row(
          units === "mm"
            ? `${above} mm above edge`
            : `${above} mm above edge (${formatCaliper(above, units)})`,
          ({ aboveEdge }) => {
            const found = aboveEdge.find((one) => one.above === above);
            return found === undefined ? "–" : formatCaliper(found.thickness, units);
          },
        ),
      ),
    ...ofFace(symmetric ? "edge-bevel width" : "edge bevel", ({ edgeBevel }) =>
      edgeBevel === undefined ? "–" : formatCaliper(edgeBevel.width, units),
    ),
    row("behind the edge", ({ right, left }) => {
      const bevel = right?.edgeBevel ?? left?.edgeBevel;
      return bevel === undefined ? "–" : formatCaliper(bevel.behind, units);
    }),
  ];
  return layOutTable(
    rows.filter((cells) => cells.slice(1).some((cell) => cell !== "–")),
    ["left", ...columns.map(() => "right" as const)],
  );
}

/** The same for programs, with the section itself at stations that were asked for: contours of [z, y]. mm, mm², degrees. */
export function stationsJson({ knife }: Measured, stations: readonly ReportStation[]): unknown {
  return stations.map(({ x, asked }) => {
    const figures = stationFigures(knife, x);
    const { thickness, atSwedge, height, area, edgeThickness, aboveEdge, right, left } = figures;
    return {
      xMm: x,
      thicknessMm: thickness,
      atSwedgeMm: atSwedge ?? null,
      heightMm: height,
      areaMm2: area,
      edgeThicknessMm: edgeThickness ?? null,
      aboveEdge: aboveEdge.map((one) => ({ aboveMm: one.above, thicknessMm: one.thickness })),
      right: right === undefined ? null : faceJson(right),
      left: left === undefined ? null : faceJson(left),
      ...(asked
        ? { contoursMm: sectionAt(knife, x).contours.map((contour) => contour.map((p) => [p.x, p.y])) }
        : {}),
    };
  });
}

function faceJson({ bevelHeight, bevelAngle, sharpeningAngle, edgeBevel }: FaceFigures): unknown {
  return {
    bevelHeightMm: bevelHeight,
    bevelAngleDeg: radiansToDegrees(bevelAngle),
    sharpeningAngleDeg: sharpeningAngle === undefined ? null : radiansToDegrees(sharpeningAngle),
    edgeBevel:
      edgeBevel === undefined
        ? null
        : { heightMm: edgeBevel.height, widthMm: edgeBevel.width, behindMm: edgeBevel.behind },
  };
}
