import { boxOfItems } from "../box.js";
import { cleanText } from "../clean-text.js";
import type { DrawingItem } from "../drawing.js";
import { steelColumns } from "../lay-out/footprint.js";
import { tablePart } from "../lay-out/part.js";
import { type SheetContent, viewOf } from "../lay-out/sheet-content.js";
import type { DrillingModel } from "../models/drilling-model.js";
import { silhouetteOf } from "../silhouette.js";
import { drillingDimensions } from "./drilling/dimensions.js";
import { placeTable, spacingTable } from "./drilling/tables.js";
import { drillingLabels, drillingView, viewEnd } from "./drilling/view.js";
import { drillingNotes } from "./drilling/words.js";
import { orderFields, orderTitle } from "./order-words.js";
import { noteParts } from "./pattern/note-part.js";
import { sharedCentreLine } from "./pattern/view.js";
import { printWords } from "./words.js";

/**
 * The drill layout at true size: the tang, or as much of the knife as has holes, with their centres, and a table that lays
 * each off from two edges.
 *
 * @returns none where nothing is drilled.
 *
 * @example
 * const pages = layOutSheet(drillingContents(model), { kind: "own" });
 */
export function drillingContents(model: DrillingModel): SheetContent[] {
  const count = model.holes.length;
  if (count === 0) return [];
  const whole = silhouetteOf(model.outline);
  const end = viewEnd(model, whole.bounds);
  const silhouette = { ...whole, bounds: { ...whole.bounds, maxX: Math.min(whole.bounds.maxX, end) } };
  const shared = sharedCentreLine(model.holes, silhouette);
  const items = drillingView(model, silhouette, shared, end);
  const box = boxOfItems(items) ?? silhouette.bounds;
  const labels = drillingLabels(model, silhouette, box);
  const drawn: DrawingItem[] = [
    { kind: "group", name: "tang", items },
    { kind: "group", name: "labels", items: labels },
    {
      kind: "group",
      name: "dimensions",
      items: drillingDimensions(model, silhouette, [...items, ...labels], shared !== undefined),
    },
  ];
  // The table of centres is worked from beside the drawing: rather than it the columns get narrow.
  return VERSIONS.map(
    ({ table, notes }): SheetContent => ({
      name: "drilling",
      units: model.units,
      trueSize: true,
      title: orderTitle(model, "true-size drill layout"),
      describe: ({ paper }) =>
        cleanText(
          `${count === 1 ? "One hole" : `${count} holes`} in the steel at true size, butt end to the left, edge down, each centre laid off from two edges in a table. ${printWords(paper)}; check bars of 100 mm and 4 in stand on it, across and up.`,
        ),
      fields: (page) =>
        orderFields(
          model,
          [
            ["Steel", model.steel],
            ["Drill layout, outline", model.state],
          ],
          page,
        ),
      view: viewOf(drawn, {
        solid: steelColumns(silhouette),
        features: model.holes.flatMap(({ places }) => places.map(({ centre }) => centre)),
      }),
      parts: [
        tablePart("places", placeTable(model, table)),
        tablePart("spacing", spacingTable(model)),
        ...noteParts("notes", drillingNotes(model), notes),
      ],
    }),
  );
}

/** How wide its parts are: as they read best, and narrower where that leaves one of them another page. */
const VERSIONS = [
  { table: "wide", notes: "wide" },
  { table: "wide", notes: "narrow" },
  { table: "narrow", notes: "narrow" },
] as const;
