import type { Vec2 } from "@scantling/geometry";
import { type DrawingItem, lettering, moveItem, type PathItem, polyline, strokes } from "../drawing.js";
import { SMALL } from "../lettering-size.js";
import type { Role } from "../role.js";
import { textReach, textWidth } from "../text-metrics.js";
import { LEVEL_AXIS_HEIGHT, levelAxis, uprightAxis, uprightAxisWidth } from "./axes.js";
import { type Block, lineBlock, stackBlocks } from "./block.js";
import { type CurveLabel, placeLabels, pointsBetween } from "./place-labels.js";
import { makeScale, type Scale } from "./scale.js";

/** A curve of values, already in the unit of its axis. */
export interface PlotCurve {
  readonly label: string;
  readonly role: Role;
  readonly points: readonly Vec2[];
  /** Whether what lies under it is grey. */
  readonly shaded?: boolean;
  readonly name: string;
}

/** A dot on a curve with a figure beside it, where there is room for it. */
export interface PlotDot {
  readonly at: Vec2;
  readonly text: string;
}

/** What a plot of curves over a length shows. */
export interface CurvePlot {
  readonly curves: readonly PlotCurve[];
  readonly dots?: readonly PlotDot[];
  /** Under the level axis: what it counts. */
  readonly along: string;
}

/** Heights of the field, mm: a higher one that has room for one more name takes no more than that name under the plot. */
const FIELD_HEIGHTS = [30, 34, 38, 42];
/** Most parts that the ticks of the axes make. */
const MOST_ACROSS = 6;
const MOST_UP = 5;
const DOT_RADIUS = 0.7;
/** Farthest that the figure of a dot stands from it, mm. */
const BESIDE_DOT = 1.9;
/** Room over the highest value for names, as a share of it. */
const HEADROOM = 1.06;

/**
 * Curves over axes, each named beside it; a name that finds no place there stands under the plot with a piece of its line.
 * Of the heights that the field may have the one that makes the lowest plot is taken.
 */
export function curvePlot(plot: CurvePlot, width: number): Block {
  return FIELD_HEIGHTS.map((height) => plotOf(plot, width, height)).reduce((best, each) =>
    each.height <= best.height ? each : best,
  );
}

function plotOf({ curves, dots = [], along }: CurvePlot, width: number, fieldHeight: number): Block {
  const points = curves.flatMap((curve) => curve.points);
  const up = makeScale(
    { low: 0, high: HEADROOM * Math.max(...points.map(({ y }) => y)) },
    { length: fieldHeight, most: MOST_UP, ends: "round" },
  );
  const left = uprightAxisWidth(up);
  const field = { width: width - left - 1, height: fieldHeight };
  const across = makeScale(
    { low: Math.min(...points.map(({ x }) => x)), high: Math.max(...points.map(({ x }) => x)) },
    { length: field.width, most: MOST_ACROSS, ends: "given" },
  );
  const place = ({ x, y }: Vec2): Vec2 => ({ x: across.at(x), y: up.at(y) });
  const drawn = curves.map((curve) => ({ curve, line: curve.points.map(place) }));
  const traced = drawn.map(({ curve, line }): CurveLabel => ({ text: curve.label, curve: traceOf(line) }));
  const marks = dots.map(({ at, text }) => markLabel(text, place(at), traced));
  // The sides of a grey area are edges too.
  const sides = drawn.flatMap(({ curve, line }) => (curve.shaded ? [traceOf(areaUnder(line))] : []));
  const placed = placeLabels(field, [...traced, ...marks], sides);
  const unnamed = drawn.filter((_, index) => placed.left.includes(traced[index] as CurveLabel));
  const items: DrawingItem[] = [
    ...drawn.flatMap(({ curve, line }) => (curve.shaded ? [shade(line)] : [])),
    ...drawn.map(({ curve, line }) => lineItem(curve, line)),
    ...dots.map(
      ({ at }): DrawingItem => ({ kind: "circle", role: "outline", centre: place(at), radius: DOT_RADIUS }),
    ),
    ...placed.items,
  ];
  const top = textReach("", SMALL).over - SMALL / 2;
  const height = top + fieldHeight;
  return stackBlocks([
    {
      height,
      items: [
        ...items.map((item) => moveItem(item, left, -height)),
        ...axes(up, across, { left, height, field }),
      ],
    },
    { height: LEVEL_AXIS_HEIGHT, items: [] },
    alongLine(along, left, width),
    ...unnamed.map(({ curve }) => keyLine(curve, width)),
  ]);
}

const axes = (
  up: Scale,
  across: Scale,
  place: { left: number; height: number; field: { width: number; height: number } },
): DrawingItem[] => [
  ...uprightAxis(up, { x: place.left, y: -place.height }, place.field.height),
  ...levelAxis(across, { x: place.left, y: -place.height }, place.field.width),
];

function lineItem({ role, name }: PlotCurve, line: readonly Vec2[]): PathItem {
  return { kind: "path", role, paths: [polyline(line)], name };
}

const shade = (line: readonly Vec2[]): PathItem => ({
  kind: "path",
  role: "thin",
  paths: [polyline(areaUnder(line), true)],
  fill: "light",
});

/** The curve, and down at its ends to nothing. */
function areaUnder(line: readonly Vec2[]): Vec2[] {
  const [first, last] = [line[0], line.at(-1)];
  if (first === undefined || last === undefined) return [];
  return [{ x: first.x, y: 0 }, ...line, { x: last.x, y: 0 }];
}

const traceOf = (line: readonly Vec2[]): Vec2[] =>
  line.flatMap((to, index) => pointsBetween(line[index - 1] ?? to, to));

/** The figure of a dot: it may come as near to the curves on which the dot lies as to the dot itself. */
function markLabel(text: string, at: Vec2, curves: readonly CurveLabel[]): CurveLabel {
  const on = curves.filter(({ curve }) =>
    curve.some(({ x, y }) => Math.hypot(x - at.x, y - at.y) < 2 * DOT_RADIUS),
  );
  return { text, curve: ringAbout(at), farthest: BESIDE_DOT, on };
}

/** Points of the rim of a dot. */
const ringAbout = ({ x, y }: Vec2): Vec2[] =>
  Array.from({ length: 9 }, (_, index) => ({
    x: x + DOT_RADIUS * Math.cos((index * Math.PI) / 4),
    y: y + DOT_RADIUS * Math.sin((index * Math.PI) / 4),
  }));

/** What the level axis counts, flush right under it. */
function alongLine(text: string, left: number, width: number): Block {
  return textWidth(text, SMALL) < width - left ? lineBlock(["", text], width) : lineBlock([text], width);
}

/** Length of the piece of line beside a name under the plot, mm: a whole turn of the longest dash pattern. */
const KEY = 12;

function keyLine({ label, role }: PlotCurve, width: number): Block {
  const { height } = lineBlock([label], width);
  const y = -height / 2;
  return {
    height,
    items: [
      strokes(role, [
        [
          { x: 0, y },
          { x: KEY, y },
        ],
      ]),
      lettering(label, { x: KEY + 2, y: y - SMALL / 2 }, { height: SMALL }),
    ],
  };
}
