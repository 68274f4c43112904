import { arcAround, type Vec2 } from "@scantling/geometry";
import { arrowhead, EXTENSION_GAP, EXTENSION_PAST, TEXT_GAP } from "../../dimension.js";
import { type DrawingItem, lettering, strokes } from "../../drawing.js";
import { KEY, LINE_PITCH } from "../../lettering-size.js";

/** Length of the lines that carry the heads of an angle from outside, mm. */
const TAIL = 7;

/**
 * The angle of an edge that points down, measured under it where its faces are drawn on: heads from outside, figure to
 * the left, for sizes along the faces stand on the right.
 *
 * @param angle.right - between the centre plane and the right-hand face, rad; `left` likewise.
 */
export function angleDimension(angle: {
  readonly apex: Vec2;
  readonly right: number;
  readonly left: number;
  readonly radius: number;
  readonly text: string;
  /** x of the leftmost upright line that runs down past it. */
  readonly clearOf: number;
}): DrawingItem[] {
  const { apex, radius } = angle;
  // Drawn on downward the right-hand face goes to the left.
  const start = -Math.PI / 2 - angle.right;
  const end = -Math.PI / 2 + angle.left;
  const at = (direction: number, r: number): Vec2 => ({
    x: apex.x + r * Math.cos(direction),
    y: apex.y + r * Math.sin(direction),
  });
  const tail = TAIL / radius;
  const figure = at(start - tail, radius);
  return [
    strokes(
      "dimension",
      [start, end].map((direction): [Vec2, Vec2] => [
        at(direction, EXTENSION_GAP),
        at(direction, radius + EXTENSION_PAST),
      ]),
    ),
    {
      kind: "path",
      role: "dimension",
      paths: [{ segments: [arcAround(apex, radius, start - tail, end - start + 2 * tail)], closed: false }],
    },
    arrowhead(at(start, radius), start + Math.PI / 2),
    arrowhead(at(end, radius), end - Math.PI / 2),
    lettering(
      angle.text,
      { x: Math.min(figure.x, angle.clearOf) - TEXT_GAP - 1, y: figure.y - 0.3 * KEY },
      { height: KEY, anchor: "end" },
    ),
  ];
}

/** From the line to its figure, and past what stands beside it, mm. */
const BESIDE = 3;
const LEAST_OFFSET = 9;
const HEADS_INSIDE = 9;

/** A distance along a slanting face on the right of a view, with its figure to the right of the line. */
export function slantDimension(dimension: {
  readonly from: Vec2;
  readonly to: Vec2;
  /** x that the dimension line stays clear of. */
  readonly clearOf: number;
  readonly lines: readonly string[];
}): DrawingItem[] {
  const { from, to, clearOf, lines } = dimension;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const out = { x: along.y, y: -along.x };
  const offset = Math.max(LEAST_OFFSET, (clearOf + BESIDE - Math.min(from.x, to.x)) / Math.max(0.3, out.x));
  const off = (p: Vec2, by: number, ahead = 0): Vec2 => ({
    x: p.x + by * out.x + ahead * along.x,
    y: p.y + by * out.y + ahead * along.y,
  });
  const direction = Math.atan2(along.y, along.x);
  const inside = length >= HEADS_INSIDE;
  const tail = inside ? 0 : TAIL - 1;
  const middle = off({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }, offset);
  const rise = (lines.length * KEY * LINE_PITCH) / 2;
  // The line leans over the figure: it stands right of the line's place at the upper end of the lettering.
  const lean = Math.abs(along.x / Math.max(0.2, along.y)) * (rise + KEY);
  const left = middle.x + lean + BESIDE;
  return [
    strokes("dimension", [
      [off(from, EXTENSION_GAP), off(from, offset + EXTENSION_PAST)],
      [off(to, EXTENSION_GAP), off(to, offset + EXTENSION_PAST)],
      [off(from, offset, -tail), off(to, offset, tail)],
    ]),
    arrowhead(off(from, offset), inside ? direction + Math.PI : direction),
    arrowhead(off(to, offset), inside ? direction : direction + Math.PI),
    ...lines.map((line, i) =>
      lettering(line, { x: left, y: middle.y + rise - (i + 0.75) * KEY * LINE_PITCH }, { height: KEY }),
    ),
  ];
}
