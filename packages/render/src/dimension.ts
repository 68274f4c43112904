import type { Vec2 } from "@scantling/geometry";
import { type DrawingItem, lettering, type PathItem, polyline, strokes, type TextItem } from "./drawing.js";
import { KEY, SMALL } from "./lettering-size.js";
import { textReach, textWidth } from "./text-metrics.js";

/** Space between a feature and the start of its extension line, mm. */
export const EXTENSION_GAP = 1;
/** How far an extension line runs past the dimension line, mm. */
export const EXTENSION_PAST = 2;
const ARROW_LENGTH = 3;
const ARROW_HALF_WIDTH = 0.5;
/** Clear space between lettering and the lines about it, mm. */
export const TEXT_GAP = 1;
/** Below this the arrowheads stand outside, mm: two heads and as much between them. */
const SHORTEST_WITH_HEADS_INSIDE = 3 * ARROW_LENGTH;

/** A filled arrowhead whose point is at `tip`, pointing along `angle` (rad). */
export function arrowhead(tip: Vec2, angle: number): PathItem {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const at = (along: number, across: number): Vec2 => ({
    x: tip.x + along * cos - across * sin,
    y: tip.y + along * sin + across * cos,
  });
  const points = [tip, at(-ARROW_LENGTH, ARROW_HALF_WIDTH), at(-ARROW_LENGTH, -ARROW_HALF_WIDTH)];
  return { kind: "path", role: "dimension", paths: [polyline(points, true)], fill: "black" };
}

/** A distance along x, written above its line. */
export interface LevelDimension {
  /** x of its two ends, left then right, mm. */
  readonly from: number;
  readonly to: number;
  /** y of the dimension line. */
  readonly y: number;
  readonly text: string;
  /** x of upright lines which the lettering must not straddle. */
  readonly clearOf: readonly number[];
  /** Side on which the lettering stands where it does not fit between the ends. */
  readonly beside: "left" | "right";
  readonly height?: number;
}

/** An extension line from a feature down to a little past the dimension line at y; they do not touch the feature. */
export function extensionLine(feature: Vec2, y: number): PathItem {
  return strokes("dimension", [
    [
      { x: feature.x, y: feature.y - EXTENSION_GAP },
      { x: feature.x, y: y - EXTENSION_PAST },
    ],
  ]);
}

/**
 * A level dimension as ISO 129-1 draws it (from memory): filled arrowheads, figure above the line; its extension
 * lines are drawn apart, since neighbours share them. A figure that does not fit between the ends stands beside them,
 * on the drawn-out line.
 *
 * @example
 * levelDimension({ from: 0, to: 225, y: -10, text: "225 mm", clearOf: [0, 225], beside: "right" });
 */
export function levelDimension(dimension: LevelDimension): DrawingItem[] {
  const { from, to, y, text } = dimension;
  const height = dimension.height ?? KEY;
  const width = textWidth(text, height);
  const middle = placeText(dimension, width);
  const inside = to - from >= SHORTEST_WITH_HEADS_INSIDE;
  const tail = inside ? 0 : 2 * ARROW_LENGTH;
  const left = Math.min(from - tail, middle - width / 2);
  const right = Math.max(to + tail, middle + width / 2);
  return [
    strokes("dimension", [
      [
        { x: left, y },
        { x: right, y },
      ],
    ]),
    arrowhead({ x: from, y }, inside ? Math.PI : 0),
    arrowhead({ x: to, y }, inside ? 0 : Math.PI),
    {
      ...lettering(text, { x: middle, y: y + baseLineAbove(height) }, { height, anchor: "middle" }),
      slide: slideOf(dimension, width, middle),
    },
  ];
}

/** Where else between the ends the figure may stand, counted from where it does. */
function slideOf(
  { from, to, clearOf }: LevelDimension,
  width: number,
  middle: number,
): NonNullable<TextItem["slide"]> {
  const half = width / 2 + TEXT_GAP + ARROW_LENGTH;
  const stops = [from, ...clearOf.filter((x) => x > from && x < to), to].sort((a, b) => a - b);
  return stops.slice(1).flatMap((end, index) => {
    const room = { from: (stops[index] ?? end) + half - middle, to: end - half - middle };
    return room.to > room.from ? [room] : [];
  });
}

/** Clear space between lettering and the line on which it stands, mm: a little more than half an arrowhead. */
const OVER_LINE = ARROW_HALF_WIDTH + 0.1;

/** From a line to the base line of the lettering above it, mm: room for descenders and a gap. */
const baseLineAbove = (height: number): number => textReach("", height).under + OVER_LINE;

/** Two places nearer than this are one, mm. */
const ROUNDING = 1e-6;

