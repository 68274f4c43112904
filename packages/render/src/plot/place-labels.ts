import type { Bounds, Vec2 } from "@scantling/geometry";
import { type DrawingItem, lettering, strokes } from "../drawing.js";
import { FreeSpace } from "../free-space.js";
import { SMALL } from "../lettering-size.js";
import { textReach, textWidth } from "../text-metrics.js";

/** A name that is to stand by its own curve; mm from the lower left corner of the plot's field. */
export interface CurveLabel {
  readonly text: string;
  /** Points of the curve, a mm apart or closer. */
  readonly curve: readonly Vec2[];
  /** Farthest that it may stand from its curve, mm; 20 by default. */
  readonly farthest?: number;
}

interface Place {
  readonly box: Bounds;
  readonly near: Vec2;
  readonly distance: number;
}

/** Steps in which places are tried, mm. */
const STEP = 1;
const FARTHEST = 20;
/** From here on a thin line ties a name to its curve, mm. */
const TIED = 2;
/** Clear space about lettering and lines, mm. */
const CLEAR = 0.4;
/** What it costs to stand nearer to another curve than to one's own, mm. */
const NEARER_OTHER = 6;

/**
 * Finds names a place by their curves where nothing stands in the way, the nearest one first.
 *
 * @param field - Size of the field, mm.
 * @param lines - Everything that is drawn in it, as points a mm apart or closer.
 * @returns the lettering with its ties, and the names that found no place.
 */
export function placeLabels(
  field: { readonly width: number; readonly height: number },
  labels: readonly CurveLabel[],
  lines: readonly (readonly Vec2[])[],
): { readonly items: DrawingItem[]; readonly left: CurveLabel[] } {
  const space = new FreeSpace(field.width, field.height);
  for (const line of lines) takeLine(space, line);
  const items: DrawingItem[] = [];
  const left: CurveLabel[] = [];
  const boxes: Bounds[] = [];
  for (const label of labels) {
    const others = lines.filter((line) => line !== label.curve);
    const place = bestPlace(field, label, space, others, boxes);
    if (place === undefined) {
      left.push(label);
      continue;
    }
    const { box } = place;
    boxes.push(box);
    space.take(box, CLEAR);
    const tie = tieOf(place);
    if (tie !== undefined) {
      takeLine(space, pointsBetween(...tie));
      items.push(strokes("dimension", [tie]));
    }
    const y = box.minY + textReach(label.text, SMALL).under;
    items.push(lettering(label.text, { x: box.minX, y }, { height: SMALL }));
  }
  return { items, left };
}

function bestPlace(
  field: { readonly width: number; readonly height: number },
  { text, curve, farthest = FARTHEST }: CurveLabel,
  space: FreeSpace,
  others: readonly (readonly Vec2[])[],
  boxes: readonly Bounds[],
): Place | undefined {
  const width = textWidth(text, SMALL);
  const { over, under } = textReach(text, SMALL);
  let best: Place | undefined;
  let least = Number.POSITIVE_INFINITY;
  // From the top down: of two places as good, the higher one is found first.
  for (let y = Math.floor(field.height - over - under); y >= 1; y -= STEP) {
    for (let x = 1; x + width <= field.width; x += STEP) {
      const box = { minX: x, minY: y, maxX: x + width, maxY: y + over + under };
      if (!space.isFree(box)) continue;
      const { point: near, distance } = nearestTo(box, curve);
      if (distance > farthest || distance >= least) continue;
      const crowded = others.some((other) => nearestTo(box, other).distance < distance);
      const cost = distance + (crowded ? NEARER_OTHER : 0);
      if (cost >= least) continue;
      const place = { box, near, distance };
      const tie = tieOf(place);
      if (
        tie !== undefined &&
        pointsBetween(...tie).some((point) => boxes.some((taken) => isNear(point, taken)))
      )
        continue;
      best = place;
      least = cost;
    }
  }
  return best;
}

/** From the lettering to the curve; none where it stands close by. */
function tieOf({ box, near, distance }: Place): [Vec2, Vec2] | undefined {
  if (distance < TIED) return undefined;
  const rim = clampTo(box, near);
  const step = CLEAR / distance;
  return [{ x: rim.x + (near.x - rim.x) * step, y: rim.y + (near.y - rim.y) * step }, near];
}

function nearestTo(box: Bounds, points: readonly Vec2[]): { point: Vec2; distance: number } {
  let point: Vec2 = { x: 0, y: 0 };
  let least = Number.POSITIVE_INFINITY;
  for (const each of points) {
    const dx = Math.max(box.minX - each.x, 0, each.x - box.maxX);
    const dy = Math.max(box.minY - each.y, 0, each.y - box.maxY);
    const square = dx * dx + dy * dy;
    if (square >= least) continue;
    least = square;
    point = each;
  }
  return { point, distance: Math.sqrt(least) };
}

const clampTo = (box: Bounds, { x, y }: Vec2): Vec2 => ({
  x: Math.min(box.maxX, Math.max(box.minX, x)),
  y: Math.min(box.maxY, Math.max(box.minY, y)),
});

const isNear = ({ x, y }: Vec2, box: Bounds): boolean =>
  x > box.minX - CLEAR && x < box.maxX + CLEAR && y > box.minY - CLEAR && y < box.maxY + CLEAR;

function takeLine(space: FreeSpace, points: readonly Vec2[]): void {
  for (const [index, to] of points.entries()) {
    const from = points[index - 1] ?? to;
    space.take(
      {
        minX: Math.min(from.x, to.x),
        minY: Math.min(from.y, to.y),
        maxX: Math.max(from.x, to.x),
        maxY: Math.max(from.y, to.y),
      },
      CLEAR,
    );
  }
}

/** Points along a line, at most a mm apart. */
export function pointsBetween(from: Vec2, to: Vec2): Vec2[] {
  const count = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y)));
  return Array.from({ length: count + 1 }, (_, index) => ({
    x: from.x + ((to.x - from.x) * index) / count,
    y: from.y + ((to.y - from.y) * index) / count,
  }));
}
