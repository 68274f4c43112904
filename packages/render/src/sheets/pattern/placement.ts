import { type Bounds, mirrorPoint, mirrorSegment, type Vec2 } from "@scantling/geometry";
import { type DrawingItem, moveBox, moveItem, type TextItem } from "../../drawing.js";
import type { PatternModel } from "../../models/pattern-model.js";
import { textBox } from "../../text-metrics.js";

/** From the model's frame to the drawing's. */
export interface Placement {
  readonly item: (item: DrawingItem) => DrawingItem;
  readonly box: (box: Bounds) => Bounds;
  readonly point: (point: Vec2) => Vec2;
}

/** With several outlines the finished heel is the drawing's origin; the left face is seen from the other side. */
export function placementOf({ further, finishedHeel, mirror }: PatternModel): Placement {
  const heel = further === undefined ? undefined : finishedHeel;
  const { x, y } = heel === undefined ? { x: 0, y: 0 } : { x: 0 - heel.x, y: 0 - heel.y };
  const turned = mirror === true;
  return {
    item: (item) => {
      const moved = heel === undefined ? item : moveItem(item, x, y);
      return turned ? mirrorItem(moved) : moved;
    },
    box: (box) => {
      const moved = heel === undefined ? box : moveBox(box, x, y);
      return turned ? mirrorBox(moved) : moved;
    },
    point: (point) => {
      const moved = { x: point.x + x, y: point.y + y };
      return turned ? mirrorPoint(moved) : moved;
    },
  };
}

const mirrorBox = (box: Bounds): Bounds => ({ ...box, minX: 0 - box.maxX, maxX: 0 - box.minX });

const OTHER_END = { start: "end", middle: "middle", end: "start" } as const;

/**
 * The same item seen from behind the paper, lettering aside: that stands where its mirror image would, and reads as ever.
 * Lines keep their direction, so that dashes fall where they did.
 */
export function mirrorItem(item: DrawingItem): DrawingItem {
  switch (item.kind) {
    case "path":
      return {
        ...item,
        paths: item.paths.map((path) => ({ ...path, segments: path.segments.map(mirrorSegment) })),
      };
    case "circle":
      return { ...item, centre: mirrorPoint(item.centre) };
    case "text":
      return mirrorText(item);
    case "group":
      return {
        ...item,
        ...(item.clip === undefined ? {} : { clip: mirrorBox(item.clip) }),
        items: item.items.map(mirrorItem),
      };
  }
}

function mirrorText(item: TextItem): TextItem {
  if (item.rotation === 0) {
    const slide = item.slide?.map(({ from, to }) => ({ from: 0 - to, to: 0 - from }));
    return {
      ...item,
      at: mirrorPoint(item.at),
      anchor: OTHER_END[item.anchor],
      ...(slide === undefined ? {} : { slide }),
    };
  }
  // Turned lettering: its box is as wide wherever it stands, so the middle of the box goes to the mirrored place.
  const { minX, maxX } = textBox(item);
  return { ...item, at: { x: item.at.x - (minX + maxX), y: item.at.y } };
}
