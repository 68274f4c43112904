import type { Vec2 } from "@scantling/geometry";
import { type DrawingItem, polyline, rectangle, strokes } from "../drawing.js";

/** How a bar is told from its neighbours: never by its tone alone. */
export type BarLook = "grey" | "hatched" | "white";

/** Between the lines of a hatching, mm, measured along x. */
const HATCH_STEP = 1.4;

/** A bar between two places along x, mm; its frame is a narrow line. */
export function barItems(
  from: number,
  to: number,
  place: { readonly bottom: number; readonly height: number; readonly look: BarLook },
): DrawingItem[] {
  const { bottom, height, look } = place;
  const low: Vec2 = { x: from, y: bottom };
  const high: Vec2 = { x: to, y: bottom + height };
  return [
    ...(look === "grey" ? [{ ...rectangle("thin", low, high), fill: "light" as const }] : []),
    ...(look === "hatched" ? hatching(low, high) : []),
    rectangle("thin", low, high),
  ];
}

/** Lines at 45° in a box, rising to the right; those of neighbouring boxes run on. */
function hatching(low: Vec2, high: Vec2): DrawingItem[] {
  const height = high.y - low.y;
  const lines: (readonly [Vec2, Vec2])[] = [];
  const first = Math.ceil((low.x - height) / HATCH_STEP);
  for (let index = first; index * HATCH_STEP < high.x; index++) {
    const foot = index * HATCH_STEP;
    const from = Math.max(low.x, foot);
    const to = Math.min(high.x, foot + height);
    if (to - from < 0.05) continue;
    lines.push([
      { x: from, y: low.y + from - foot },
      { x: to, y: low.y + to - foot },
    ]);
  }
  return lines.length === 0 ? [] : [strokes("hatch", lines)];
}

/** An upright stroke across a bar, past it on both sides, mm. */
export function markItems(x: number, bottom: number, height: number): DrawingItem {
  return {
    kind: "path",
    role: "outline",
    paths: [
      polyline([
        { x, y: bottom - 0.6 },
        { x, y: bottom + height + 0.6 },
      ]),
    ],
  };
}
