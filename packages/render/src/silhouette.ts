import { type Bounds, crossingsAtX, type Path, pathBounds } from "@scantling/geometry";

/** How the outline bounds the paper about it, for placing lines and lettering; mm. */
export interface Silhouette {
  readonly bounds: Bounds;
  /** Highest and lowest y of the outline at x; of its nearest end where x lies outside. */
  readonly topAt: (x: number) => number;
  readonly bottomAt: (x: number) => number;
}

// Stations this close to an end are taken a little inside, where the outline surely has two sides.
const END_STEP = 1e-7;

/** The silhouette of a closed outline. */
export function silhouetteOf(outline: Path): Silhouette {
  const bounds = pathBounds(outline);
  const crossings = (x: number): number[] => {
    const within = Math.min(Math.max(x, bounds.minX + END_STEP), bounds.maxX - END_STEP);
    return crossingsAtX(outline, within).map((crossing) => crossing.point.y);
  };
  return {
    bounds,
    topAt: (x) => Math.max(...crossings(x)),
    bottomAt: (x) => Math.min(...crossings(x)),
  };
}
