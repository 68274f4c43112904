import { letterName } from "@scantling/geometry";
import { fitText } from "../../fit-text.js";
import { caliperCell, onOneLine } from "../../label-text.js";
import { SMALL } from "../../lettering-size.js";
import type { PatternModel } from "../../models/pattern-model.js";
import type { TableContent } from "../../table.js";

const KIND_WIDTH = 28;

/** Hole centres by coordinates, or undefined where there are none. */
export function holeTable(model: PatternModel): TableContent | undefined {
  if (model.holes.length === 0) return undefined;
  const write = (mm: number): string => onOneLine(caliperCell(mm, model.units));
  const slots = model.holes.some(({ slot }) => slot !== undefined);
  return {
    caption: "Hole centres from the heel: x to the tip, y to the spine",
    header: ["Hole", "x", "y", slots ? "Ø, width" : "Ø", "Kind"],
    rows: model.holes.flatMap(({ centre, diameter, kind, slot }, index) => {
      const words = slot === undefined ? kind : `${kind}, slot`;
      const row = [
        letterName(index),
        write(centre.x),
        write(centre.y),
        write(diameter),
        fitText(words, SMALL, KIND_WIDTH, 1).join(""),
      ];
      return slot === undefined ? [row] : [row, ["to", write(slot.to.x), write(slot.to.y), "", ""]];
    }),
  };
}
