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
  /** For what is no curve but a mark on some: those curves, which may be as near to the lettering as the mark. */
  readonly on?: readonly CurveLabel[];
}

interface Place {
  readonly box: Bounds;
  /** A thin line from the lettering to the curve; none where it stands close by. */
  readonly tie: readonly [Vec2, Vec2] | undefined;
  readonly cost: number;
}

/** Steps in which places are tried, mm. */
const STEP = 1;
const FARTHEST = 20;
/** From here on a thin line ties a name to its curve, mm. */
const TIED = 2;
/** Clear space about lettering, mm; and from the middle of a line: half a wide one, and what the eye needs to part them. */
const CLEAR = 0.4;
const OFF_LINES = 0.8;
/** By how much every other curve is farther from a name than its own, and how far it is at least, mm: what the eye sees at once. */
const CLEARLY = 1;
const AWAY = SMALL;
/** Nearer than this to an end of its curve a name stands as if at the end of the line, mm. */
const AT_END = 1;
/** Between two names on a level, mm: closer together they would be read as one. */
const ACROSS = SMALL;
/** By how much it had better be, and what each mm less costs in mm of distance. */
const ROOMY = 4;
const CROWDED = 0.5;
/** Up to so many names every order is tried: of four there are 24. */
const MOST_ORDERED = 4;

/**
 * Finds names a place by their curves where nothing stands in the way: every other curve is farther by a mm at least, so
 * that a tie crosses none. As many names as can be are placed, then as near to their curves as can be; marks after them.
 *
 * @param field - Size of the field, mm.
 * @param obstacles - What else is drawn in it, as points a mm apart or closer.
 * @returns the lettering with its ties, and the names that found no place.
 */
export function placeLabels(
  field: { readonly width: number; readonly height: number },
  labels: readonly CurveLabel[],
  obstacles: readonly (readonly Vec2[])[] = [],
): { readonly items: DrawingItem[]; readonly left: CurveLabel[] } {
  const space = new FreeSpace(field.width, field.height);
  for (const line of [...labels.map(({ curve }) => curve), ...obstacles]) takeLine(space, line);
  const places = new Map(labels.map((label) => [label, placesOf(label, field, space, labels)]));
  const names = labels.filter(({ on }) => on === undefined);
  const marks = labels.filter(({ on }) => on !== undefined);
  const orders = names.length <= MOST_ORDERED ? ordersOf(names) : [names];
  const placed = orders
    .map((order) => placeInOrder(order, places))
    .reduce((best, each) => (isBetter(each, best) ? each : best));
  const all = placeInOrder(marks, places, placed);
  return {
    items: labels.flatMap((label) => {
      const place = all.get(label);
      return place === undefined ? [] : itemsOf(label, place);
    }),
    left: labels.filter((label) => !all.has(label)),
  };
}

type Placed = ReadonlyMap<CurveLabel, Place>;

/** Each label in turn at its cheapest place that those before it leave free. */
function placeInOrder(
  order: readonly CurveLabel[],
  places: ReadonlyMap<CurveLabel, readonly Place[]>,
  before: Placed = new Map(),
): Placed {
  const placed = new Map(before);
  for (const label of order) {
    const taken = [...placed.values()];
    const place = places.get(label)?.find((each) => taken.every((other) => isApart(each, other)));
    if (place !== undefined) placed.set(label, place);
  }
  return placed;
}

const isBetter = (a: Placed, b: Placed): boolean =>
  a.size > b.size || (a.size === b.size && costOf(a) < costOf(b));

const costOf = (placed: Placed): number => [...placed.values()].reduce((sum, { cost }) => sum + cost, 0);

/** Every order of a few. */
function ordersOf<T>(all: readonly T[]): T[][] {
  if (all.length === 0) return [[]];
  return all.flatMap((first, index) =>
    ordersOf(all.filter((_, other) => other !== index)).map((rest) => [first, ...rest]),
  );
}

