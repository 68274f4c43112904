import { arcAround, type Bounds, boundsMeet, type Path, pathBounds } from "@scantling/geometry";
import { intersectBoxes } from "../../box.js";
import type { CircleItem, DrawingItem } from "../../drawing.js";
import { textBox } from "../../text-metrics.js";
import { segmentMeetsBox } from "./segment-box.js";

/**
 * The items of which something lies in a box. Paths are kept or left out whole, never cut, so that curves and dashes are
 * the same on every page; groups keep what is left of them.
 */
export const itemsInBox = (items: readonly DrawingItem[], box: Bounds): DrawingItem[] =>
  items.flatMap((item) => itemInBox(item, box));

function itemInBox(item: DrawingItem, box: Bounds): DrawingItem[] {
  switch (item.kind) {
    case "group": {
      const clip = item.clip === undefined ? box : intersectBoxes(item.clip, box);
      const inner = clip === undefined ? [] : itemsInBox(item.items, clip);
      return inner.length === 0 ? [] : [{ ...item, items: inner }];
    }
    case "path": {
      // An area lies in the box too where its rim is all outside, and its holes belong to it.
      if (item.fill !== undefined)
        return item.paths.some((path) => boundsMeet(pathBounds(path), box)) ? [item] : [];
      const paths = item.paths.filter((path) => pathMeetsBox(path, box));
      return paths.length === 0 ? [] : [{ ...item, paths }];
    }
    case "circle":
      return pathMeetsBox(circlePath(item), box) ? [item] : [];
    case "text":
      return item.text !== "" && boundsMeet(textBox(item), box) ? [item] : [];
  }
}

const pathMeetsBox = (path: Path, box: Bounds): boolean =>
  path.segments.some((segment) => segmentMeetsBox(segment, box));

/** The rim of a circle as an arc. */
export const circlePath = ({ centre, radius }: CircleItem): Path => ({
  segments: [arcAround(centre, radius, 0, 2 * Math.PI)],
  closed: true,
});
