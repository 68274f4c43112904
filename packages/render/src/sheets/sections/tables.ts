import { type FileUnits, formatAngle, formatArea, formatLength } from "@scantling/geometry/units";
import type { SectionStation, SectionsModel } from "../../models/sections-model.js";
import type { TableContent } from "../../table.js";
import { holeLetter } from "../pattern/view.js";
import { facesShown } from "./face-notes.js";

/** Heights above the edge at which thicknesses are listed, mm. */
const HEIGHTS = [5, 10, 20] as const;
const NONE = "–";

type Cell = (station: SectionStation, units: FileUnits) => string;

/** Two lines a station: in the sheet's own unit, and in the other one in brackets. */
function rowsOf(model: SectionsModel, cells: readonly Cell[]): string[][] {
  const { units, stations } = model;
  const other = units === "mm" ? "in" : "mm";
  return stations.flatMap((station, index) => {
    const second = cells.map((cell) => bracketed(cell(station, other), cell(station, units)));
    return [
      [holeLetter(index), ...cells.map((cell) => cell(station, units))],
      ...(second.some((text) => text !== "") ? [["", ...second]] : []),
    ];
  });
}

/** The other unit's figure; nothing where both are the same, as angles are. */
const bracketed = (text: string, main: string): string => (text === main ? "" : `[${text}]`);

const length =
  (value: (station: SectionStation) => number | undefined): Cell =>
  (station, units) => {
    const mm = value(station);
    return mm === undefined
      ? NONE
      : bare(formatLength(mm, units, units === "mm" ? {} : { resolution: 0.001 }));
  };

/** The unit stands in the caption. */
const bare = (text: string): string => text.replace(/^-/, "−").replace(/ mm$|"$/, "");

const above =
  (height: number): ((station: SectionStation) => number | undefined) =>
  ({ aboveEdge }) =>
    aboveEdge.find((one) => one.above === height)?.thickness;

/** Thicknesses and heights at the stations. */
export function thicknessTable(model: SectionsModel): TableContent {
  const swedged = model.stations.some(({ atSwedge }) => atSwedge !== undefined);
  return {
    caption: `Thicknesses ${unitsOf(model)}; ${HEIGHTS.join(", ")} mm up from the edge; behind the edge`,
    header: [
      ...["At", "x", "Height", "Spine"],
      ...(swedged ? ["With swedge"] : []),
      ...HEIGHTS.map((height) => `${height} up`),
      "Behind",
    ],
    rows: rowsOf(model, [
      length(({ x }) => x),
      length(({ height }) => height),
      length(({ thickness }) => thickness),
      ...(swedged ? [length(({ atSwedge }) => atSwedge)] : []),
      ...HEIGHTS.map((height) => length(above(height))),
      length(({ marks }) => (marks.right?.edgeBevel ?? marks.left?.edgeBevel)?.behind),
    ]),
  };
}

/** Bevels, edge and area at the stations; angles per side, square to the edge. */
export function bevelTable(model: SectionsModel): TableContent {
  const angle =
    (value: (station: SectionStation) => number | undefined): Cell =>
    (station) => {
      const rad = value(station);
      return rad === undefined ? NONE : formatAngle(rad, 0.1);
    };
  const area: Cell = (station, units) => formatArea(station.area, units).replace(/ (mm|in)²$/, "");
  const alike = model.stations.every(({ marks }) => facesShown(marks).length < 2);
  const square = model.units === "mm" ? "mm² [in²]" : "in² [mm²]";
  const sides: readonly (readonly ["right" | "left", string])[] = alike
    ? [["right", ""]]
    : [
        ["right", " right"],
        ["left", " left"],
      ];
  return {
    caption: `Bevels ${unitsOf(model)}, square to the edge, angles per side; areas in ${square}`,
    header: [
      "At",
      ...sides.map(([, word]) => `Bevel${word}`),
      ...sides.map(([, word]) => `Angle${word}`),
      ...sides.map(([, word]) => `Edge${word}`),
      "Area",
    ],
    rows: rowsOf(model, [
      ...sides.map(([side]) => length(({ marks }) => marks[side]?.bevelHeight)),
      ...sides.map(([side]) => angle(({ marks }) => marks[side]?.bevelAngle)),
      ...sides.map(([side]) => angle(({ marks }) => marks[side]?.sharpeningAngle)),
      area,
    ]),
  };
}

const unitsOf = ({ units }: SectionsModel): string => (units === "mm" ? "in mm [in]" : "in inches [mm]");
