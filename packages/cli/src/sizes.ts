import { crossingsAtX, type Outline, pathBounds } from "@scantling/geometry";

/** The sizes by which a knife is ordered, mm. */
export interface KnifeSizes {
  /** Heel to tip, along x. */
  readonly edgeLength: number;
  /** Height of the spine above the heel. */
  readonly heelHeight: number;
  /** From the rearmost point to the foremost. */
  readonly overallLength: number;
}

/** Reads them off the outline itself, so that they hold however it was given. */
export function sizesOf(outline: Outline): KnifeSizes {
  const { minX, maxX } = pathBounds(outline.path);
  return {
    edgeLength: outline.edgeLength,
    heelHeight: crossingsAtX(outline.path, 0).at(-1)?.point.y ?? 0,
    overallLength: maxX - minX,
  };
}
