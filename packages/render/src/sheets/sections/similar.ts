import type { Path, Segment, Vec2 } from "@scantling/geometry";

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
export function similarSegment(segment: Segment, change: Similarity): Segment {
  const at = (p: Vec2): Vec2 => similarPoint(p, change);
  switch (segment.kind) {
    case "line":
      return { kind: "line", from: at(segment.from), to: at(segment.to) };
    case "arc":
      return {
        ...segment,
        from: at(segment.from),
        to: at(segment.to),
        centre: at(segment.centre),
        radius: segment.radius * (change.factor ?? 1),
        startAngle: segment.startAngle + (change.turn ?? 0),
      };
    case "cubic":
      return {
        kind: "cubic",
        from: at(segment.from),
        control1: at(segment.control1),
        control2: at(segment.control2),
        to: at(segment.to),
      };
  }
}

/** A path after the change. */
export const similarPath = (path: Path, change: Similarity): Path => ({
  ...path,
  segments: path.segments.map((segment) => similarSegment(segment, change)),
});
