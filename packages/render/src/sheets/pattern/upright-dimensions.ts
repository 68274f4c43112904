import { type Bounds, vec2 } from "@scantling/geometry";
import { boxOfItems } from "../../box.js";
import { checkLayout } from "../../check-layout.js";
import { EXTENSION_GAP, fitsAlong, uprightDimension } from "../../dimension.js";
import type { DrawingItem } from "../../drawing.js";
import { type DualText, lengthText, onOneLine } from "../../label-text.js";
import type { PatternHeight, PatternModel } from "../../models/pattern-model.js";
import type { Silhouette } from "../../silhouette.js";
import type { SizeName } from "./sizes.js";

/** From the outline, and from everything in the view, to an upright dimension line, mm. */
const FROM_OUTLINE = 8;
const FROM_VIEW = 7;
/** From one upright dimension line to the next, mm. */
const COLUMN = 9;
/** Places nearer than this are one, mm. */
const SAME_PLACE = 0.01;

/** A height of the view as the knife has it. */
const sizeText = (mm: number, { drawnAt = 1, units }: PatternModel): DualText =>
  lengthText(mm * drawnAt, units);

/** Dimensions, and which of the sizes they show. */
export interface Dimensions {
  readonly items: readonly DrawingItem[];
  readonly shown: readonly SizeName[];
}

/**
 * The heel height at the side of the knife where its lines are shorter; where the page has room for it, the height of
 * the front or the tip at its end.
 *
 * @param roomy - whether the view may grow wider for a second dimension.
 */
export function sideDimensions(
  model: PatternModel,
  silhouette: Silhouette,
  view: Bounds,
  roomy: boolean,
): Dimensions {
  const { bounds } = silhouette;
  const high = model.heelHeight;
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
  const right = sides[0];
  const end = roomy && right?.low.clear ? endDimension(model, right) : undefined;
  return {
    items: [
      ...uprightDimension({
        low: 0,
        high,
        lowFrom: best.low.start + best.step * EXTENSION_GAP,
        highFrom: best.top.start + best.step * EXTENSION_GAP,
        x: best.x + (end !== undefined && best.step > 0 ? COLUMN : 0),
        ...sizeText(high, model),
        mirrored: model.mirror === true,
      }),
      ...(end?.items ?? []),
    ],
    shown: end?.shown ?? [],
  };
}

/** Height of the front or the tip, where it stands at the very end and its figure fits along it. */
function endDimension(
  model: PatternModel,
  side: { readonly x: number; readonly end: number; readonly low: { readonly start: number } },
): Dimensions | undefined {
  const height = model.frontHeight ?? model.tipHeight;
  if (height === undefined || Math.abs(height.x - side.end) > SAME_PLACE) return undefined;
  const text = sizeText(height.high - height.low, model);
  if (!fitsAlong(onOneLine(text), height.high - height.low)) return undefined;
  const isFront = height === model.frontHeight;
  const items = uprightDimension({
    low: height.low,
    high: height.high,
    lowFrom: (isFront ? side.end : side.low.start) + EXTENSION_GAP,
    highFrom: side.end + EXTENSION_GAP,
    x: side.x,
    ...text,
    mirrored: model.mirror === true,
  });
  return { items, shown: [isFront ? "front" : "tip"] };
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

/** Clear paper between the bevel's dimension and the tang above it, mm. */
const UNDER_TANG = 1;

/**
 * The bevel height in the paper behind the heel and under the tang; nothing where the bevel begins elsewhere or there
 * is no room for it.
 *
 * @param others - items that it must keep clear of.
 */
export function bevelDimension(
  model: PatternModel,
  silhouette: Silhouette,
  others: readonly DrawingItem[],
): Dimensions {
  const height = model.bevelHeight;
  const none: Dimensions = { items: [], shown: [] };
  if (height === undefined || Math.abs(height.x) > SAME_PLACE || Math.abs(height.low) > SAME_PLACE)
    return none;
  for (const x of [-FROM_OUTLINE, model.handleFront - FROM_OUTLINE]) {
    const items = bevelAtHeel(height, x, model);
    if (underTang(items, silhouette) && inOrder([...others, ...items])) return { items, shown: ["bevel"] };
  }
  return none;
}

const bevelAtHeel = (height: PatternHeight, x: number, model: PatternModel): DrawingItem[] =>
  uprightDimension({
    low: 0,
    high: height.high,
    lowFrom: -EXTENSION_GAP,
    highFrom: -EXTENSION_GAP,
    x,
    ...sizeText(height.high, model),
    mirrored: model.mirror === true,
  });

function underTang(items: readonly DrawingItem[], silhouette: Silhouette): boolean {
  const box = boxOfItems(items);
  if (box === undefined || box.minX < silhouette.bounds.minX) return false;
  const steps = Math.ceil(box.maxX - box.minX);
  return Array.from(
    { length: steps + 1 },
    (_, index) => box.minX + index * ((box.maxX - box.minX) / steps),
  ).every((x) => silhouette.bottomAt(x) >= box.maxY + UNDER_TANG);
}

/** Whether the items can be read, whatever the page. */
export function inOrder(items: readonly DrawingItem[]): boolean {
  const box = boxOfItems(items);
  if (box === undefined) return true;
  const edge = 10;
  return (
    checkLayout({
      width: box.maxX - box.minX + 2 * edge,
      height: box.maxY - box.minY + 2 * edge,
      origin: vec2(edge - box.minX, edge - box.minY),
      title: "",
      description: "",
      items,
    }).length === 0
  );
}
