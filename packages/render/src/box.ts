import { type Bounds, pathBounds } from "@scantling/geometry";
import { type DrawingItem, flattenItems, type GroupItem } from "./drawing.js";
import { textBox } from "./text-metrics.js";

/** The box that holds the items, lettering included; undefined for none. Line widths are not counted. */
export function boxOfItems(items: readonly DrawingItem[]): Bounds | undefined {
  return uniteBoxes(flattenItems(items).flatMap(boxesOfItem));
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
