import { type Path, pathDataFromSegments, type Segment, splitSegment, type Vec2 } from "@scantling/geometry";
import { DECIMALS } from "../number.js";

/** How the drawing's mm (y up) lie on the page (y down). */
export interface PagePlace {
  readonly height: number;
  readonly origin: Vec2;
}

// An SVG arc is given by its ends and radius. Near a half turn a rounding of the radius by 10⁻⁵ mm would move the
// arc's middle by a hundred times that; a quarter turn keeps it below the rounding step.
const LONGEST_SWEEP = Math.PI / 2 + 1e-9;

/**
 * SVG path data for paths on the page, to the finest step that is written, trailing zeros left off.
 *
 * @example
 * const page = { height: 20, origin: { x: 0, y: 0 } };
 * pathData([polyline([{ x: 0, y: 0 }, { x: 10, y: 5 }])], page); // "M0 20 L10 15"
 */
export function pathData(paths: readonly Path[], page: PagePlace): string {
  const offset = { x: page.origin.x, y: page.height - page.origin.y };
  return paths
    .map(({ segments, closed }) =>
      pathDataFromSegments(segments.flatMap(quarterTurns), {
        flipY: true,
        decimals: DECIMALS,
        offset,
        close: closed,
      }),
    )
    .filter((data) => data !== "")
    .join(" ")
    .replace(/(\.\d*?)0+(?= |$)/g, (_, kept: string) => (kept === "." ? "" : kept));
}

function quarterTurns(segment: Segment): Segment[] {
  if (segment.kind !== "arc") return [segment];
  const count = Math.max(1, Math.ceil(Math.abs(segment.sweep) / LONGEST_SWEEP));
  return Array.from({ length: count }, (_, index) =>
    splitSegment(segment, index / count, (index + 1) / count),
  );
}
