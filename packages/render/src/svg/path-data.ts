import { type Arc, type Path, pointAt, type Segment, type Vec2 } from "@scantling/geometry";
import { formatCoordinate } from "../number.js";

/** From the drawing's mm (y up) to the page's (y down). */
export type PagePoint = (point: Vec2) => Vec2;

// An SVG arc is given by its ends and radius. Near a half turn a rounding of the radius by 10⁻⁵ mm would move the
// arc's middle by a hundred times that; a quarter turn keeps it below the rounding step.
const LONGEST_SWEEP = Math.PI / 2 + 1e-9;

/**
 * SVG path data for paths on the page. `toPage` must flip y and keep lengths; arcs turn the other way by it.
 *
 * @example
 * pathData([polyline([{ x: 0, y: 0 }, { x: 10, y: 5 }])], ({ x, y }) => ({ x, y: 20 - y })); // "M0 20L10 15"
 */
export function pathData(paths: readonly Path[], toPage: PagePoint): string {
  return paths.map((path) => subpath(path, toPage)).join("");
}

function subpath(path: Path, toPage: PagePoint): string {
  const first = path.segments[0];
  if (first === undefined) return "";
  const pieces = path.segments.map((segment, index) => {
    const closing = path.closed && index === path.segments.length - 1 && segment.kind === "line";
    return closing ? "" : command(segment, toPage);
  });
  return `M${pair(toPage(first.from))}${pieces.join("")}${path.closed ? "Z" : ""}`;
}

function command(segment: Segment, toPage: PagePoint): string {
  switch (segment.kind) {
    case "line":
      return `L${pair(toPage(segment.to))}`;
    case "cubic": {
      const points = [segment.control1, segment.control2, segment.to];
      return `C${points.map((point) => pair(toPage(point))).join(" ")}`;
    }
    case "arc":
      return arcCommands(segment, toPage);
  }
}

function arcCommands(arc: Arc, toPage: PagePoint): string {
  const count = Math.max(1, Math.ceil(Math.abs(arc.sweep) / LONGEST_SWEEP));
  const radius = formatCoordinate(arc.radius);
  // Counter-clockwise with y up is sweep 0 with y down.
  const sweepFlag = arc.sweep > 0 ? 0 : 1;
  const ends = Array.from({ length: count }, (_, index) =>
    index === count - 1 ? arc.to : pointAt(arc, (index + 1) / count),
  );
  return ends.map((end) => `A${radius} ${radius} 0 0 ${sweepFlag} ${pair(toPage(end))}`).join("");
}

function pair(point: Vec2): string {
  return `${formatCoordinate(point.x)} ${formatCoordinate(point.y)}`;
}
