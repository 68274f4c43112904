import {
  type Bounds,
  type Path,
  parametersAtX,
  pointAt,
  type Segment,
  splitSegment,
} from "@scantling/geometry";
import { calloutRow } from "../../callouts.js";
import { type DrawingItem, polyline } from "../../drawing.js";
import type { DrillingModel } from "../../models/drilling-model.js";
import type { Silhouette } from "../../silhouette.js";
import { holeCallouts } from "../pattern/labels.js";
import { holeMarks, type SharedCentreLine } from "../pattern/view.js";

/** How much of the blade is drawn ahead of the handle front and of the foremost hole, mm. */
const AHEAD = 15;
/** Less than this is not broken off, mm. */
const LEAST_LEFT_OUT = 20;
/** How far a break line runs past the outline, and the size of its zigzag, mm. */
const PAST_OUTLINE = 3;
const ZIGZAG = 2;

/** x at which the view is broken off; beyond the tip where it is not. */
export function viewEnd({ holes, handleFront }: DrillingModel, { maxX }: Bounds): number {
  const rims = holes.flatMap(({ places, diameter }) => places.map(({ centre }) => centre.x + diameter / 2));
  const end = Math.max(handleFront, ...rims) + AHEAD;
  return maxX - end < LEAST_LEFT_OUT ? Number.POSITIVE_INFINITY : end;
}

/**
 * The steel as far as it is drawn, and the holes with their centre lines.
 *
 * @param end - x at which it is broken off, see {@link viewEnd}.
 */
export function drillingView(
  model: DrillingModel,
  silhouette: Silhouette,
  shared: SharedCentreLine | undefined,
  end: number,
): DrawingItem[] {
  const broken = Number.isFinite(end);
  return [
    {
      kind: "path",
      role: "outline",
      paths: broken ? pathsBehind(model.outline, end) : [model.outline],
      name: "outline",
    },
    ...(broken ? [breakLine(end, silhouette)] : []),
    ...holeMarks(model.holes, silhouette, shared),
  ];
}

/** The pieces of an outline that lie behind x, cut exactly there. */
export function pathsBehind(outline: Path, x: number): Path[] {
  const runs: Segment[][] = [[]];
  for (const segment of outline.segments) {
    const cuts = parametersAtX(segment, x).filter((t) => t > 0 && t < 1);
    const ts = [0, ...cuts, 1];
    for (const [index, t] of ts.slice(1).entries()) {
      const from = ts[index] ?? 0;
      if (pointAt(segment, (from + t) / 2).x < x) runs.at(-1)?.push(splitSegment(segment, from, t));
      else runs.push([]);
    }
  }
  return runs.filter((run) => run.length > 0).map((segments) => ({ segments, closed: false }));
}

/** Where the view is broken off: a narrow line with a zigzag (ISO 128-2, from memory). */
function breakLine(x: number, silhouette: Silhouette): DrawingItem {
  const low = silhouette.bottomAt(x) - PAST_OUTLINE;
  const high = silhouette.topAt(x) + PAST_OUTLINE;
  const middle = (low + high) / 2;
  const zig = Math.min(ZIGZAG, (high - low) / 8);
  return {
    kind: "path",
    role: "thin",
    paths: [
      polyline([
        { x, y: low },
        { x, y: middle - 2 * zig },
        { x: x + zig, y: middle - zig },
        { x: x - zig, y: middle + zig },
        { x, y: middle + 2 * zig },
        { x, y: high },
      ]),
    ],
    name: "break-line",
  };
}

/** Above the outline, and above everything in the view, the lines to the labels begin to fan out, mm. */
const ABOVE_OUTLINE = 4;
const ABOVE_VIEW = 1;
/** Labels get at least this much room along x, mm, before they are turned upright. */
const LEAST_ROOM = 150;

/** The letters and diameters of the holes, in a row above. */
export function drillingLabels(model: DrillingModel, silhouette: Silhouette, view: Bounds): DrawingItem[] {
  const { bounds } = silhouette;
  const room = Math.max(LEAST_ROOM, 1.15 * (bounds.maxX - bounds.minX));
  const fan = Math.max(bounds.maxY + ABOVE_OUTLINE, view.maxY + ABOVE_VIEW);
  return calloutRow(holeCallouts(model, silhouette), fan, room).items;
}
