import { mapSegment, type Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import { emptyRuns, RUN_NAMES, type RunName } from "./outline.js";

/** Where the heel lies in a drawing (mm, y up), and whether its tip lies to the left. */
export interface DrawnFrame {
  readonly heel: Vec2;
  readonly mirrored: boolean;
}

/** Runs with the heel at the origin and the tip toward +x, mirrored if it has to be. */
export function placeRuns(runs: Readonly<Record<RunName, readonly Segment[]>>): {
  runs: Readonly<Record<RunName, readonly Segment[]>>;
  frame: DrawnFrame;
} {
  const heel = runs.edge[0]?.from ?? { x: 0, y: 0 };
  const tip = runs.edge.at(-1)?.to ?? heel;
  const frame = { heel, mirrored: tip.x < heel.x };
  const placed = emptyRuns();
  for (const name of RUN_NAMES) placed[name] = runs[name].map((segment) => placeSegment(segment, frame));
  return { runs: placed, frame };
}

/** From a drawing (mm, y up) to the frame of the knife. */
const intoFrame = ({ x, y }: Vec2, { heel, mirrored }: DrawnFrame): Vec2 => ({
  x: mirrored ? heel.x - x : x - heel.x,
  y: y - heel.y,
});

/** From the frame of the knife back to the drawing, mm, y up. */
export const outOfFrame = ({ x, y }: Vec2, { heel, mirrored }: DrawnFrame): Vec2 => ({
  x: mirrored ? heel.x - x : heel.x + x,
  y: heel.y + y,
});

const placeSegment = (segment: Segment, frame: DrawnFrame): Segment =>
  mapSegment(segment, {
    point: (p) => intoFrame(p, frame),
    direction: (angle) => (frame.mirrored ? Math.PI - angle : angle),
    mirrors: frame.mirrored,
  });
