import { GeometryError } from "@scantling/geometry";

/** How a sheet is divided over pages. */
export interface TileOptions {
  /** White left along the paper's edges, mm; 0 to 30. */
  readonly margin?: number;
  /** By how much the drawing on neighbouring pages overlaps, mm; 6 to 50. */
  readonly overlap?: number;
}

/** What most printers leave white, mm, and an overlap that tape holds. Basis: common practice, no source. */
const USUAL = { margin: 6, overlap: 10 };
/** A ring needs 6 mm of overlap to be drawn; more than 50 mm of it, or than 30 mm of margin, is paper wasted. */
const LIMITS = { margin: { least: 0, most: 30 }, overlap: { least: 6, most: 50 } };

/**
 * Both measures, in whole mm, so that what is on the page keeps its whole mm.
 *
 * @throws {GeometryError} `tile-limits` where one is out of its limits.
 */
export function tileMeasures(options: TileOptions): { readonly margin: number; readonly overlap: number } {
  const measure = (name: "margin" | "overlap"): number => {
    const value = options[name] ?? USUAL[name];
    const { least, most } = LIMITS[name];
    if (!(value >= least && value <= most))
      throw new GeometryError("tile-limits", `the ${name} of a tiled sheet is ${least} to ${most} mm`);
    return Math.ceil(value);
  };
  return { margin: measure("margin"), overlap: measure("overlap") };
}
