import { handleLayout } from "../blade/handle-layout.js";
import type { Knife } from "../blade/knife.js";
import type { LawSpec } from "../blade/spec.js";
import { pathBounds } from "../plane/bounds.js";
import { BENCH_DEFAULTS } from "./defaults.js";
import { slabPieces } from "./slab-pieces.js";

/** What to saw a handle from, mm. */
export interface HandleBlank {
  /** A pair of slabs, or one block around a hidden tang. */
  readonly kind: "slabs" | "block";
  readonly material: string;
  readonly length: number;
  readonly height: number;
  /** Of one slab, or across the block. */
  readonly thickness: number;
  /** Slabs: block that a matching pair is sawn out of, two slabs and a saw cut thick. */
  readonly bookMatched?: number;
}

const greatest = (law: LawSpec): number =>
  typeof law === "number" ? law : Math.max(...law.map(({ is }) => is));

/**
 * The blank for slabs or handle block: its greatest sizes with what is sanded and sawn off around them. Undefined where
 * the handle has neither.
 *
 * @param kerf - Width of the saw's cut, mm.
 *
 * @example
 * handleBlank(knife, 2); // { kind: "slabs", material: "European ash", length: 111, height: 30, thickness: 9, bookMatched: 20 }
 */
export function handleBlank(knife: Knife, kerf: number): HandleBlank | undefined {
  const { slabs, block } = knife.spec.handle ?? {};
  const over = BENCH_DEFAULTS.blankOver.value;
  if (slabs !== undefined) {
    const { fittings } = handleLayout(knife.spec.handle, knife.outline);
    const pieces = slabPieces(
      knife.outline,
      fittings.map(({ block }) => block),
    );
    const { minX, maxX, minY, maxY } = pathBounds({
      segments: pieces.flatMap(({ segments }) => segments),
      closed: false,
    });
    const thickness = greatest(slabs.thickness) + BENCH_DEFAULTS.slabSanding.value;
    return {
      kind: "slabs",
      material: slabs.material.name,
      length: maxX - minX + over,
      height: maxY - minY + over,
      thickness,
      bookMatched: 2 * thickness + kerf,
    };
  }
  if (block === undefined) return undefined;
  return {
    kind: "block",
    material: block.material.name,
    length: block.length + over,
    height: greatest(block.height) + over,
    thickness: greatest(block.width) + over,
  };
}
