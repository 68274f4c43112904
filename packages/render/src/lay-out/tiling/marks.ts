import { type Bounds, boundsMeet, type Vec2 } from "@scantling/geometry";
import { type DrawingItem, strokes } from "../../drawing.js";
import type { Joint, TileGrid } from "./grid.js";
import { jointsOf } from "./grid.js";
import type { InkMap } from "./ink-map.js";

/** Clear space about a mark and beside a joint's line where lettering stands, mm. */
const CLEAR = 0.6;
/** Farthest that a mark slides from the end of its joint, as a share of the joint. */
const FARTHEST = 0.4;
const LONGEST_ARM = 4.5;
/** Shortest piece of a joint's line that is drawn, mm. */
const SHORTEST = 2;

/** Half the width of a mark, mm: it lies in the overlap with some paper about it. */
export const markArm = (overlap: number): number => Math.min(LONGEST_ARM, overlap / 2 - 0.5);

interface Drawn {
  readonly ink: InkMap;
  readonly texts: readonly Bounds[];
}

/**
 * Where the crossing marks stand, in view mm: at both ends of every joint, which is at the corner where four pages meet.
 * A mark keeps clear of lettering, and of lines where it can: it slides along its joint until it does.
 */
export function markPlaces(grid: TileGrid, drawn: Drawn): Vec2[] {
  const places = new Map<string, Vec2>();
  for (const joint of jointsOf(grid)) {
    for (const end of ["from", "to"] as const) {
      const place = markPlace(joint, end, markArm(grid.overlap), drawn);
      if (place !== undefined) places.set(`${place.x} ${place.y}`, place);
    }
  }
  return [...places.values()];
}

function markPlace(joint: Joint, end: "from" | "to", arm: number, drawn: Drawn): Vec2 | undefined {
  const first = joint.meets[end] ? 0 : Math.ceil(arm + CLEAR);
  const last = FARTHEST * (joint.to - joint.from);
  const at = (slide: number): Vec2 => pointOn(joint, joint[end] + (end === "from" ? slide : -slide));
  const reach = arm + CLEAR;
  const hasNoText = (point: Vec2): boolean =>
    !drawn.texts.some((box) => boundsMeet(box, around(point, reach)));
  const hasNothing = (point: Vec2): boolean => {
    const box = around(point, reach);
    return drawn.ink.isEmpty(
      Math.floor(box.minX),
      Math.floor(box.minY),
      Math.ceil(box.maxX),
      Math.ceil(box.maxY),
    );
  };
  // A corner mark serves four pages, so a line through it is no reason to move it.
  const tests = joint.meets[end] ? [hasNoText] : [hasNothing, hasNoText];
  for (const isFree of tests) {
    for (let slide = first; slide <= last; slide++) {
      const point = at(slide);
      if (isFree(point)) return point;
    }
  }
  return undefined;
}

const pointOn = ({ upright, at }: Joint, along: number): Vec2 =>
  upright ? { x: at, y: along } : { x: along, y: at };

const around = ({ x, y }: Vec2, by: number): Bounds => ({
  minX: x - by,
  minY: y - by,
  maxX: x + by,
  maxY: y + by,
});

/** A cross in a ring: laid edge on line, the two half rings close. */
export function markItems({ x, y }: Vec2, arm: number): DrawingItem[] {
  const cross = strokes("thin", [
    [
      { x: x - arm, y },
      { x: x + arm, y },
    ],
    [
      { x, y: y - arm },
      { x, y: y + arm },
    ],
  ]);
  return [cross, { kind: "circle", role: "thin", centre: { x, y }, radius: (2 / 3) * arm }];
}

/** The line of a joint between two ends, broken where lettering or a mark stands. */
export function jointLine(
  line: { readonly upright: boolean; readonly at: number; readonly from: number; readonly to: number },
  texts: readonly Bounds[],
  marks: readonly Vec2[],
  arm: number,
): DrawingItem[] {
  const { upright, at, from, to } = line;
  const spanOf = (box: Bounds): { across: [number, number]; along: [number, number] } =>
    upright
      ? { across: [box.minX, box.maxX], along: [box.minY, box.maxY] }
      : { across: [box.minY, box.maxY], along: [box.minX, box.maxX] };
  const gaps = [...texts.map((box) => grow(box, CLEAR)), ...marks.map((mark) => around(mark, arm))]
    .map(spanOf)
    .filter(({ across: [low, high] }) => at > low && at < high)
    .map(({ along }) => along)
    .sort((a, b) => a[0] - b[0]);
  const pieces: (readonly [number, number])[] = [];
  let start = from;
  for (const [low, high] of gaps) {
    pieces.push([start, Math.min(low, to)]);
    start = Math.max(start, high);
  }
  pieces.push([start, to]);
  const point = (along: number): Vec2 => (upright ? { x: at, y: along } : { x: along, y: at });
  const drawn = pieces.filter(([a, b]) => b - a >= SHORTEST);
  return drawn.length === 0
    ? []
    : [
        strokes(
          "fold",
          drawn.map(([a, b]) => [point(a), point(b)] as const),
        ),
      ];
}

const grow = (box: Bounds, by: number): Bounds => ({
  minX: box.minX - by,
  minY: box.minY - by,
  maxX: box.maxX + by,
  maxY: box.maxY + by,
});
