import type { Vec2 } from "@scantling/geometry";
import { type DrawingItem, lettering, strokes } from "../drawing.js";
import { SMALL } from "../lettering-size.js";
import { textReach, textWidth } from "../text-metrics.js";
import type { Scale } from "./scale.js";

/** How far ticks reach out of the plot, and from there to their figures, mm. */
const TICK = 1.2;
const TICK_GAP = 0.8;
/** The same under a level axis: the figure at the foot of an upright one hangs down beside it, mm. */
const UNDER_TICK = 1.4;
/** Between the figures of an axis, mm. */
const BETWEEN = 1.5;

/** Room that a level axis with its figures takes under the plot, mm. */
export const LEVEL_AXIS_HEIGHT = TICK + UNDER_TICK + textReach("", SMALL).over + textReach("", SMALL).under;

/** A level axis, its ticks and figures under it; a figure that would run into the one before it is left out. */
export function levelAxis(scale: Scale, start: Vec2, length: number): DrawingItem[] {
  const { x, y } = start;
  const base = y - TICK - UNDER_TICK - textReach("", SMALL).over;
  let free = Number.NEGATIVE_INFINITY;
  const figures = scale.ticks.flatMap((tick): DrawingItem[] => {
    const at = x + scale.at(tick);
    const half = textWidth(scale.write(tick), SMALL) / 2;
    if (at - half < free) return [];
    free = at + half + BETWEEN;
    return [lettering(scale.write(tick), { x: at, y: base }, { height: SMALL, anchor: "middle" })];
  });
  return [
    strokes("thin", [
      [start, { x: x + length, y }],
      ...scale.ticks.map((tick): [Vec2, Vec2] => [
        { x: x + scale.at(tick), y },
        { x: x + scale.at(tick), y: y - TICK },
      ]),
    ]),
    ...figures,
  ];
}

/** Room that an upright axis with its figures takes left of the plot, mm. */
export const uprightAxisWidth = (scale: Scale): number =>
  TICK + TICK_GAP + Math.max(...scale.ticks.map((tick) => textWidth(scale.write(tick), SMALL)));

/** An upright axis, its ticks and figures left of it. */
export function uprightAxis(scale: Scale, foot: Vec2, height: number): DrawingItem[] {
  const { x, y } = foot;
  return [
    strokes("thin", [
      [foot, { x, y: y + height }],
      ...scale.ticks.map((tick): [Vec2, Vec2] => [
        { x: x - TICK, y: y + scale.at(tick) },
        { x, y: y + scale.at(tick) },
      ]),
    ]),
    ...scale.ticks.map((tick) =>
      lettering(
        scale.write(tick),
        // Half a capital down, so that the figure stands level with its tick.
        { x: x - TICK - TICK_GAP, y: y + scale.at(tick) - SMALL / 2 },
        { height: SMALL, anchor: "end" },
      ),
    ),
  ];
}
