import { type BoundaryPiece, Footprint } from "./footprint.js";
import { type Block, handleBlock, plainBlock } from "./handle-block.js";
import type { Outline } from "./outline.js";
import type { Stretch } from "./rounded-slab.js";
import type { BlockSpec, HandleSpec, MaterialSpec } from "./spec.js";

/** A block of the handle with its name as a part and its place in the file. */
export interface PlacedBlock {
  readonly name: string;
  readonly path: string;
  readonly material: MaterialSpec;
  readonly block: Block;
}

/** Where the solid parts of a handle stand. */
export interface HandleLayout {
  /** Handle of a hidden or through tang. */
  readonly handle: PlacedBlock | undefined;
  /** Bolsters, guard and pommel, as far as there are any, in this order. */
  readonly fittings: readonly PlacedBlock[];
  /** The steel in the flats. */
  readonly footprint: Footprint;
}

/** Rounding of stated places, mm. */
const ROUNDING = 1e-9;

/**
 * Places the blocks of a handle. The handle of a hidden tang begins at the handle front, or behind what stands on the
 * tang there: guard and bolsters that follow one another without a gap.
 */
export function handleLayout(handle: HandleSpec | undefined, outline: Outline): HandleLayout {
  const footprint = new Footprint(outline.path);
  const { bolsters = [], guard, pommel, block } = handle ?? {};
  const place = (name: string, path: string, spec: BlockSpec): PlacedBlock => ({
    name,
    path,
    material: spec.material,
    block: plainBlock(spec, spec.centre ?? steelMiddle(footprint, spec.at - spec.length / 2)),
  });
  const ahead = [
    ...bolsters.map((spec, i) =>
      place(bolsters.length > 1 ? `bolsters ${i + 1}` : "bolsters", `handle.bolsters[${i}]`, spec),
    ),
    ...(guard === undefined ? [] : [place("guard", "handle.guard", guard)]),
  ];
  const fittings = [...ahead, ...(pommel === undefined ? [] : [place("pommel", "handle.pommel", pommel)])];
  if (block === undefined) return { handle: undefined, fittings, footprint };
  const front = behindFittings(
    outline.handleFront,
    ahead.map((fitting) => fitting.block),
  );
  const centre = block.centre ?? steelMiddle(footprint, outline.handleFront);
  return {
    handle: {
      name: "handle",
      path: "handle.block",
      material: block.material,
      block: handleBlock(block, front, centre),
    },
    fittings,
    footprint,
  };
}

/** x behind the fittings that stand at the handle front without a gap. */
function behindFittings(handleFront: number, fittings: readonly Stretch[]): number {
  return [...fittings]
    .sort((a, b) => b.front - a.front)
    .reduce(
      (front, fitting) => (fitting.front >= front - ROUNDING && fitting.rear < front ? fitting.rear : front),
      handleFront,
    );
}

/**
 * y half way up the steel just behind x, mm; behind the butt that of the butt. Fillets in the corners of shoulders do
 * not count: where the outline comes in upright, the middle is that of where it has come in.
 */
function steelMiddle(footprint: Footprint, x: number): number {
  const { intervals } = footprint;
  const at = Math.max(x, footprint.minX);
  const behind = intervals.findLast((interval) => interval.x0 < at) ?? intervals[0];
  if (behind === undefined) return 0;
  const place = Math.min(at, behind.x1);
  const comesIn = (piece: BoundaryPiece): boolean => piece.uprightAt1 && piece.x1 === place;
  const fillet = behind.spans.some(({ lower, upper }) => comesIn(lower) || comesIn(upper));
  const from = fillet ? behind.x0 : place;
  let best = { middle: 0, height: Number.NEGATIVE_INFINITY };
  for (const { lower, upper } of behind.spans) {
    const low = lower.heightAt(from);
    const high = upper.heightAt(from);
    if (high - low > best.height) best = { middle: (low + high) / 2, height: high - low };
  }
  return best.middle;
}
