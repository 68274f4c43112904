import { invariant, type Vec2 } from "@scantling/geometry";
import { boxOfItems } from "../box.js";
import type { Drawing, DrawingItem } from "../drawing.js";
import { steelColumns } from "../lay-out/footprint.js";
import { onSmallestPaper } from "../lay-out/one-page.js";
import { type Part, tablePart } from "../lay-out/part.js";
import { type SheetContent, viewOf } from "../lay-out/sheet-content.js";
import type { PatternModel } from "../models/pattern-model.js";
import { papersFor } from "../paper.js";
import { type Silhouette, silhouetteOf } from "../silhouette.js";
import { patternDimensions } from "./pattern/dimensions.js";
import { facePart } from "./pattern/face-part.js";
import { crossTable, fullerTable } from "./pattern/ground-tables.js";
import { holeTable } from "./pattern/hole-table.js";
import { patternLabels } from "./pattern/labels.js";
import { noteParts } from "./pattern/note-part.js";
import { placementOf } from "./pattern/placement.js";
import { sizeTable } from "./pattern/sizes.js";
import { patternView } from "./pattern/view.js";
import { cutLineWords, lineWords, patternDescription, patternFields, patternTitle } from "./pattern/words.js";

/**
 * The true-size pattern of a blade: one page of the smallest standard paper that holds it, blade level, tip to the
 * right, edge down, with 6 mm left white about it. Only where no paper is large enough is the page one of its own.
 *
 * The curves of the model are drawn as they are, moved by whole mm only; nothing is measured on the drawing. Where
 * labels are many they are moved apart or turned upright, and the page grows: lettering is never set smaller.
 *
 * @example
 * const svg = await toSvg(patternSheet(model));
 */
export function patternSheet(model: PatternModel): Drawing {
  return onSmallestPaper(patternContents(model), papersFor(model.units));
}

/** With every dimension that has a place; no wider than it must be; with the lowest tables. */
const VERSIONS = [
  { roomy: true, beside: false },
  { roomy: false, beside: false },
  { roomy: false, beside: true },
] as const;

/**
 * The pattern with every dimension that has a place of its own, and with more of them in the table.
 *
 * Its name is "pattern", or "pattern-mirrored" where the left face is seen; with a line to cut along "-offset" is added.
 *
 * @example
 * const pages = layOutSheet(patternContents({ ...model, mirror: true }), { kind: "own" });
 */
export function patternContents(model: PatternModel): SheetContent[] {
  const silhouette = silhouetteOf(model.outline);
  const solid = steelColumns(silhouette);
  const { bounds } = silhouette;
  invariant(
    Math.abs(bounds.maxX - bounds.minX - model.overallLength) < 0.005,
    "the overall length is that of the outline",
  );
  const items = patternView(model, silhouette);
  const box = boxOfItems(items) ?? bounds;
  const tip = model.tipHeight;
  const features = [
    ...model.holes.map(({ centre }) => centre),
    { x: bounds.maxX, y: tip?.high ?? model.frontHeight?.low ?? 0 },
  ];
  const ends = endsOf(model, silhouette);
  const placement = placementOf(model);
  const lineNote = cutLineWords(model);
  const versions = VERSIONS.map((version) =>
    patternDimensions(model, { silhouette, items, box, ...version }),
  );
  // Those that show the same further sizes are the same drawing.
  const shownBy = versions.map(({ shown }) => shown.join());
  const distinct = versions.filter((_, index) => shownBy.indexOf(shownBy[index] ?? "") === index);
  return distinct.map((dimensions) => {
    const drawn: DrawingItem[] = [
      { kind: "group", name: "knife", items },
      { kind: "group", name: "labels", items: patternLabels(model, silhouette, box) },
      { kind: "group", name: "dimensions", items: dimensions.items },
    ];
    return {
      name: nameOf(model),
      units: model.units,
      trueSize: true,
      ...(model.cutLine === undefined ? {} : { trueLine: "True size is the middle of each line." }),
      ...(lineNote === undefined ? {} : { lineNote }),
      title: patternTitle(model),
      describe: (page) => patternDescription(model, page),
      fields: (page) => patternFields(model, page),
      view: viewOf(drawn.map(placement.item), {
        solid: solid.map(placement.box),
        features: features.map(placement.point),
        ends: ends.map(placement.point),
      }),
      parts: [
        ...facePart(model),
        ...noteParts("lines", lineWords(model)),
        ...tablesOf(model, new Set(dimensions.shown)),
      ],
    };
  });
}

const nameOf = ({ mirror, cutLine }: PatternModel): string =>
  ["pattern", ...(mirror === true ? ["mirrored"] : []), ...(cutLine === undefined ? [] : ["offset"])].join(
    "-",
  );

/** Where no joint is laid if that can be: the front, the heel, the shoulder, the butt, slots; the model's own mm. */
function endsOf(model: PatternModel, { bounds, topAt, bottomAt }: Silhouette): Vec2[] {
  const both = (x: number): Vec2[] => [
    { x, y: topAt(x) },
    { x, y: bottomAt(x) },
  ];
  const { frontHeight, tangHeights } = model;
  return [
    ...model.holes.flatMap(({ slot }) => (slot === undefined ? [] : [slot.to])),
    ...(frontHeight === undefined ? [] : [{ x: frontHeight.x, y: frontHeight.high }]),
    ...[0, model.handleFront, bounds.minX].flatMap(both),
    ...(tangHeights === undefined ? [] : both(tangHeights.butt.x)),
  ];
}

function tablesOf(model: PatternModel, shown: Parameters<typeof sizeTable>[1]): Part[] {
  const tables = [
    ["sizes", sizeTable(model, shown)],
    ["holes", holeTable(model)],
    ["fullers", fullerTable(model)],
    ["swedge-and-fittings", crossTable(model)],
  ] as const;
  return tables.flatMap(([name, table]) => (table === undefined ? [] : [tablePart(name, table)]));
}
