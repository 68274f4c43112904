import { type Bounds, invariant } from "@scantling/geometry";
import { boxOfItems } from "../box.js";
import { type Drawing, type DrawingItem, moveItem, rectangle } from "../drawing.js";
import { type PaperName, papersFor } from "../paper.js";
import type { PatternModel } from "../pattern-model.js";
import { TITLE_BLOCK_WIDTH, titleBlock, titleBlockHeight } from "../title-block.js";
import { type Arrangement, arrange, CONTENT_MARGIN, type Contents, FRAME_MARGIN } from "./pattern/arrange.js";
import { patternDimensions } from "./pattern/dimensions.js";
import { footprintOf, steelColumns } from "./pattern/footprint.js";
import { crossTable, fullerTable } from "./pattern/ground-tables.js";
import { holeTable } from "./pattern/hole-table.js";
import { patternLabels } from "./pattern/labels.js";
import { noteAndLevelBars, type Part, tablePart, uprightBars } from "./pattern/parts.js";
import { type Silhouette, silhouetteOf } from "./pattern/silhouette.js";
import { sizeTable } from "./pattern/sizes.js";
import { patternView } from "./pattern/view.js";
import { patternFields, patternTexts } from "./pattern/words.js";

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
  const silhouette = silhouetteOf(model.outline);
  const steel = steelColumns(silhouette);
  const sets = [true, false].map((roomy) => contentsOf(model, silhouette, steel, roomy));
  const { page, set, arrangement } = onPaper(model, sets) ?? onOwnPage(sets);
  const { origin, corners } = arrangement;
  const right = page.width - FRAME_MARGIN;
  const frame = rectangle(
    "frame",
    { x: FRAME_MARGIN, y: FRAME_MARGIN },
    { x: right, y: page.height - FRAME_MARGIN },
  );
  const title = titleBlock(
    patternFields(model, page.paper),
    { x: right, y: FRAME_MARGIN },
    TITLE_BLOCK_WIDTH,
  );
  const surround: DrawingItem[] = [
    frame,
    ...set.parts.map((part, index): DrawingItem => {
      const corner = corners[index];
      invariant(corner !== undefined, "every part has found its place");
      return { kind: "group", name: part.name, items: part.items(corner) };
    }),
    { kind: "group", name: "title-block", items: title },
  ];
  const items = [...surround.map((item) => moveItem(item, -origin.x, -origin.y)), ...set.drawn];
  return { ...page, origin, ...patternTexts(model, page.paper), items };
}

interface Page {
  readonly width: number;
  readonly height: number;
  readonly paper?: PaperName;
}

/** What goes on the sheet, with the knife as it will be drawn. */
interface SheetContents extends Contents {
  readonly drawn: readonly DrawingItem[];
}

interface Layout {
  readonly page: Page;
  readonly set: SheetContents;
  readonly arrangement: Arrangement;
}

/** @param roomy - with every dimension that has a place of its own; else more of them stand in the table. */
function contentsOf(
  model: PatternModel,
  silhouette: Silhouette,
  steel: readonly Bounds[],
  roomy: boolean,
): SheetContents {
  const { bounds } = silhouette;
  invariant(
    Math.abs(bounds.maxX - bounds.minX - model.overallLength) < 0.005,
    "the overall length is that of the outline",
  );
  const items = patternView(model, silhouette);
  const box = boxOfItems(items) ?? bounds;
  const dimensions = patternDimensions(model, { silhouette, items, box, roomy });
  const drawn: DrawingItem[] = [
    { kind: "group", name: "knife", items },
    { kind: "group", name: "labels", items: patternLabels(model, silhouette, box) },
    { kind: "group", name: "dimensions", items: dimensions.items },
  ];
  const fields = patternFields(model, undefined);
  return {
    drawn,
    knife: [...steel, ...footprintOf(drawn)],
    zone: boxOfItems(drawn) ?? bounds,
    title: { width: TITLE_BLOCK_WIDTH, height: titleBlockHeight(fields, TITLE_BLOCK_WIDTH) },
    parts: partsOf(model, new Set(dimensions.shown)),
  };
}

function partsOf(model: PatternModel, shown: Parameters<typeof sizeTable>[1]): Part[] {
  const tables = [
    ["sizes", sizeTable(model, shown)],
    ["holes", holeTable(model)],
    ["fullers", fullerTable(model)],
    ["swedge-and-fittings", crossTable(model)],
  ] as const;
  return [
    uprightBars,
    noteAndLevelBars,
    ...tables.flatMap(([name, table]) => (table === undefined ? [] : [tablePart(name, table)])),
  ];
}

/** The smallest paper, lying before standing, with as many dimensions as it has room for. */
function onPaper(model: PatternModel, sets: readonly SheetContents[]): Layout | undefined {
  for (const { name, width, height } of papersFor(model.units)) {
    for (const turned of [false, true]) {
      const page = { paper: name, width: turned ? height : width, height: turned ? width : height };
      const layout = onPage(page, sets);
      if (layout !== undefined) return layout;
    }
  }
  return undefined;
}

function onPage(page: Page, sets: readonly SheetContents[]): Layout | undefined {
  for (const set of sets) {
    const arrangement = arrange(page, set);
    if (arrangement !== undefined) return { page, set, arrangement };
  }
  return undefined;
}

/** Steps in which a page of its own grows upward, mm. */
const GROWTH = 50;

/** A page just wide enough for the widest part, and as high as it must be. */
function onOwnPage(sets: readonly SheetContents[]): Layout {
  const across = ({ minX, maxX }: Bounds): number => maxX - minX;
  // One mm more than the knife needs: it is moved by whole mm.
  const needed = sets.flatMap(({ zone, title, parts }) => [
    across(zone) + 1,
    ...parts.map((part) => part.width + title.width),
  ]);
  const width = Math.ceil(Math.max(...needed)) + 2 * CONTENT_MARGIN + GROWTH;
  for (let height = GROWTH; ; height += GROWTH) {
    const layout = onPage({ width, height }, sets);
    if (layout !== undefined) return layout;
  }
}
