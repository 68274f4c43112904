import {
  type Bounds,
  boundsMeet,
  mapSegment,
  parametersAtX,
  pointAt,
  type Segment,
  segmentBounds,
  type Vec2,
} from "@scantling/geometry";

/**
 * Whether a segment has a point in a box, its edges included. Exact: an end lies in the box, or the curve crosses one of
 * its edges.
 */
export function segmentMeetsBox(segment: Segment, box: Bounds): boolean {
  const whole = segmentBounds(segment);
  if (!boundsMeet(whole, box)) return false;
  if (contains(box, segment.from) || contains(box, segment.to)) return true;
  return (
    [box.minX, box.maxX].some((x) =>
      parametersAtX(segment, x).some((t) => isBetween(pointAt(segment, t).y, box.minY, box.maxY)),
    ) ||
    [box.minY, box.maxY].some((y) =>
      parametersAtY(segment, y).some((t) => isBetween(pointAt(segment, t).x, box.minX, box.maxX)),
    )
  );
}

/** Every parameter in [0, 1] at which a segment is at height y, ascending. */
export const parametersAtY = (segment: Segment, y: number): number[] => parametersAtX(swapAxes(segment), y);

const isBetween = (value: number, low: number, high: number): boolean => value >= low && value <= high;

const contains = (box: Bounds, { x, y }: Vec2): boolean =>
  isBetween(x, box.minX, box.maxX) && isBetween(y, box.minY, box.maxY);

const swapped = ({ x, y }: Vec2): Vec2 => ({ x: y, y: x });

/** The segment mirrored in the line x = y; its parameter stays. */
const swapAxes = (segment: Segment): Segment =>
  mapSegment(segment, { point: swapped, direction: (angle) => Math.PI / 2 - angle, mirrors: true });
