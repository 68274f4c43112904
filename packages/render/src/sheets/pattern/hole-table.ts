import { fitText } from "../../fit-text.js";
import { caliperText, onOneLine } from "../../label-text.js";
import { SMALL } from "../../lettering-size.js";
import type { PatternModel } from "../../pattern-model.js";
import type { TableContent } from "../../table.js";
import { holeLetter } from "./view.js";

const KIND_WIDTH = 28;

/** Hole centres by coordinates, or undefined where there are none. */
export function holeTable(model: PatternModel): TableContent | undefined {
  if (model.holes.length === 0) return undefined;
  const write = (mm: number): string => onOneLine(caliperText(mm, model.units));
  return {
    caption: "Hole centres from the heel: x to the tip, y to the spine",
    header: ["Hole", "x", "y", "Ø", "Kind"],
    rows: model.holes.map((hole, index) => [
      holeLetter(index),
      write(hole.centre.x),
      write(hole.centre.y),
      write(hole.diameter),
      fitText(hole.kind, SMALL, KIND_WIDTH, 1).join(""),
    ]),
  };
}
