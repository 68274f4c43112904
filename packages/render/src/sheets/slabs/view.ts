import {
  type HandleHole,
  letterName,
  mirrorPath,
  type Path,
  pathBounds,
  type Vec2,
} from "@scantling/geometry";
import { type Callout, calloutRow } from "../../callouts.js";
import {
  arrowhead,
  EXTENSION_GAP,
  extensionLine,
  levelDimension,
  uprightDimension,
} from "../../dimension.js";
import { type DrawingItem, lettering, rectangle, strokes } from "../../drawing.js";
import { holeMark } from "../../hole-mark.js";
import { onOneLine, sizeText } from "../../label-text.js";
import { KEY, SMALL } from "../../lettering-size.js";
import type { SheetUnits } from "../../sheet-units.js";
import { textWidth } from "../../text-metrics.js";
import { sawText } from "./figures.js";

/** One face of the wood with the blank about it, as it is drawn; mm. */
export interface WoodView {
  readonly name: string;
  readonly title: string;
  readonly outlines: readonly Path[];
  /** What lies inside it and is not seen. */
  readonly hidden: readonly Path[];
  readonly holes: readonly HandleHole[];
  /** Two opposite corners of the blank: lower left and upper right. */
  readonly blank: { readonly low: Vec2; readonly high: Vec2 };
  /** Front to the right, or to the left where it is seen from the other side. */
  readonly front: "right" | "left";
  readonly units: SheetUnits;
}

/** From the blank to a dimension line, mm. */
const DIMENSION = 9;
/** Length of the arrow that shows the grain, mm. */
const GRAIN = 24;
const GAP = 2.5;

/** The same wood seen from the other face, front to the left. */
export function mirroredView(view: WoodView, name: string, title: string): WoodView {
  const flip = ({ x, y }: Vec2): Vec2 => ({ x: 0 - x, y });
  const { low, high } = view.blank;
  return {
    ...view,
    name,
    title,
    outlines: view.outlines.map(mirrorPath),
    hidden: view.hidden.map(mirrorPath),
    holes: view.holes.map((hole) => ({
      ...hole,
      centre: flip(hole.centre),
      ...(hole.slot === undefined
        ? {}
        : { slot: { to: flip(hole.slot.to), rim: mirrorPath(hole.slot.rim) } }),
    })),
    blank: { low: { x: 0 - high.x, y: low.y }, high: { x: 0 - low.x, y: high.y } },
    front: view.front === "right" ? "left" : "right",
  };
}

/** Outline, holes and blank with its sizes, the title over them. */
export function woodItems(view: WoodView): DrawingItem[] {
  const { name, outlines, hidden, holes, blank, units } = view;
  const { low, high } = blank;
  const top = reachOf(view).high.y + GAP;
  const labels = holes.map((hole) => holeCallout(hole, top, units));
  const row = labels.length === 0 ? undefined : calloutRow(labels, top, Math.max(60, high.x - low.x));
  return [
    { kind: "path", role: "outline", name: `${name}-outline`, paths: [...outlines] },
    ...(hidden.length === 0 ? [] : [{ kind: "path", role: "hidden", paths: [...hidden] } as const]),
    { ...rectangle("adjacent", low, high), name: `${name}-blank` },
    ...holes.flatMap((hole) =>
      holeMark({ hole, top, level: true, name: `${name}-hole-${letterName(hole.index)}` }),
    ),
    ...(row?.items ?? []),
    ...titleItems(view, (row?.top ?? top) + GAP),
    ...blankDimensions(view),
    frontMark(view),
  ];
}

function holeCallout(hole: HandleHole, y: number, units: WoodView["units"]): Callout {
  const { index, centre, diameter } = hole;
  const size = onOneLine(sizeText(diameter, units));
  return { from: { x: centre.x, y }, lines: [`${letterName(index)}  Ø ${size}`] };
}

/** What is seen, and the way of the grain beside it. */
function titleItems({ title, blank }: WoodView, foot: number): DrawingItem[] {
  const left = blank.low.x;
  const y = foot + 1.5;
  const start = left + textWidth(title, KEY, true) + 8;
  const middle = y + SMALL / 2;
  return [
    lettering(title, { x: left, y }, { height: KEY, bold: true }),
    strokes("thin", [
      [
        { x: start, y: middle },
        { x: start + GRAIN, y: middle },
      ],
    ]),
    arrowhead({ x: start, y: middle }, Math.PI),
    arrowhead({ x: start + GRAIN, y: middle }, 0),
    lettering("grain", { x: start + GRAIN + 2, y }, { height: SMALL }),
  ];
}

/** The box about wood, blank and what lies inside them: a tang may reach out of its block. */
function reachOf({ outlines, hidden, blank }: WoodView): WoodView["blank"] {
  const boxes = [...outlines, ...hidden].map(pathBounds);
  return {
    low: {
      x: Math.min(blank.low.x, ...boxes.map((box) => box.minX)),
      y: Math.min(blank.low.y, ...boxes.map((box) => box.minY)),
    },
    high: {
      x: Math.max(blank.high.x, ...boxes.map((box) => box.maxX)),
      y: Math.max(blank.high.y, ...boxes.map((box) => box.maxY)),
    },
  };
}

function blankDimensions(view: WoodView): DrawingItem[] {
  const { blank, front, units } = view;
  const { low, high } = blank;
  const reach = reachOf(view);
  const y = reach.low.y - DIMENSION;
  // Upright on the butt's side: the front carries its mark.
  const atLeft = front === "right";
  const x = atLeft ? reach.low.x - DIMENSION : reach.high.x + DIMENSION;
  const from = atLeft ? low.x - EXTENSION_GAP : high.x + EXTENSION_GAP;
  return [
    extensionLine({ x: low.x, y: low.y }, y),
    extensionLine({ x: high.x, y: low.y }, y),
    ...levelDimension({
      from: low.x,
      to: high.x,
      y,
      text: `blank ${onOneLine(sawText(high.x - low.x, units))}`,
      clearOf: [],
      beside: "right",
    }),
    ...uprightDimension({
      low: low.y,
      high: high.y,
      lowFrom: from,
      highFrom: from,
      x,
      ...sawText(high.y - low.y, units),
    }),
  ];
}

/** Between the blank and the word beside it, mm. */
const BESIDE = 4;

function frontMark(view: WoodView): DrawingItem {
  const { low, high } = reachOf(view);
  // Turned lettering stands to the left of its base line.
  const x = view.front === "right" ? high.x + BESIDE + SMALL : low.x - BESIDE;
  return lettering(
    "front",
    { x, y: (view.blank.low.y + view.blank.high.y) / 2 },
    { height: SMALL, anchor: "middle", rotation: Math.PI / 2 },
  );
}

/** Two corners of a blank about a view, from its size and the outline's own middle line. */
export function cornersAbout(corner: Vec2, across: number, up: number): WoodView["blank"] {
  return { low: corner, high: { x: corner.x + across, y: corner.y + up } };
}

/** y of the lowest place and x of the foremost one, mm: what holes are measured from. */
export function frontFoot(paths: readonly Path[]): Vec2 {
  const boxes = paths.map(pathBounds);
  return { x: Math.max(...boxes.map((box) => box.maxX)), y: Math.min(...boxes.map((box) => box.minY)) };
}
