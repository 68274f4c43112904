import { type HandleStock, letterName, type Path, pathBounds } from "@scantling/geometry";
import { fitText } from "../../fit-text.js";
import { caliperCell, type DualText, lengthText } from "../../label-text.js";
import { SMALL } from "../../lettering-size.js";
import type { SheetUnits } from "../../sheet-units.js";
import type { TableContent } from "../../table.js";
import { inTwoLines } from "../two-lines.js";
import { pairText, sawText } from "./figures.js";
import { frontFoot } from "./view.js";

type Units = SheetUnits;

const NAME_WIDTH = 34;

/** From the least to the most, in both units. */
const range = (least: DualText, most: DualText): DualText => ({
  main: `${least.main} to ${most.main}`,
  ...(least.other === undefined || most.other === undefined
    ? {}
    : { other: `${least.other} to ${most.other}` }),
});

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
  const row = (what: string, along: number, up: number, thick: DualText): string[][] =>
    inTwoLines([what, lengthText(along, units), lengthText(up, units), thick]);
  const saw = (what: string, thick: DualText): string[][] =>
    inTwoLines([what, sawText(blank.length, units), sawText(blank.height, units), thick]);
  const header = ["", "Length", "Height", "Thickness"];
  if (stock.kind === "block") {
    const { across, up } = sizeOf([stock.side]);
    const wide = sizeOf([stock.above]).up;
    return {
      caption: `Handle block, ${stock.section}`,
      header,
      rows: [
        ...saw("Saw to", sawText(blank.thickness, units)),
        ...row("Finished", across, up, caliperCell(wide, units)),
      ],
    };
  }
  const { across, up } = sizeOf(stock.pieces);
  const { most, least } = stock.thickness;
  const finished =
    most - least < 0.005
      ? caliperCell(most, units)
      : range(caliperCell(least, units), caliperCell(most, units));
  const pair = pairText(blank, units);
  return {
    caption: "Handle slabs, a pair",
    header,
    rows: [
      ...saw("Saw each to", sawText(blank.thickness, units)),
      ...(pair === undefined ? [] : saw("Or one for both", pair)),
      ...row("Finished", across, up, finished),
      ...(stock.liner === undefined
        ? []
        : row("Two liners", across, up, caliperCell(stock.liner.thickness, units))),
    ],
  };
}

/** Hole centres from the front end and the lowest place; undefined where there are none. */
export function stockHoles(stock: HandleStock, units: Units): TableContent | undefined {
  if (stock.holes.length === 0) return undefined;
  const from = frontFoot(stock.kind === "slabs" ? stock.pieces : [stock.side]);
  const place = ({ x, y }: { x: number; y: number }): DualText[] => [
    caliperCell(from.x - x, units),
    caliperCell(y - from.y, units),
  ];
  return {
    caption: "Holes from the front end and the lowest place",
    header: ["Hole", "Behind", "Above", "Ø", "Kind"],
    rows: stock.holes.flatMap(({ index, centre, diameter, kind, slot }) => [
      ...inTwoLines([letterName(index), ...place(centre), caliperCell(diameter, units), kind]),
      ...(slot === undefined ? [] : inTwoLines(["to", ...place(slot.to), "", ""])),
    ]),
  };
}

/** Bolsters, guard and pommel beside the wood; undefined where there are none. */
export function stockFittings(stock: HandleStock, units: Units): TableContent | undefined {
  if (stock.fittings.length === 0) return undefined;
  return {
    caption: "Fittings beside it, from the heel",
    header: ["", "Front", "Rear", "Height"],
    rows: stock.fittings.flatMap(({ name, front, rear, low, high }) =>
      inTwoLines([
        fitText(name, SMALL, NAME_WIDTH, 1).join(""),
        lengthText(front, units),
        lengthText(rear, units),
        caliperCell(high - low, units),
      ]),
    ),
  };
}
