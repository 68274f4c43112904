import { GeometryError } from "../../errors/errors.js";
import type { ForgedStation } from "../blade-states.js";
import type { CutStack } from "../ledger.js";
import { type SteelChain, traceStack } from "../steel-chain.js";
import { dressedFromBars } from "./billet-forward.js";
import type { ForgedProfile } from "./forged-profile.js";

/** Something that stations have along x, for each mm of it: an area, a girth. */
type Along = (station: ForgedStation) => number;

const areaOf: Along = ({ area }) => area;

/** Girth of a section: both faces and both rims, which together are twice the mean thickness of a trapezoid. */
const girthOf: Along = ({ height, area }) => (height > 0 ? 2 * (height + area / height) : 0);

/** Share of the whole that lies behind `x`, straight between stations. */
function shareBehind(stations: readonly ForgedStation[], x: number, along: Along): number {
  let behind = 0;
  let whole = 0;
  for (let i = 1; i < stations.length; i++) {
    const a = stations[i - 1] as ForgedStation;
    const b = stations[i] as ForgedStation;
    const span = b.x - a.x;
    const [from, to] = [along(a), along(b)];
    const slice = (span * (from + to)) / 2;
    whole += slice;
    if (x >= b.x) behind += slice;
    else if (x > a.x) {
      const part = x - a.x;
      behind += part * (from + ((to - from) * part) / (2 * span));
    }
  }
  if (!(whole > 0))
    throw new GeometryError("stations-too-few", "the forged blade has no volume between its stations");
  return behind / whole;
}

/**
 * Length of dressed billet that goes into the part of the forged blade behind `x` where every part loses the same
 * share to scale, so that the billet divides as the forged volume does.
 *
 * @param stations - In order of x; areas straight between them.
 * @param x - Where the part ends, mm from the heel; the handle front is at minus the ricasso.
 * @param dressedLength - Length of the dressed billet, mm.
 * @returns mm from the butt end of the billet.
 * @throws {GeometryError} `stations-too-few` with less than two stations or without volume.
 *
 * @example
 * const stations = [{ x: -100, height: 20, area: 60 }, { x: 100, height: 20, area: 60 }];
 * billetLengthBehind(stations, 0, 150); // 75
 */
export function billetLengthBehind(
  stations: readonly ForgedStation[],
  x: number,
  dressedLength: number,
): number {
  return shareBehind(stations, x, areaOf) * dressedLength;
}

/** How the length of a dressed billet is used up: by volume, by the skin of its parts, by the skin of its two ends; mm. */
interface LengthParts {
  readonly byVolume: number;
  readonly bySkin: number;
  readonly byEnds: number;
}

function lengthParts(chain: SteelChain, stack: CutStack): LengthParts {
  const { dressedLength } = traceStack(chain, stack.bars, stack.width, stack.thickness);
  if (chain.losses.scaleModel === "fraction") return { byVolume: dressedLength, bySkin: 0, byEnds: 0 };
  // Volume before = (after + nδ(S/2 + ends)) / kept, so the length splits as these three do.
  const { width, height } = dressedFromBars(chain, stack);
  const total = chain.losses.forgingScale * chain.heats;
  const parts = [chain.forged, (total * chain.forgedSurface) / 2, total * width * height];
  const sum = parts.reduce((a, b) => a + b, 0);
  const [byVolume, bySkin, byEnds] = parts.map((part) => (part / sum) * dressedLength);
  return { byVolume: byVolume ?? 0, bySkin: bySkin ?? 0, byEnds: byEnds ?? 0 };
}

/** The lengths of dressed billet that handle and blade eat, at one side of the losses' bands; mm. */
export interface BilletMarks {
  /** What lies behind the shoulder. */
  readonly tang: number;
  /** What lies ahead of it. */
  readonly blade: number;
  /** What the forged blade needs in all: `tang + blade`. */
  readonly needed: number;
  /** Length of the dressed billet that the bars give. */
  readonly available: number;
  /** `available − needed`. */
  readonly spare: number;
  /** Where the handle begins, from the butt end; the same as `tang` unless the shoulder lies ahead of it. */
  readonly handleFront: number;
}

/**
 * Length of dressed billet, from its butt end, that goes into what lies behind `x`, grown by the scale of the forging
 * heats still to come. By a skin, thin parts eat more than their share of the volume.
 *
 * @param x - mm from the heel; at the butt the result is 0.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const chain = makeSteelChain(ledgerBodies(knife), losses, limits, knife.forging, "value");
 * const stack = { bars: 1, width: 30, thickness: 6, cutLength: 200 };
 * billetEaten(chain, forgedProfile(knife), stack, knife.outline.handleFront); // mm of a 30 × 6 bar
 */
export function billetEaten(chain: SteelChain, profile: ForgedProfile, stack: CutStack, x: number): number {
  const { byVolume, bySkin, byEnds } = lengthParts(chain, stack);
  const { stations } = profile;
  const last = stations[stations.length - 1]?.x ?? 0;
  const first = stations[0]?.x ?? 0;
  const ends = x <= first ? 0 : x >= last ? 1 : 0.5;
  return (
    byVolume * shareBehind(stations, x, areaOf) + bySkin * shareBehind(stations, x, girthOf) + byEnds * ends
  );
}

/**
 * Where the dressed billet divides between handle and blade, and what is over.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const chain = makeSteelChain(ledgerBodies(knife), losses, limits, knife.forging, "value");
 * const stack = { bars: 1, width: 30, thickness: 6, cutLength: 200 };
 * const { tang, blade, spare } = billetMarks(chain, forgedProfile(knife), stack);
 * tang + blade + spare; // 200
 */
export function billetMarks(chain: SteelChain, profile: ForgedProfile, stack: CutStack): BilletMarks {
  const whole = billetEaten(chain, profile, stack, Number.POSITIVE_INFINITY);
  const tang = billetEaten(chain, profile, stack, profile.shoulder);
  const available = dressedFromBars(chain, stack).length;
  return {
    tang,
    blade: whole - tang,
    needed: whole,
    available,
    spare: available - whole,
    handleFront: billetEaten(chain, profile, stack, profile.handleFront),
  };
}
