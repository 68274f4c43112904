import type { Knife } from "../blade/knife.js";
import type { SizeState } from "../blade/size-states.js";
import { invariant } from "../errors/errors.js";

/** A shim under blade or tang, mm. */
export interface LevelShim {
  /** mm ahead of the heel. */
  readonly x: number;
  readonly shim: number;
}

/** How a whole blade lies on the plate with its centre plane level. mm. */
export interface LevelSetUp {
  /** Where it rests on the plate: its thickest place, the rearmost of the blade or the foremost of a thicker tang. */
  readonly restsAt: number;
  /** Which side of the handle front that is. */
  readonly restsOn: "blade" | "tang";
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
 * there than where it rests, the tang included. Exact for every law of thickness.
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
  const onBlade = [...blade, ...slab.breaks.filter((x) => x > handleFront && x < edgeLength)].map(
    (x): Place => ({ x, thickness: slab.thicknessAt(x), on: "blade" }),
  );
  const middle = (butt + handleFront) / 2;
  const onTang = [handleFront, middle, butt, ...slab.breaks.filter((x) => x > butt && x < handleFront)].map(
    (x): Place => ({ x, thickness: slab.tangThicknessAt(x), on: "tang" }),
  );
  const rests = restingPlace(onBlade, onTang);
  const { thickness } = rests;
  const shims = [edgeLength, butt, ...blade.slice(1).reverse(), middle]
    .map((x) => ({ x, shim: (thickness - slab.thicknessAt(x)) / 2 }))
    .filter(({ x, shim }, i, all) => shim >= PAPER && all.findIndex((one) => one.x === x) === i);
  const thinnest = Math.min(...onBlade.map((place) => place.thickness));
  return {
    restsAt: rests.x,
    restsOn: rests.on,
    thickness,
    centre: thickness / 2,
    shims,
    offWithoutShim: (thickness - thinnest) / 2,
  };
}

interface Place {
  readonly x: number;
  readonly thickness: number;
  readonly on: "blade" | "tang";
}

/** Thicknesses nearer than this are one, mm. */
const SAME = 1e-9;

/** The thickest place; where blade and tang are as thick, on the blade. Never ahead of a tang that is thicker. */
function restingPlace(blade: readonly Place[], tang: readonly Place[]): Place {
  const thickest = (places: readonly Place[]): number =>
    Math.max(...places.map(({ thickness }) => thickness));
  const most = thickest(blade);
  const isBlade = thickest(tang) <= most + SAME;
  const along = [...(isBlade ? blade : tang)].sort((a, b) => (isBlade ? a.x - b.x : b.x - a.x));
  const greatest = isBlade ? most : thickest(tang);
  const [first] = along.filter(({ thickness }) => thickness > greatest - SAME);
  invariant(first !== undefined, "one place is the thickest");
  return first;
}