/** Where a label may stand, the cheapest place first; of those as good the highest, then the one farthest left. */
function placesOf(
  label: CurveLabel,
  field: { readonly width: number; readonly height: number },
  space: FreeSpace,
  labels: readonly CurveLabel[],
): Place[] {
  const { text, curve, on, farthest = FARTHEST } = label;
  const rivals = labels.filter(
    (other) => other !== label && (on === undefined ? other.on === undefined : !on.includes(other)),
  );
  const width = textWidth(text, SMALL);
  const { over, under } = textReach(text, SMALL);
  const places: Place[] = [];
  for (let y = Math.floor(field.height - over - under); y >= 1; y -= STEP) {
    let steps = 1;
    for (let x = 1; x + width <= field.width; x += STEP * steps) {
      steps = 1;
      const box = { minX: x, minY: y, maxX: x + width, maxY: y + over + under };
      if (!space.isFree(box)) continue;
      const { point: near, distance } = nearestTo(box, curve);
      const others = distance > farthest ? Number.POSITIVE_INFINITY : distanceTo(box, rivals);
      const room = others - distance;
      // A step changes no distance by more than itself, so that several may be needed to where it can be good.
      const lacking = Math.max(distance - farthest, AWAY - others, (CLEARLY - room) / 2);
      steps = Math.max(1, Math.ceil(lacking / STEP - 1e-9));
      if (lacking > 0 || (on === undefined && isMisread(box, label, near, rivals))) continue;
      const tie = distance < TIED ? undefined : tieOf(box, near, distance);
      places.push({ box, tie, cost: distance + CROWDED * Math.max(0, ROOMY - room) });
    }
  }
  return places.sort((a, b) => a.cost - b.cost);
}

/** Whether a name runs along another curve, and has its own at one corner alone. */
function isMisread(
  { minX, maxX, minY, maxY }: Bounds,
  { curve }: CurveLabel,
  near: Vec2,
  rivals: readonly CurveLabel[],
): boolean {
  const isAtEnd = [curve[0], curve.at(-1)].some(
    (end) => end !== undefined && Math.hypot(end.x - near.x, end.y - near.y) < AT_END,
  );
  if (isAtEnd) return false;
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const middle = { minX: x, maxX: x, minY: y, maxY: y };
  return distanceTo(middle, rivals) < nearestTo(middle, curve).distance;
}

function tieOf(box: Bounds, near: Vec2, distance: number): [Vec2, Vec2] {
  const rim = {
    x: Math.min(box.maxX, Math.max(box.minX, near.x)),
    y: Math.min(box.maxY, Math.max(box.minY, near.y)),
  };
  const step = CLEAR / distance;
  return [{ x: rim.x + (near.x - rim.x) * step, y: rim.y + (near.y - rim.y) * step }, near];
}

function itemsOf({ text }: CurveLabel, { box, tie }: Place): DrawingItem[] {
  const at = { x: box.minX, y: box.minY + textReach(text, SMALL).under };
  return [
    ...(tie === undefined ? [] : [strokes("dimension", [tie])]),
    lettering(text, at, { height: SMALL }),
  ];
}

/** Whether neither the lettering nor the ties of two places are in each other's way. */
function isApart(a: Place, b: Place): boolean {
  const apart =
    a.box.maxX + ACROSS <= b.box.minX ||
    b.box.maxX + ACROSS <= a.box.minX ||
    a.box.maxY + CLEAR <= b.box.minY ||
    b.box.maxY + CLEAR <= a.box.minY;
  if (!apart) return false;
  const [ofA, ofB] = [pointsOf(a.tie), pointsOf(b.tie)];
  return (
    !ofA.some((point) => isNear(point, b.box)) &&
    !ofB.some((point) => isNear(point, a.box)) &&
    !ofA.some((one) => ofB.some((other) => Math.hypot(one.x - other.x, one.y - other.y) < STEP))
  );
}

const pointsOf = (tie: Place["tie"]): Vec2[] => (tie === undefined ? [] : pointsBetween(...tie));

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

const distanceTo = (box: Bounds, labels: readonly CurveLabel[]): number =>
  Math.min(...labels.map(({ curve }) => nearestTo(box, curve).distance));

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
      OFF_LINES,
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
