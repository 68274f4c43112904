import { inchesToMm } from "@scantling/geometry/units";
import { type DrawingItem, lettering, strokes } from "./drawing.js";
import { SMALL } from "./lettering-size.js";

/** Length of the metric check bar, mm. */
export const METRIC_BAR = 100;
/** Length of the inch check bar, in inches. */
export const INCH_BAR = 4;

const TICK = 2.5;
const END_TICK = 4;
/** Between the base lines of the two bars, mm. */
const BAR_PITCH = 3;
const LABEL_GAP = 1.2;

/** Past its end where the last figure ends there too: half a line and rounding, mm. */
export const SHORT_BARS_END = 1;
/** How far the pair of bars reaches over and under its corner, and past its ends, mm. */
export const CHECK_BARS_OVER = BAR_PITCH + END_TICK + LABEL_GAP + SMALL + 0.6;
export const CHECK_BARS_UNDER = END_TICK + LABEL_GAP + SMALL + 0.9;
export const CHECK_BARS_END = 10;

type Direction = "across" | "up";

/**
 * A 100 mm and a 4 in bar, one above the other, by which a print is proved to be true to size in one direction.
 * The bars are the paths named `check-mm-across`, `check-in-across`, `check-mm-up`, `check-in-up`.
 *
 * @param corner - where both bars begin (the inch bar; the metric one lies beside it); whole mm, so that the bars
 *   measure exactly 100 and 101.6 in the written file.
 * @param isShort - whether the last figures end where their bars do, so that they reach no more than 1 mm past them.
 */
export function checkBars(
  direction: Direction,
  corner: { x: number; y: number },
  isShort = false,
): DrawingItem[] {
  const place = placer(direction, corner);
  const metricTicks = Array.from({ length: 11 }, (_, index) => index * 10);
  const inchTicks = Array.from({ length: INCH_BAR + 1 }, (_, index) => inchesToMm(index));
  return [
    ...bar(place, {
      name: `check-mm-${direction}`,
      base: BAR_PITCH,
      outward: 1,
      ticks: metricTicks,
      long: [0, 50, 100],
      labels: [
        [0, "0"],
        [50, "50"],
        [100, `${METRIC_BAR} mm`],
      ],
      isShort,
    }),
    ...bar(place, {
      name: `check-in-${direction}`,
      base: 0,
      outward: -1,
      ticks: inchTicks,
      long: [0, inchesToMm(INCH_BAR)],
      labels: [
        [0, "0"],
        [inchesToMm(2), "2"],
        [inchesToMm(INCH_BAR), `${INCH_BAR} in`],
      ],
      isShort,
    }),
  ];
}

/** Room that {@link slimCheckBars} take along the bars and square to them, mm. */
export const SLIM_BARS = { length: 121, height: 13 };

/** Between the foot of the slim bars' room and the lower ends of the inch bar's ticks, mm. */
const SLIM_FOOT = 1;
const AFTER_BARS = 2;

/**
 * The same two bars with their lengths behind their ends, for a narrow strip.
 *
 * @param corner - of the room that they take, see {@link SLIM_BARS}: lower left for bars across, lower right for upright
 *   ones; whole mm.
 */
export function slimCheckBars(direction: Direction, corner: { x: number; y: number }): DrawingItem[] {
  const place = placer(direction, corner);
  const inchBase = SLIM_FOOT + END_TICK;
  const metricBase = inchBase + BAR_PITCH;
  const inchLength = inchesToMm(INCH_BAR);
  const figure = (text: string, over: number): DrawingItem =>
    lettering(text, place.point(1 + inchLength + AFTER_BARS, over), {
      height: SMALL,
      rotation: place.rotation,
    });
  return [
    ...slimBar(place, {
      name: `check-mm-${direction}`,
      base: metricBase,
      outward: 1,
      ticks: Array.from({ length: 11 }, (_, index) => index * 10),
      long: [0, 50, 100],
    }),
    ...slimBar(place, {
      name: `check-in-${direction}`,
      base: inchBase,
      outward: -1,
      ticks: Array.from({ length: INCH_BAR + 1 }, (_, index) => inchesToMm(index)),
      long: [0, inchLength],
    }),
    figure(`${METRIC_BAR} mm`, metricBase),
    figure(`${INCH_BAR} in`, inchBase - SMALL),
  ];
}

const slimBar = (place: Placer, plan: Omit<BarPlan, "labels">): DrawingItem[] =>
  bar({ ...place, point: (along, over) => place.point(along + 1, over) }, { ...plan, labels: [] });

interface BarPlan {
  readonly name: string;
  /** Distance of the base line from the corner, square to the bar. */
  readonly base: number;
  /** +1: ticks and labels above the base line; −1: below. */
  readonly outward: 1 | -1;
  readonly ticks: readonly number[];
  readonly long: readonly number[];
  readonly labels: readonly (readonly [number, string])[];
  /** Whether the last label ends with the bar. */
  readonly isShort?: boolean;
}

interface Placer {
  readonly point: (along: number, over: number) => { x: number; y: number };
  readonly rotation: number;
}

function placer(direction: Direction, corner: { x: number; y: number }): Placer {
  return direction === "across"
    ? { point: (along, over) => ({ x: corner.x + along, y: corner.y + over }), rotation: 0 }
    : { point: (along, over) => ({ x: corner.x - over, y: corner.y + along }), rotation: Math.PI / 2 };
}

function bar(place: Placer, plan: BarPlan): DrawingItem[] {
  const { base, outward, ticks, long, labels, isShort = false } = plan;
  const length = ticks[ticks.length - 1] ?? 0;
  const tickEnd = (at: number): number => base + outward * (long.includes(at) ? END_TICK : TICK);
  const reach = base + outward * (END_TICK + LABEL_GAP);
  const baseLine = outward > 0 ? reach : reach - SMALL;
  return [
    { ...strokes("check", [[place.point(0, base), place.point(length, base)]]), name: plan.name },
    strokes(
      "check",
      ticks.map((at) => [place.point(at, base), place.point(at, tickEnd(at))] as const),
    ),
    ...labels.map(([at, text]) =>
      lettering(text, place.point(at, baseLine), {
        height: SMALL,
        anchor: isShort && at === length ? "end" : "middle",
        rotation: place.rotation,
      }),
    ),
  ];
}
