import { nearestOnSegment } from "../plane/nearest.js";
import { type Line, line, pointAt } from "../plane/segment.js";
import { interpolate, type Vec2 } from "../plane/vec2.js";
import { grooveHalfWidth } from "./groove-moments.js";
import { type Groove, grooveDepthAt, type SteelBody } from "./steel-body.js";

/** Where a fuller leaves least steel: what is left, what there was, and how much of that this one takes, mm. */
export interface FullerFloor {
  readonly at: Vec2;
  readonly left: number;
  readonly uncut: number;
  readonly own: number;
}

/** Stretches across half a fuller; lengthways they are as long, but no more than {@link MOST_ALONG} of them. */
const ACROSS = 6;
const MOST_ALONG = 96;

/** How many of the thinnest places are looked into. */
const LOOKED_INTO = 6;

/** A search ends when its step is this small, mm: near a smooth floor's lowest place that is 1e-12 mm of steel. */
const FINEST_STEP = 1e-6;
const MOST_TRIES = 150;

/** The golden angle, radians: the directions of a search never repeat, so it does not stick in a crease of a face. */
const TURN = Math.PI * (3 - Math.sqrt(5));

/**
 * The thinnest place under a fuller, its round ends too: a grid first, with the places where it comes nearest to each other
 * fuller, then downhill from the lowest of them. What is left is good to about 1e-6 mm.
 */
export function fullerFloor(body: SteelBody, fuller: Groove): FullerFloor {
  const w = grooveHalfWidth(fuller);
  const run = Math.hypot(fuller.to.x - fuller.from.x, fuller.to.y - fuller.from.y);
  const tx = run === 0 ? 1 : (fuller.to.x - fuller.from.x) / run;
  const ty = run === 0 ? 0 : (fuller.to.y - fuller.from.y) / run;
  const own = line(fuller.from, fuller.to);
  const startAt = (place: Vec2): Start => {
    const point = pulledIn(own, w, place);
    return { point, left: body.thicknessIgnoringOutline(point) };
  };
  const along = Math.min(MOST_ALONG, Math.ceil((ACROSS * (run + 2 * w)) / w));
  const step = (run + 2 * w) / along;
  const grid = Array.from({ length: along + 1 }, (_, i) =>
    Array.from({ length: 2 * ACROSS + 1 }, (__, j) => {
      const s = i * step - w;
      const q = (w * j) / ACROSS - w;
      return startAt({ x: fuller.from.x + s * tx - q * ty, y: fuller.from.y + s * ty + q * tx });
    }),
  );
  const value = (i: number, j: number): number => grid[i]?.[j]?.left ?? Number.POSITIVE_INFINITY;
  const isLowest = (i: number, j: number, left: number): boolean =>
    [value(i - 1, j), value(i + 1, j), value(i, j - 1), value(i, j + 1)].every((other) => left <= other);
  const starts = [
    ...meetingPlaces(body, own).map(startAt),
    ...grid.flatMap((row, i) => row.filter(({ left }, j) => isLowest(i, j, left))),
  ];
  starts.sort((a, b) => a.left - b.left);
  const lowest = starts
    .slice(0, LOOKED_INTO)
    .map((start) => downhill(startAt, start, step, Math.atan2(ty, tx)))
    .reduce((a, b) => (b.left < a.left ? b : a));
  const at = lowest.point;
  return {
    at,
    left: lowest.left,
    uncut: body.faceUncut(at, "right") + body.faceUncut(at, "left"),
    own: grooveDepthAt(fuller, at) * (fuller.faces === "both" ? 2 : 1),
  };
}

interface Start {
  readonly point: Vec2;
  readonly left: number;
}

/** The place itself, or the nearest one of the fuller's rim where it lies beyond. */
function pulledIn(own: Line, w: number, place: Vec2): Vec2 {
  const { t, distance } = nearestOnSegment(own, place);
  if (distance <= w) return place;
  return interpolate(pointAt(own, t), place, w / distance);
}

/** Where the middle lines of a fuller and of the others come nearest: two narrow ones cross between places of a grid. */
function meetingPlaces(body: SteelBody, own: Line): Vec2[] {
  const places: Vec2[] = [own.from, own.to];
  for (const { from, to } of body.input.grooves ?? []) {
    const dx = to.x - from.x;
    const dy = to.y - from.y;
    const turn = (own.to.x - own.from.x) * dy - (own.to.y - own.from.y) * dx;
    const ends = [from, to].map((end) => nearestOnSegment(own, end).t);
    if (turn !== 0) ends.push(((from.x - own.from.x) * dy - (from.y - own.from.y) * dx) / turn);
    for (const t of ends) {
      const inside = Math.min(1, Math.max(0, t));
      places.push({
        x: own.from.x + inside * (own.to.x - own.from.x),
        y: own.from.y + inside * (own.to.y - own.from.y),
      });
    }
  }
  return places;
}

/** The foot of the slope below a place, by steps that get shorter where none of four directions leads down. */
function downhill(startAt: (place: Vec2) => Start, start: Start, first: number, along: number): Start {
  let lowest = start;
  let step = first;
  let turns = 0;
  for (let tries = 0; tries < MOST_TRIES && step > FINEST_STEP; tries++) {
    const before = lowest;
    // Every other time along the fuller, for that is how a floor runs down gently.
    const angle = along + (turns % 2) * turns * TURN;
    for (let quarter = 0; quarter < 4 && lowest === before; quarter++) {
      const a = angle + (quarter * Math.PI) / 2;
      const { x, y } = before.point;
      const there = startAt({ x: x + step * Math.cos(a), y: y + step * Math.sin(a) });
      if (there.left < before.left) lowest = there;
    }
    if (lowest === before) turns++;
    step = lowest === before ? step / 2 : Math.min(first, 2 * step);
  }
  return lowest;
}
