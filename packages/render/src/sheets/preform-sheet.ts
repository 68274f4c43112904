import { boxOfItems } from "../box.js";
import { cleanText } from "../clean-text.js";
import type { DrawingItem } from "../drawing.js";
import { onOneLine } from "../label-text.js";
import { steelColumns } from "../lay-out/footprint.js";
import { type Part, tablePart } from "../lay-out/part.js";
import { type SheetContent, viewOf } from "../lay-out/sheet-content.js";
import type { PreformModel } from "../models/preform-model.js";
import { silhouetteOf } from "../silhouette.js";
import { orderFields, orderTitle } from "./order-words.js";
import { noteParts } from "./pattern/note-part.js";
import { preformDimensions } from "./preform/dimensions.js";
import { ruleText } from "./preform/figures.js";
import { lineLabels, preformLabels } from "./preform/labels.js";
import { handleTable, marksTable, stationTable } from "./preform/tables.js";
import { hotOutline, hotSizeOf, preformView } from "./preform/view.js";
import { preformNotes, temperatureWords } from "./preform/words.js";
import { printWords } from "./words.js";

/**
 * The flat preform at true size, to hold the bar against before the bevels are hammered in: hot as the wide line, cold
 * dashed in it, with the marks and the sections of the forge card.
 *
 * @example
 * const pages = layOutSheet(preformContents(model), { kind: "own" });
 */
export function preformContents(model: PreformModel): SheetContent[] {
  const hot = hotOutline(model);
  const silhouette = silhouetteOf(hot);
  const items = preformView(model, hot, silhouette);
  const { minY } = boxOfItems(items) ?? silhouette.bounds;
  const lines = lineLabels(model, hot, minY);
  const box = boxOfItems([...items, ...lines]) ?? silhouette.bounds;
  const drawn: DrawingItem[] = [
    { kind: "group", name: "preform", items },
    { kind: "group", name: "labels", items: [...lines, ...preformLabels(model, silhouette)] },
    { kind: "group", name: "dimensions", items: preformDimensions(model, silhouette, box) },
  ];
  const at = hotSizeOf(model);
  const along = [0, model.shoulder, ...(model.heel === undefined ? [] : [model.heel]), model.length];
  const features = [0, model.shoulder, model.length].map((x) => ({ x: at(x), y: 0 }));
  const ends = along.map(at).flatMap((x) => [
    { x, y: silhouette.topAt(x) },
    { x, y: silhouette.bottomAt(x) },
  ]);
  const view = viewOf(drawn, { solid: steelColumns(silhouette), features, ends });
  return (["wide", "narrow"] as const).map(
    (notes): SheetContent => ({
      name: "preform",
      units: model.units,
      trueSize: true,
      title: orderTitle(model, "true-size preform"),
      describe: ({ paper }) => `${description(model)} ${printWords(paper)}.`,
      fields: (page) => {
        const shows = [
          ["Steel", model.steel],
          ["Preform; cold dashed", `hot, ${temperatureWords(model)}`],
        ] as const;
        return orderFields(model, shows, page);
      },
      view,
      parts: partsOf(model, notes),
    }),
  );
}

/** What is laid off on the view first: then the notes have to look for room. */
const partsOf = (model: PreformModel, notes: "wide" | "narrow"): Part[] => [
  tablePart("stations", stationTable(model)),
  tablePart("marks", marksTable(model)),
  tablePart("handle", handleTable(model)),
  ...noteParts("notes", preformNotes(model), notes),
];

function description(model: PreformModel): string {
  const write = (mm: number): string => onOneLine(ruleText(mm, model.units));
  return cleanText(
    `The blade's preform before its bevels, lying flat, butt end to the left, spine side up. The wide line is its size at ${temperatureWords(model)}, the dashed one its size when cold: ${write(model.length)} overall, the shoulder ${write(model.shoulder)} from the butt end.`,
  );
}
