import { type Bounds, type Path, pathBounds, pointAt, type Segment } from "@scantling/geometry";
import { boxesOfItem } from "../box.js";
import { type DrawingItem, flattenItems } from "../drawing.js";
import type { Silhouette } from "../silhouette.js";

/** Width of the columns into which steel is cut, and longest piece of a slanting or curved line in a box, mm. */
const STEP = 1;
const LINE_STEP = 3;

/** The paper that lines and lettering take, in boxes that follow them closely; drawing mm. */
export const footprintOf = (items: readonly DrawingItem[]): Bounds[] =>
  flattenItems(items).flatMap((item) =>
    item.kind === "path" ? item.paths.flatMap(boxesOfPath) : boxesOfItem(item),
  );

/** The paper inside an outline, in upright boxes: nothing else stands on the steel. */
export function steelColumns({ bounds, topAt, bottomAt }: Silhouette): Bounds[] {
  const count = Math.ceil((bounds.maxX - bounds.minX) / STEP);
  const edges = Array.from({ length: count + 1 }, (_, index) => {
    const x = Math.min(bounds.minX + index * STEP, bounds.maxX);
    return { x, top: topAt(x), bottom: bottomAt(x) };
  });
  return edges.slice(1).map((to, index) => {
    const from = edges[index] ?? to;
    return {
      minX: from.x,
      maxX: to.x,
      minY: Math.min(from.bottom, to.bottom),
      maxY: Math.max(from.top, to.top),
    };
  });
}

const boxesOfPath = (path: Path): Bounds[] => path.segments.flatMap(boxesOfSegment);

function boxesOfSegment(segment: Segment): Bounds[] {
  const whole = pathBounds({ segments: [segment], closed: false });
  const across = whole.maxX - whole.minX;
  const up = whole.maxY - whole.minY;
  if (Math.min(across, up) < LINE_STEP) return [whole];
  const count = Math.ceil(Math.max(across, up) / LINE_STEP);
  const points = Array.from({ length: count + 1 }, (_, index) => pointAt(segment, index / count));
  return points.slice(1).map((to, index) => {
    const from = points[index] ?? to;
    return {
      minX: Math.min(from.x, to.x),
      maxX: Math.max(from.x, to.x),
      minY: Math.min(from.y, to.y),
      maxY: Math.max(from.y, to.y),
    };
  });
}
