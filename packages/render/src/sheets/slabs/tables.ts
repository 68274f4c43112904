import { type HandleStock, type Path, pathBounds } from "@scantling/geometry";
import { fitText } from "../../fit-text.js";
import { caliperText, lengthText, onOneLine } from "../../label-text.js";
import { SMALL } from "../../lettering-size.js";
import type { SheetUnits } from "../../sheet-units.js";
import type { TableContent } from "../../table.js";
import { holeLetter } from "../pattern/view.js";
import { frontFoot } from "./view.js";

type Units = SheetUnits;

const NAME_WIDTH = 34;

const tape = (mm: number, units: Units): string => onOneLine(lengthText(mm, units));
const caliper = (mm: number, units: Units): string => onOneLine(caliperText(mm, units));

const sizeOf = (paths: readonly Path[]): { across: number; up: number } => {
  const boxes = paths.map(pathBounds);
  return {
    across: Math.max(...boxes.map((box) => box.maxX)) - Math.min(...boxes.map((box) => box.minX)),
    up: Math.max(...boxes.map((box) => box.maxY)) - Math.min(...boxes.map((box) => box.minY)),
  };
};

/** What to saw, and what comes out of it. */
export function stockTable(stock: HandleStock, units: Units): TableContent {
  const { blank } = stock;
  const row = (what: string, along: number, up: number, thick: string): string[] => [
    what,
    tape(along, units),
    tape(up, units),
    thick,
  ];
  const header = ["", "Length", "Height", "Thickness"];
  if (stock.kind === "block") {
    const { across, up } = sizeOf([stock.side]);
    const wide = sizeOf([stock.above]).up;
    return {
      caption: `Handle block, ${stock.section}`,
      header,
      rows: [
        row("Saw to", blank.length, blank.height, tape(blank.thickness, units)),
        row("Finished", across, up, caliper(wide, units)),
      ],
    };
  }
  const { across, up } = sizeOf(stock.pieces);
  const { most, least } = stock.thickness;
  const finished =
    most - least < 0.005 ? caliper(most, units) : `${caliper(least, units)} to ${caliper(most, units)}`;
  const matched = blank.bookMatched;
  return {
    caption: "Handle slabs, a pair",
    header,
    rows: [
      row("Saw each to", blank.length, blank.height, tape(blank.thickness, units)),
      ...(matched === undefined
        ? []
        : [row("Or one block, sawn in two", blank.length, blank.height, tape(matched, units))]),
      row("Finished", across, up, finished),
      ...(stock.liner === undefined
        ? []
        : [row("Liners, two, same outline", across, up, caliper(stock.liner.thickness, units))]),
    ],
  };
}

/** Hole centres from the front end and the lowest place; undefined where there are none. */
export function stockHoles(stock: HandleStock, units: Units): TableContent | undefined {
  if (stock.holes.length === 0) return undefined;
  const from = frontFoot(stock.kind === "slabs" ? stock.pieces : [stock.side]);
  const place = ({ x, y }: { x: number; y: number }): string[] => [
    caliper(from.x - x, units),
    caliper(y - from.y, units),
  ];
  return {
    caption: "Hole centres behind the front end, above the lowest place",
    header: ["Hole", "Behind", "Above", "Ø", "Kind"],
    rows: stock.holes.flatMap(({ centre, diameter, kind, slot }, index) => [
      [holeLetter(index), ...place(centre), caliper(diameter, units), kind],
      ...(slot === undefined ? [] : [["to", ...place(slot.to), "", ""]]),
    ]),
  };
}

/** Bolsters, guard and pommel beside the wood; undefined where there are none. */
export function stockFittings(stock: HandleStock, units: Units): TableContent | undefined {
  if (stock.fittings.length === 0) return undefined;
  return {
    caption: "Fittings beside it, from the heel",
    header: ["", "Front", "Rear", "Height"],
    rows: stock.fittings.map(({ name, front, rear, low, high }) => [
      fitText(name, SMALL, NAME_WIDTH, 1).join(""),
      tape(front, units),
      tape(rear, units),
      caliper(high - low, units),
    ]),
  };
}
