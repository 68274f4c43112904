import { lengthText, onOneLine } from "../../label-text.js";
import type { PatternHeight, PatternModel } from "../../models/pattern-model.js";
import type { TableContent } from "../../table.js";

/** Sizes of the outline that may be drawn as dimensions or written in the table of sizes. */
export type SizeName =
  | "tang-front"
  | "tang-middle"
  | "tang-butt"
  | "front"
  | "tip"
  | "greatest"
  | "bevel"
  | "straight-edge";

interface Row {
  readonly name: SizeName;
  readonly words: string;
  readonly size: number;
  readonly x?: number;
}

/** The sizes that no dimension on the sheet shows, or undefined where there are none. */
export function sizeTable(model: PatternModel, shown: ReadonlySet<SizeName>): TableContent | undefined {
  const rows = rowsOf(model).filter((row) => !shown.has(row.name));
  if (rows.length === 0) return undefined;
  const write = (mm: number): string => onOneLine(lengthText(mm, model.units));
  return {
    caption: "Heights, and where: x from the heel to the tip",
    header: ["Height of", "Size", "x"],
    rows: rows.map(({ words, size, x }) => [words, write(size), x === undefined ? "" : write(x)]),
  };
}

function rowsOf(model: PatternModel): Row[] {
  const { tangHeights } = model;
  const row = (name: SizeName, words: string, height: PatternHeight | undefined): Row[] =>
    height === undefined ? [] : [{ name, words, size: height.high - height.low, x: height.x }];
  return [
    ...row("tang-front", "Tang, front", tangHeights?.front),
    ...row("tang-middle", "Tang, middle", tangHeights?.middle),
    ...row("tang-butt", "Tang, butt", tangHeights?.butt),
    ...row("front", "Blade, front", model.frontHeight),
    ...row("tip", "Tip over heel", model.tipHeight),
    ...row("greatest", "Spine, greatest", model.greatestHeight),
    ...row("bevel", "Bevel", model.bevelHeight),
    ...(model.straightEdge === undefined
      ? []
      : [{ name: "straight-edge" as const, words: "Straight edge, length", size: model.straightEdge }]),
  ];
}
