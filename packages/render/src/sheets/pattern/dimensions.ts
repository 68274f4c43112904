import type { Bounds } from "@scantling/geometry";
import { EXTENSION_GAP, extensionLine, levelDimension, uprightDimension } from "../../dimension.js";
import { type DrawingItem, lettering } from "../../drawing.js";
import { lengthText, onOneLine } from "../../label-text.js";
import { SMALL } from "../../lettering-size.js";
import type { PatternModel } from "../../pattern-model.js";
import { textWidth } from "../../text-metrics.js";
import type { Silhouette } from "./silhouette.js";

/** From the lowest point of the view to the base line of the words under it, mm. */
const LABEL_DROP = 5.5;
/** From there to the first dimension line, and from one line to the next, mm. */
const FIRST_ROW = 7.5;
const ROW = 9;
/** From the outline, and from everything in the view, to an upright dimension line, mm. */
const FROM_OUTLINE = 12;
const FROM_VIEW = 9;
/** A ricasso shorter than this is no length to be laid off, mm. */
const SHORTEST_RICASSO = 0.05;
/** Ends nearer than this share one extension line, mm. */
const SAME_PLACE = 0.01;

/**
 * Lengths below the knife, nearest the shortest; the heel height at its side; where heel and tip are.
 *
 * @param view - box that holds the knife with its centre lines and marks, mm.
 */
export function patternDimensions(model: PatternModel, silhouette: Silhouette, view: Bounds): DrawingItem[] {
  const { bounds, bottomAt } = silhouette;
  const write = (mm: number): string => onOneLine(lengthText(mm, model.units));
  const onBottom = (x: number): { x: number; y: number } => ({ x, y: bottomAt(x) });
  const butt = onBottom(bounds.minX);
  const front = onBottom(model.handleFront);
  const heel = { x: 0, y: 0 };
  const tip = onBottom(model.edgeLength);
  const farEnd = onBottom(bounds.maxX);
  const uprights = [butt.x, front.x, heel.x, tip.x, farEnd.x];
  const hasRicasso = heel.x - front.x > SHORTEST_RICASSO;
  const labelLine = view.minY - LABEL_DROP;
  const ricassoRow = labelLine - FIRST_ROW;
  const partsRow = hasRicasso ? ricassoRow - ROW : ricassoRow;
  const overallRow = partsRow - ROW;
  // Behind the heel lettering stands to the left, where the tang leaves room, ahead of it to the right.
  const level = (from: number, to: number, y: number): DrawingItem[] =>
    levelDimension({
      from,
      to,
      y,
      text: write(to - from),
      clearOf: y === overallRow ? [butt.x, farEnd.x] : uprights,
      beside: from < heel.x ? "left" : "right",
    });

  return [
    ...endLabels(model, silhouette, labelLine),
    extensionLine(butt, overallRow),
    ...(hasRicasso ? [extensionLine(front, partsRow)] : []),
    extensionLine(heel, partsRow),
    ...(farEnd.x - tip.x > SAME_PLACE ? [extensionLine(tip, partsRow)] : []),
    extensionLine(farEnd, overallRow),
    ...(hasRicasso ? level(front.x, heel.x, ricassoRow) : []),
    ...level(butt.x, front.x, partsRow),
    ...level(heel.x, tip.x, partsRow),
    ...level(butt.x, farEnd.x, overallRow),
    ...heelHeight(model, silhouette, view),
  ];
}

function endLabels(model: PatternModel, silhouette: Silhouette, y: number): DrawingItem[] {
  const both = textWidth("HEEL", SMALL) + textWidth("TIP", SMALL) + 5;
  const room = model.edgeLength > both;
  const tipX = room ? model.edgeLength : silhouette.bounds.maxX;
  return [
    lettering("HEEL", { x: 1.2, y }, { height: SMALL }),
    lettering("TIP", { x: tipX + (room ? -1.2 : 1.2), y }, { height: SMALL, anchor: room ? "end" : "start" }),
  ];
}

function heelHeight(model: PatternModel, silhouette: Silhouette, view: Bounds): DrawingItem[] {
  const { bounds } = silhouette;
  const high = model.heelHeight;
  const text = lengthText(high, model.units);
  const sides = [
    { x: Math.max(bounds.maxX + FROM_OUTLINE, view.maxX + FROM_VIEW), end: bounds.maxX, step: 1 },
    { x: Math.min(bounds.minX - FROM_OUTLINE, view.minX - FROM_VIEW), end: bounds.minX, step: -1 },
  ].map((side) => {
    const low = levelRun(0, side.end, (x) => -silhouette.bottomAt(x));
    const top = levelRun(0, side.end, (x) => silhouette.topAt(x) - high);
    return { ...side, low, top, length: Math.abs(side.x - low.start) + Math.abs(side.x - top.start) };
  });
  const clear = sides.filter((side) => side.low.clear && side.top.clear);
  const best = (clear.length > 0 ? clear : sides).reduce((a, b) => (b.length < a.length ? b : a));
  return uprightDimension({
    low: 0,
    high,
    lowFrom: best.low.start + best.step * EXTENSION_GAP,
    highFrom: best.top.start + best.step * EXTENSION_GAP,
    x: best.x,
    main: text.main,
    other: text.other,
  });
}

const LEVEL_STEPS = 200;
/** The outline counts as level with an extension line within this, mm. */
const LEVEL_WITHIN = 0.02;

/**
 * Where an extension line at the level of the heel can start: past the last place where the outline is at that level.
 *
 * @param rise - how far the steel stands over the line at x (below it: negative), mm.
 * @returns the start, and whether the line is clear of steel all the way.
 */
function levelRun(from: number, to: number, rise: (x: number) => number): { start: number; clear: boolean } {
  let start = from;
  let clear = true;
  for (let index = 0; index <= LEVEL_STEPS; index++) {
    const x = from + ((to - from) * index) / LEVEL_STEPS;
    const over = rise(x);
    if (Math.abs(over) <= LEVEL_WITHIN) start = x;
    if (over > LEVEL_WITHIN && index > 0) clear = false;
  }
  return { start, clear };
}
