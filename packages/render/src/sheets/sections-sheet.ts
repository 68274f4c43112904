import { letterName } from "@scantling/geometry";
import type { Part } from "../lay-out/part.js";
import { tablePart } from "../lay-out/part.js";
import type { SheetContent } from "../lay-out/sheet-content.js";
import type { SectionsModel } from "../models/sections-model.js";
import { edgePart } from "./sections/edge-part.js";
import { keyPart } from "./sections/key-part.js";
import { stationPart } from "./sections/station-part.js";
import { splitTables, wholeTable } from "./sections/tables.js";
import { sectionsDescription, sectionsFields, sectionsTitle } from "./sections/words.js";

/**
 * Sections square to the knife's length: a key to where they are, a table of their figures, and some of them at true size
 * and enlarged with their dimensions, layers still to come off around them; at one or two places the edge by itself.
 *
 * With one table or, for narrow paper, with two. The curves of the model are drawn as they are, made larger only; what is hatched is cut at the curves themselves.
 *
 * @example
 * layOutSheet(sectionsContents(model), { kind: "paper", paper: paperNamed("A4") });
 */
export function sectionsContents(model: SectionsModel): SheetContent[] {
  const drawn = model.stations
    .map((station, index) => ({ station, letter: letterName(index) }))
    .filter(({ station }) => station.drawn);
  const sections = drawn.map(({ station, letter }) => stationPart(station, letter, model.units));
  const edges = drawn.flatMap(({ station, letter }): Part[] => {
    const edge = station.edgeDetail ? edgePart(station, letter, model.units) : undefined;
    return edge === undefined ? [] : [edge];
  });
  return [[wholeTable(model)], splitTables(model)].map((tables) => ({
    name: "sections",
    trueSize: true,
    trueLine: "Of the sections, those marked 1 : 1 are true size.",
    title: sectionsTitle(model),
    describe: (page) => sectionsDescription(model, page),
    fields: (page) => sectionsFields(model, page),
    parts: [
      keyPart(model),
      ...tables.map((table, index) => tablePart(`figures-${index + 1}`, table)),
      ...sections,
      ...edges,
    ],
  }));
}
