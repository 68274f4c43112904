import { letterName } from "@scantling/geometry";
import { fitText } from "../../fit-text.js";
import { caliperCell, type DualText, onOneLine } from "../../label-text.js";
import { SMALL } from "../../lettering-size.js";
import type { DrillingModel } from "../../models/drilling-model.js";
import type { TableContent } from "../../table.js";
import { inTwoLines } from "../two-lines.js";

/** Widest words that a column may hold, mm. */
const WORDS_WIDTH = 36;

const short = (words: string): string => fitText(words, SMALL, WORDS_WIDTH, 1).join("");

/**
 * Every centre from two edges: along from an end, and in from the edges above and below it.
 *
 * @param width - A narrow one has the other unit in a line below.
 */
export function placeTable({ holes, units }: DrillingModel, width: "wide" | "narrow" = "wide"): TableContent {
  const write = (mm: number): DualText => caliperCell(mm, units);
  const lay = (cells: readonly (string | DualText)[]): string[][] =>
    width === "narrow"
      ? inTwoLines(cells)
      : [cells.map((cell) => (typeof cell === "string" ? cell : onOneLine(cell)))];
  const drills = holes.some(({ drill }) => drill !== undefined);
  return {
    caption:
      width === "narrow"
        ? "Centres from two edges: along from an end, then square across"
        : "Centres from two edges: along from an end, then square across from the edge over or under the centre",
    header: ["Hole", "Along", "from the", "From top", "From bottom", "Ø", ...(drills ? ["Drill"] : [])],
    rows: holes.flatMap(({ places, diameter, drill }, index) =>
      places.flatMap((place, part) =>
        lay([
          part === 0 ? letterName(index) : "to",
          write(place.along),
          place.end,
          write(place.fromTop),
          write(place.fromBottom),
          part === 0 ? write(diameter) : "",
          ...(drills ? [part === 0 ? short(drill ?? "–") : ""] : []),
        ]),
      ),
    ),
  };
}

/** What each hole is, how much steel it leaves to the edge, how far the next one is. */
export function spacingTable({ holes, units }: DrillingModel): TableContent {
  const write = (mm: number): string => onOneLine(caliperCell(mm, units));
  return {
    caption: "Steel beside the holes, and from centre to centre toward the tip",
    header: ["Hole", "Kind", "Rim to nearest edge", "To the next centre"],
    rows: holes.map(({ kind, slot, rimToEdge, pitch }, index) => [
      letterName(index),
      short(slot === undefined ? kind : `${kind}, slot`),
      write(rimToEdge),
      pitch === undefined ? "–" : write(pitch),
    ]),
  };
}
