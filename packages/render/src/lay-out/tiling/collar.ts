import type { Bounds, Vec2 } from "@scantling/geometry";
import { type DrawingItem, lettering, polyline, type TextItem } from "../../drawing.js";
import { KEY, SMALL } from "../../lettering-size.js";
import { textBox } from "../../text-metrics.js";
import { COLLAR } from "./tile-frame.js";

/** The sides of a window. Left and upper edges are cut and laid over a neighbour, the others lie under one. */
export type Side = "left" | "top" | "right" | "bottom";

const ARROW = { length: 4.4, width: 5 };
const BETWEEN = 2;

/** Width of a line of lettering however it is turned, mm. */
export function lineWidth(item: TextItem): number {
  const { minX, maxX } = textBox({ ...item, rotation: 0 });
  return maxX - minX;
}

/**
 * What comes on one side of a window: an arrow, the neighbour's label, and what to do there. Page mm.
 *
 * @param span - of the joint along that side; the words are left out where it is too short for them.
 */
export function collarLabel(
  window: Bounds,
  side: Side,
  neighbour: string,
  span: { readonly from: number; readonly to: number },
): DrawingItem[] {
  const upright = side === "left" || side === "right";
  const rotation = upright ? Math.PI / 2 : 0;
  const outer = outerEdge(window, side);
  // u runs along the side, v from the foot of the lettering to its head.
  const point = (u: number, v: number): Vec2 =>
    upright ? { x: outer.foot - v, y: u } : { x: u, y: outer.foot + v };
  const text = (words: string, u: number, height: number, bold: boolean): TextItem =>
    lettering(words, point(u, (COLLAR - height) / 2), { height, rotation, bold });
  const cuts = side === "left" || side === "top";
  const words = cuts
    ? `cut at the dashes, lay on ${neighbour}`
    : `lay ${neighbour} on this edge, up to the dashes`;
  const label = lineWidth(text(neighbour, 0, KEY, true));
  const short = ARROW.width + BETWEEN + label;
  const widthWith = (height: number): number => short + BETWEEN + lineWidth(text(words, 0, height, false));
  const height = [KEY, SMALL].find((each) => widthWith(each) <= span.to - span.from);
  const width = height === undefined ? short : widthWith(height);
  const start = (span.from + span.to - width) / 2;
  const afterArrow = start + ARROW.width + BETWEEN;
  return [
    arrow(point, start + ARROW.width / 2, outer.outward),
    text(neighbour, afterArrow, KEY, true),
    ...(height === undefined ? [] : [text(words, afterArrow + label + BETWEEN, height, false)]),
  ];
}

/** Where the foot of the lettering in the collar is, and whether its head looks away from the window. */
function outerEdge(window: Bounds, side: Side): { foot: number; outward: 1 | -1 } {
  switch (side) {
    case "left":
      return { foot: window.minX, outward: 1 };
    case "right":
      return { foot: window.maxX + COLLAR, outward: -1 };
    case "top":
      return { foot: window.maxY, outward: 1 };
    case "bottom":
      return { foot: window.minY - COLLAR, outward: -1 };
  }
}

/** A black triangle that points to the neighbour. */
function arrow(point: (u: number, v: number) => Vec2, u: number, outward: 1 | -1): DrawingItem {
  const middle = COLLAR / 2;
  const base = middle - (outward * ARROW.length) / 2;
  const tip = middle + (outward * ARROW.length) / 2;
  const corners = [point(u, tip), point(u - ARROW.width / 2, base), point(u + ARROW.width / 2, base)];
  return { kind: "path", role: "text", fill: "black", paths: [polyline(corners, true)] };
}
