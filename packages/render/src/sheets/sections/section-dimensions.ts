import { pathBounds, type Vec2 } from "@scantling/geometry";
import { boxOfItems } from "../../box.js";
import { EXTENSION_GAP, EXTENSION_PAST, levelDimension, uprightDimension } from "../../dimension.js";
import { type DrawingItem, strokes } from "../../drawing.js";
import { onOneLine, sizeText } from "../../label-text.js";
import { SMALL } from "../../lettering-size.js";
import type { SectionStation, SectionsModel } from "../../models/sections-model.js";
import { facesShown } from "./face-notes.js";
import { boundsOf } from "./layers.js";
import type { SectionView } from "./section-view.js";

type Units = SectionsModel["units"];

/** From a section to the nearest dimension line, and from one to the next, mm: room for a figure on either side of it. */
const FIRST = 7;
const NEXT = 8;
/** Clear space beside a figure, mm. */
export const CLEAR = 3;
/** From the top of a section up to the dimension line of its thickness, mm. */
export const ABOVE = 6;

/** Thickness at the widest place, over a section that is seen whole. */
export function thicknessDimension(
  station: SectionStation,
  view: SectionView,
  units: Units,
  beside: "left" | "right" = "left",
): DrawingItem[] {
  const { minX, maxX } = boundsOf(station.finished);
  if (station.finished.length === 0) return [];
  const [left, right] = [view.toPaper(widest(station, minX)), view.toPaper(widest(station, maxX))];
  const y = view.top + ABOVE;
  return [
    upward(left, y),
    upward(right, y),
    ...levelDimension({
      from: left.x,
      to: right.x,
      y,
      text: onOneLine(sizeText(maxX - minX, units)),
      clearOf: [left.x, right.x],
      beside,
      height: SMALL,
    }),
  ];
}

/** The highest joint of the outline at that z. */
function widest(station: SectionStation, z: number): Vec2 {
  const joints = station.finished.flatMap(({ segments }) => segments.map(({ from }) => from));
  const there = joints.filter(({ x }) => Math.abs(x - z) < 1e-6);
  return there.reduce((a, b) => (b.y > a.y ? b : a), there[0] ?? { x: z, y: pathTop(station) });
}

const pathTop = (station: SectionStation): number =>
  Math.max(...station.finished.map((path) => pathBounds(path).maxY));

const upward = (from: Vec2, y: number): DrawingItem =>
  strokes("dimension", [
    [
      { x: from.x, y: from.y + EXTENSION_GAP },
      { x: from.x, y: y + EXTENSION_PAST },
    ],
  ]);

/** Heights to the left of a section: to the bevel line, and over all. Those that reach past a break are left out. */
export function heightDimensions(station: SectionStation, view: SectionView, units: Units): DrawingItem[] {
  const { marks } = station;
  const apex = view.toPaper({ x: marks.apex, y: marks.low });
  const faces = facesShown(marks);
  const lefthand = faces.find(([side]) => side === "left")?.[1] ?? marks.left;
  const line = lefthand === undefined || lefthand.reachesSpine ? undefined : lefthand.bevelLine;
  const total = { z: -boundsOf(station.finished).maxX, y: marks.high };
  const places = [
    ...(line === undefined ? [] : [{ z: line.x, y: line.y }]),
    ...(marks.high > marks.low ? [total] : []),
  ].filter(({ y }) => !view.isCut || view.toPaper({ x: 0, y }).y < view.top);
  const low = bottomLeft(station, view, apex);
  const items: DrawingItem[] = [];
  let x = view.left - FIRST;
  for (const { z, y } of places) {
    const from = view.toPaper({ x: z, y });
    const text = sizeText(y - marks.low, units);
    const dimension = uprightDimension({
      low: low.y,
      high: from.y,
      lowFrom: low.x - EXTENSION_GAP,
      highFrom: from.x - EXTENSION_GAP,
      x,
      ...text,
    });
    items.push(...dimension);
    // A figure that stands beside its line keeps the next line off.
    x = Math.min(x - NEXT, (boxOfItems(dimension)?.minX ?? x) - CLEAR);
  }
  return items;
}

/** The left end of the lowest line of a section: its apex, or a corner of its underside. */
function bottomLeft(station: SectionStation, view: SectionView, apex: Vec2): Vec2 {
  const low = station.marks.low;
  const corners = station.finished
    .flatMap(({ segments }) => segments.map(({ from }) => from))
    .filter(({ y }) => y - low < 1e-6);
  return corners.length === 0 ? apex : view.toPaper(corners.reduce((a, b) => (b.x < a.x ? b : a)));
}
