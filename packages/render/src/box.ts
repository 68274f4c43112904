import { type Bounds, pathBounds } from "@scantling/geometry";
import type { DrawingItem, GroupItem } from "./drawing.js";
import { textBox } from "./text-metrics.js";

/** An item that is no group, and the box outside which nothing of it is drawn; undefined where all of it is. */
export interface VisibleItem {
  readonly item: Exclude<DrawingItem, GroupItem>;
  readonly clip: Bounds | undefined;
}

/** Every item that is not a group, in the order in which it is drawn, with what the groups about it leave of it. */
export function visibleItems(items: readonly DrawingItem[], clip?: Bounds): VisibleItem[] {
  return items.flatMap((item): VisibleItem[] => {
    if (item.kind !== "group") return [{ item, clip }];
    const inner = clippedBox(item.clip, clip);
    return inner === "nothing" ? [] : visibleItems(item.items, inner);
  });
}

/** The box that holds the items, lettering included; undefined for none. Line widths are not counted, clips are. */
export function boxOfItems(items: readonly DrawingItem[]): Bounds | undefined {
  return uniteBoxes(
    visibleItems(items).flatMap(({ item, clip }) =>
      boxesOfItem(item).flatMap((box) => {
        const seen = clippedBox(box, clip);
        return seen === undefined || seen === "nothing" ? [] : [seen];
      }),
    ),
  );
}

/** Boxes that hold one item: one to each of its paths. */
export function boxesOfItem(item: Exclude<DrawingItem, GroupItem>): Bounds[] {
  switch (item.kind) {
    case "path":
      return item.paths.filter((path) => path.segments.length > 0).map(pathBounds);
    case "circle": {
      const { centre, radius } = item;
      return [
        {
          minX: centre.x - radius,
          minY: centre.y - radius,
          maxX: centre.x + radius,
          maxY: centre.y + radius,
        },
      ];
    }
    case "text":
      return [textBox(item)];
  }
}

/** What two boxes have in common, a shared edge or corner too; undefined for nothing. */
export function intersectBoxes(a: Bounds, b: Bounds): Bounds | undefined {
  const box = {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  };
  return box.minX <= box.maxX && box.minY <= box.maxY ? box : undefined;
}

/** What is left of a box where either may be unbounded. */
function clippedBox(a: Bounds | undefined, b: Bounds | undefined): Bounds | undefined | "nothing" {
  if (a === undefined) return b;
  return b === undefined ? a : (intersectBoxes(a, b) ?? "nothing");
}

function uniteBoxes(boxes: readonly Bounds[]): Bounds | undefined {
  const first = boxes[0];
  if (first === undefined) return undefined;
  return boxes.reduce(
    (a, b) => ({
      minX: Math.min(a.minX, b.minX),
      minY: Math.min(a.minY, b.minY),
      maxX: Math.max(a.maxX, b.maxX),
      maxY: Math.max(a.maxY, b.maxY),
    }),
    first,
  );
}
