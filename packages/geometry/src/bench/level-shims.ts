import type { Knife } from "../blade/knife.js";
import type { SizeState } from "../blade/size-states.js";

/** A shim under the blade itself, mm. */
export interface LevelShim {
  /** mm ahead of the heel. */
  readonly x: number;
  readonly shim: number;
}

/** How a whole blade lies on the plate with its centre plane level. mm. */
export interface LevelSetUp {
  /** Where it rests on the plate: the blade's thickest place, the one nearest the handle front. */
  readonly restsAt: number;
  readonly thickness: number;
  /** Height of the centre plane over the plate: half of that thickness. */
  readonly centre: number;
  /** Under blade and tang, ends first; empty where nothing tapers. */
  readonly shims: readonly LevelShim[];
  /** What the thinnest place of the blade would lie off centre if it lay on the plate without a shim. */
  readonly offWithoutShim: number;
}

/** Shims thinner than this are left out, mm: paper. */
const PAPER = 0.05;

/**
 * Shims that bring the centre plane of a tapering blade level on a plate: at any place half of what the blade is thinner
 * there than where it rests. Exact for every law of thickness.
 *
 * @param state - Left out: flats and ricasso clean, the bevels not yet ground.
 *
 * @example
 * // 3.2 at the heel, 1.6 at the tip
 * levelSetUp(knife).shims.map(({ x, shim }) => [x, shim]); // [[100, 0.8], [75, 0.6], [50, 0.4], [25, 0.2]]
 */
export function levelSetUp(knife: Knife, state: SizeState = "hammered"): LevelSetUp {
  const { slab } = knife.body(state);
  const { edgeLength, handleFront, butt } = knife.outline;
  const blade = [handleFront, 0, ...[1, 2, 3, 4].map((quarter) => (quarter * edgeLength) / 4)];
  const looked = [...blade, ...slab.breaks.filter((x) => x > handleFront && x < edgeLength)];
  const onTang = [butt, (butt + handleFront) / 2];
  const thicknessAt = (x: number): number => slab.thicknessAt(x);
  // The blade rests on the plate, not the tang: that may still carry steel which forged flats do not.
  const thickness = Math.max(...looked.map(thicknessAt));
  const restsAt =
    looked.filter((x) => thicknessAt(x) > thickness - 1e-9).sort((a, b) => a - b)[0] ?? handleFront;
  const shims = [edgeLength, butt, ...blade.slice(2).reverse(), ...onTang.slice(1)]
    .map((x) => ({ x, shim: (thickness - thicknessAt(x)) / 2 }))
    .filter(({ x, shim }, i, all) => shim >= PAPER && all.findIndex((one) => one.x === x) === i);
  const thinnest = Math.min(...looked.map(thicknessAt));
  return { restsAt, thickness, centre: thickness / 2, shims, offWithoutShim: (thickness - thinnest) / 2 };
}