/** x of the middle of the figure: between the ends if it fits, else the nearest clear place on the side asked for. */
function placeText(dimension: LevelDimension, width: number): number {
  const { from, to, clearOf, beside } = dimension;
  const half = width / 2 + TEXT_GAP;
  const isClear = (middle: number): boolean => clearOf.every((x) => Math.abs(x - middle) >= half - ROUNDING);
  const centre = (from + to) / 2;
  if (to - from >= width + 2 * TEXT_GAP && isClear(centre)) return centre;
  const headRoom = to - from >= SHORTEST_WITH_HEADS_INSIDE ? 0 : ARROW_LENGTH;
  const stops = [from, to, ...clearOf];
  // There is always such a place: beyond the outermost stop.
  return beside === "left"
    ? Math.max(
        ...stops.map((x) => x - headRoom - half).filter((x) => x + half <= from + ROUNDING && isClear(x)),
      )
    : Math.min(
        ...stops.map((x) => x + headRoom + half).filter((x) => x - half >= to - ROUNDING && isClear(x)),
      );
}

/** A distance along y, read from the right. */
export interface UprightDimension {
  /** Lower and upper end of the distance, mm. */
  readonly low: number;
  readonly high: number;
  /** x at which the lower and the upper extension line start; the gap is already in. */
  readonly lowFrom: number;
  readonly highFrom: number;
  /** x of the dimension line. */
  readonly x: number;
  /** The figure, and the same in the other unit where the sheet shows both. */
  readonly main: string;
  readonly other?: string;
  /** Whether the drawing will be turned over: then figures stand on the right of the line, to come to its left. */
  readonly mirrored?: boolean;
}

/** An upright dimension: the figure along its line where it fits, else on both sides of it, else level beside it. */
export function uprightDimension(dimension: UprightDimension): DrawingItem[] {
  const { low, high, lowFrom, highFrom, x } = dimension;
  const side = Math.sign(x - lowFrom);
  const past = x + side * EXTENSION_PAST;
  const inside = high - low >= SHORTEST_WITH_HEADS_INSIDE;
  const tail = inside ? 0 : 2 * ARROW_LENGTH;
  return [
    strokes("dimension", [
      [
        { x: lowFrom, y: low },
        { x: past, y: low },
      ],
      [
        { x: highFrom, y: high },
        { x: past, y: high },
      ],
      [
        { x, y: low - tail },
        { x, y: high + tail },
      ],
    ]),
    arrowhead({ x, y: low }, inside ? -Math.PI / 2 : Math.PI / 2),
    arrowhead({ x, y: high }, inside ? Math.PI / 2 : -Math.PI / 2),
    ...uprightText(dimension, side),
  ];
}

/** Lettering heights that a figure along an upright line may take, the first that fits. */
const ALONG = [KEY, SMALL] as const;

const fits = (text: string, height: number, length: number): boolean =>
  textWidth(text, height) + 2 * TEXT_GAP <= length;

/** Whether a figure fits along an upright dimension line of this length, mm. */
export const fitsAlong = (text: string, length: number): boolean =>
  ALONG.some((height) => fits(text, height, length));

function uprightText(dimension: UprightDimension, side: number): DrawingItem[] {
  const { low, high, x, main, other } = dimension;
  const length = high - low;
  const middle = (low + high) / 2;
  const along = (text: string, height: number, at: number): DrawingItem => {
    const room = length / 2 - textWidth(text, height) / 2 - TEXT_GAP - ARROW_LENGTH;
    return {
      ...lettering(text, { x: at, y: middle }, { height, anchor: "middle", rotation: Math.PI / 2 }),
      ...(room > 0 ? { slide: [{ from: -room, to: room }] } : {}),
    };
  };
  const left = (height: number): number => x - baseLineAbove(height);
  const right = (text: string, height: number): number => x + OVER_LINE + textReach(text, height).over;
  const whole = other === undefined ? main : `${main} ${other}`;
  for (const height of ALONG) {
    if (!fits(whole, height, length)) continue;
    return [along(whole, height, dimension.mirrored === true ? right(whole, height) : left(height))];
  }
  for (const height of ALONG) {
    if (other === undefined || !fits(main, height, length) || !fits(other, height, length)) continue;
    const [before, after] = dimension.mirrored === true ? [other, main] : [main, other];
    return [along(before, height, left(height)), along(after, height, right(after, height))];
  }
  const anchor = side < 0 ? "end" : "start";
  const beside = x + side * (EXTENSION_PAST + TEXT_GAP);
  if (other === undefined) {
    return [lettering(main, { x: beside, y: middle - 0.5 * KEY }, { height: KEY, anchor })];
  }
  return [
    lettering(main, { x: beside, y: middle + 0.4 * KEY }, { height: KEY, anchor }),
    lettering(other, { x: beside, y: middle - 1.3 * KEY }, { height: KEY, anchor }),
  ];
}
