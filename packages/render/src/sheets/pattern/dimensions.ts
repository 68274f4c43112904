import type { Bounds } from "@scantling/geometry";
import { boxOfItems } from "../../box.js";
import { extensionLine, levelDimension, TEXT_GAP } from "../../dimension.js";
import { type DrawingItem, lettering } from "../../drawing.js";
import { lengthText, onOneLine } from "../../label-text.js";
import { KEY, SMALL } from "../../lettering-size.js";
import type { PatternModel } from "../../models/pattern-model.js";
import type { Silhouette } from "../../silhouette.js";
import { textWidth } from "../../text-metrics.js";
import { bevelDimension, type Dimensions, sideDimensions } from "./upright-dimensions.js";

/** From the lowest point of the view to the base line of the words under it, mm. */
const LABEL_DROP = 5.5;
/** From there to the first dimension line, and from one line to the next, mm. */
const FIRST_ROW = 7;
const ROW = 8;
/** A ricasso shorter than this is no length to be laid off, mm. */
const SHORTEST_RICASSO = 0.05;
/** Ends nearer than this share one extension line, mm. */
const SAME_PLACE = 0.01;

/** What dimensions are drawn about. */
export interface DimensionedView {
  readonly silhouette: Silhouette;
  /** The knife with its centre lines and marks, and the box that holds it, mm. */
  readonly items: readonly DrawingItem[];
  readonly box: Bounds;
  /** Whether the view may grow wider for a further dimension. */
  readonly roomy: boolean;
  /** Whether the straight edge may have its figure beside its line: lower tables, and one more row of dimensions. */
  readonly beside: boolean;
}

/**
 * Lengths below the knife, nearest the shortest; heights at its side and behind the heel; where heel and tip are.
 *
 * @returns the items, and which of the further sizes they show.
 */
export function patternDimensions(model: PatternModel, view: DimensionedView): Dimensions {
  const { silhouette } = view;
  const lengths = lengthDimensions(model, silhouette, view.box, view.beside);
  const sides = sideDimensions(model, silhouette, view.box, view.roomy);
  const bevel = bevelDimension(model, silhouette, [...view.items, ...lengths.items, ...sides.items]);
  return {
    items: [...lengths.items, ...sides.items, ...bevel.items],
    shown: [...lengths.shown, ...sides.shown, ...bevel.shown],
  };
}

function lengthDimensions(
  model: PatternModel,
  silhouette: Silhouette,
  view: Bounds,
  beside: boolean,
): Dimensions {
  const { bounds, bottomAt } = silhouette;
  const write = (mm: number): string => onOneLine(lengthText(mm * (model.drawnAt ?? 1), model.units));
  const onBottom = (x: number): { x: number; y: number } => ({ x, y: bottomAt(x) });
  const butt = onBottom(bounds.minX);
  const front = onBottom(model.handleFront);
  const heel = { x: 0, y: 0 };
  const tip = onBottom(model.edgeLength);
  const farEnd = onBottom(bounds.maxX);
  const hasRicasso = heel.x - front.x > SHORTEST_RICASSO;
  const labelLine = view.minY - LABEL_DROP;
  const labels = endLabels(model, silhouette, labelLine);
  const lift = liftOfEdge(model, labels, write, beside);
  const uprights = [butt.x, front.x, heel.x, tip.x, farEnd.x];
  const firstRow = labelLine - FIRST_ROW;
  const partsRow = hasRicasso || lift !== undefined ? firstRow - ROW : firstRow;
  const overallRow = partsRow - ROW;
  // Behind the heel lettering stands to the left, where the tang leaves room, ahead of it to the right.
  const level = (from: number, to: number, y: number, height?: number): DrawingItem[] =>
    levelDimension({
      ...(height === undefined ? {} : { height }),
      from,
      to,
      y,
      text: write(to - from),
      clearOf: y === overallRow ? [butt.x, farEnd.x] : uprights,
      beside: from < heel.x ? "left" : "right",
    });

  const items = [
    ...labels,
    extensionLine(butt, overallRow),
    ...(hasRicasso ? [extensionLine(front, partsRow)] : []),
    extensionLine(heel, partsRow),
    ...(farEnd.x - tip.x > SAME_PLACE ? [extensionLine(tip, partsRow)] : []),
    extensionLine(farEnd, overallRow),
    ...(hasRicasso ? level(front.x, heel.x, firstRow) : []),
    ...(lift === undefined
      ? []
      : [extensionLine(onBottom(lift.x), firstRow), ...level(heel.x, lift.x, firstRow, lift.height)]),
    ...level(butt.x, front.x, partsRow),
    ...level(heel.x, tip.x, partsRow),
    ...level(butt.x, farEnd.x, overallRow),
  ];
  return { items, shown: lift === undefined ? [] : ["straight-edge"] };
}

/**
 * x where the edge begins to lift and how high its figure is written, if a dimension can show it: the figure fits, and
 * the extension line is clear of the labels.
 */
function liftOfEdge(
  model: PatternModel,
  labels: readonly DrawingItem[],
  write: (mm: number) => string,
  beside: boolean,
): { x: number; height: number } | undefined {
  const x = model.straightEdge;
  if (x === undefined) return undefined;
  const fitting = [KEY, SMALL].find((size) => x >= textWidth(write(x), size) + 2 * TEXT_GAP);
  const height = fitting ?? (beside ? SMALL : undefined);
  const boxes = labels.flatMap((label) => boxOfItems([label]) ?? []);
  const clear = boxes.every((box) => x < box.minX - TEXT_GAP || x > box.maxX + TEXT_GAP);
  return clear && height !== undefined ? { x, height } : undefined;
}

function endLabels(model: PatternModel, silhouette: Silhouette, y: number): DrawingItem[] {
  const both = textWidth("HEEL", SMALL) + textWidth("TIP", SMALL) + 5;
  const room = model.edgeLength > both;
  // Drawn smaller, a short blade has no room under it for both.
  if (!room && model.drawnAt !== undefined) return [];
  const tipX = room ? model.edgeLength : silhouette.bounds.maxX;
  return [
    lettering("HEEL", { x: 1.2, y }, { height: SMALL }),
    lettering("TIP", { x: tipX + (room ? -1.2 : 1.2), y }, { height: SMALL, anchor: room ? "end" : "start" }),
  ];
}
