import { letterName } from "@scantling/geometry";
import {
  type FileUnits,
  formatCaliper,
  formatDecimals,
  formatLength,
  mmToInches,
  radiansToDegrees,
  roundHalves,
} from "@scantling/geometry/units";
import type { SectionStation, SectionsModel } from "../../models/sections-model.js";
import { besideUnits, inDecimals, mainUnits, type SheetUnits } from "../../sheet-units.js";
import type { TableContent } from "../../table.js";
import { facesShown } from "./face-notes.js";

/** Heights above the edge at which thicknesses are listed, mm, the lowest first: what any of the stations has. */
const heightsOf = ({ stations }: SectionsModel): number[] =>
  [...new Set(stations.flatMap(({ aboveEdge }) => aboveEdge.map(({ above }) => above)))].sort(
    (a, b) => a - b,
  );

/** Such a height as it is called in the sheet's own unit, which the caption says: `5`, `3/16`. */
const heightName = (mm: number, units: SheetUnits): string =>
  bare(
    mainUnits(units) === "in" && inDecimals(units)
      ? formatLength(mm, "in", { resolution: 0.001 })
      : formatLength(mm, mainUnits(units), { remainder: false }),
  );
const NONE = "–";

type Cell = (station: SectionStation, units: FileUnits) => string;

interface Column {
  readonly head: string;
  readonly cell: Cell;
}

/** Two lines a station: in the sheet's own unit, and in the other one in brackets where it shows both. */
function rowsOf(model: SectionsModel, cells: readonly Cell[]): string[][] {
  const { units, stations } = model;
  const [main, other] = [mainUnits(units), besideUnits(units)];
  return stations.flatMap((station, index) => {
    const second =
      other === undefined ? [] : cells.map((cell) => bracketed(cell(station, other), cell(station, main)));
    return [
      [letterName(index), ...cells.map((cell) => cell(station, main))],
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
    return mm === undefined ? NONE : bare(formatCaliper(asMeant(mm), units));
  };

/**
 * A size of a section that was taken a hair beside its place, at a corner of the outline: without what that moved it by, so
 * that one size is rounded one way in all rows.
 */
const asMeant = (mm: number): number => roundHalves(mm / HAIR) * HAIR;
const HAIR = 1e-5;

/** The unit stands in the caption. */
const bare = (text: string): string => text.replace(/^-/, "−").replace(/ mm$|"$/, "");

const above =
  (height: number): ((station: SectionStation) => number | undefined) =>
  ({ aboveEdge }) =>
    aboveEdge.find((one) => one.above === height)?.thickness;

/** Thicknesses and heights at the stations. */
function thicknessColumns(model: SectionsModel): Column[] {
  const swedged = model.stations.some(({ atSwedge }) => atSwedge !== undefined);
  return [
    { head: "x", cell: length(({ x }) => x) },
    { head: "Height", cell: length(({ height }) => height) },
    { head: "Spine", cell: length(({ thickness }) => thickness) },
    ...(swedged ? [{ head: "Swedge", cell: length(({ atSwedge }) => atSwedge) }] : []),
    ...heightsOf(model).map((height) => ({
      head: `${heightName(height, model.units)} up`,
      cell: length(above(height)),
    })),
    {
      head: "Behind",
      cell: length(({ marks }) => (marks.right?.edgeBevel ?? marks.left?.edgeBevel)?.behind),
    },
  ];
}

/** Bevels, edge and area at the stations; angles per side, square to the edge. */
function bevelColumns(model: SectionsModel): Column[] {
  const angle =
    (value: (station: SectionStation) => number | undefined): Cell =>
    (station) => {
      const rad = value(station);
      return rad === undefined ? NONE : `${formatDecimals(radiansToDegrees(rad), 1)}°`;
    };
  const area: Cell = (station, units) =>
    units === "mm"
      ? formatDecimals(station.area, 1)
      : formatDecimals(mmToInches(mmToInches(station.area)), 3);
  const alike = model.stations.every(({ marks }) => facesShown(marks).length < 2);
  const sides: readonly (readonly ["right" | "left", string])[] = alike
    ? [["right", ""]]
    : [
        ["right", " right"],
        ["left", " left"],
      ];
  const each = (head: string, cellOf: (side: "right" | "left") => Cell): Column[] =>
    sides.map(([side, word]) => ({ head: `${head}${word}`, cell: cellOf(side) }));
  return [
    ...each("Bevel", (side) => length(({ marks }) => marks[side]?.bevelHeight)),
    ...each("Angle", (side) => angle(({ marks }) => marks[side]?.bevelAngle)),
    ...each("Edge", (side) => angle(({ marks }) => marks[side]?.sharpeningAngle)),
    { head: "Area", cell: area },
  ];
}

/** The figures of all stations in one table. */
export function wholeTable(model: SectionsModel): TableContent {
  const columns = [...thicknessColumns(model), ...bevelColumns(model)];
  return tableOf(
    model,
    `Sections ${unitsOf(model)}, areas in ${squareOf(model)}; ${BEHIND}; ${SQUARE}`,
    columns,
  );
}

/** The same in two tables, for narrow paper. */
export const splitTables = (model: SectionsModel): TableContent[] => [
  tableOf(model, `Thicknesses ${unitsOf(model)}; ${BEHIND}`, thicknessColumns(model)),
  tableOf(model, `Bevels ${unitsOf(model)}, ${SQUARE}; areas in ${squareOf(model)}`, bevelColumns(model)),
];

const BEHIND = "Behind: over the edge bevel";
const SQUARE = "bevels square to the edge";
const squareOf = ({ units }: SectionsModel): string => {
  const [main, other] = mainUnits(units) === "mm" ? ["mm²", "in²"] : ["in²", "mm²"];
  return besideUnits(units) === undefined ? main : `${main} [${other}]`;
};

/** What the heads of the columns mean, in short lines. */
export const columnWords = (model: SectionsModel): string[] => [
  ...upWords(model),
  ...(model.stations.some(({ atSwedge }) => atSwedge !== undefined)
    ? ["Swedge: thickness that it leaves at the spine."]
    : []),
];

function upWords(model: SectionsModel): string[] {
  const heights = heightsOf(model).map((height) => heightName(height, model.units));
  const unit = mainUnits(model.units) === "mm" ? "mm" : "inches";
  return heights.length === 0
    ? []
    : [
        `${heights.join(", ")} up: ${unit === "mm" ? "thickness so many mm" : "thickness, inches"} above the edge.`,
      ];
}

const tableOf = (model: SectionsModel, caption: string, columns: readonly Column[]): TableContent => ({
  caption,
  header: ["At", ...columns.map(({ head }) => head)],
  rows: rowsOf(
    model,
    columns.map(({ cell }) => cell),
  ),
});

const unitsOf = ({ units }: SectionsModel): string => {
  const [main, other] = mainUnits(units) === "mm" ? ["in mm", "in"] : ["in inches", "mm"];
  return besideUnits(units) === undefined ? main : `${main} [${other}]`;
};
