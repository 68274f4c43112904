import { mapSegment, type Path, type Segment, type Vec2 } from "@scantling/geometry";

/** A change of size, turn and place that keeps shapes: turned by `turn` rad, `factor` times as large, then moved. */
export interface Similarity {
  readonly factor?: number;
  readonly turn?: number;
  readonly dx?: number;
  readonly dy?: number;
}

/** A point after the change. */
export function similarPoint(p: Vec2, { factor = 1, turn = 0, dx = 0, dy = 0 }: Similarity): Vec2 {
  const cos = factor * Math.cos(turn);
  const sin = factor * Math.sin(turn);
  return { x: cos * p.x - sin * p.y + dx, y: sin * p.x + cos * p.y + dy };
}

/** A segment after the change: lines stay lines, arcs arcs. */
export const similarSegment = (segment: Segment, change: Similarity): Segment =>
  mapSegment(segment, {
    point: (p) => similarPoint(p, change),
    direction: (angle) => angle + (change.turn ?? 0),
    radius: (mm) => mm * (change.factor ?? 1),
  });

/** A path after the change. */
export const similarPath = (path: Path, change: Similarity): Path => ({
  ...path,
  segments: path.segments.map((segment) => similarSegment(segment, change)),
});
