import { handleLaw } from "../blade/handle-law.js";
import { type HandleLayout, handleLayout } from "../blade/handle-layout.js";
import type { Knife } from "../blade/knife.js";
import { namedHoles } from "../blade/named-holes.js";
import type { Vec2 } from "../plane/vec2.js";
import { BENCH_DEFAULTS } from "./defaults.js";

/** A pin and how long its rod is sawn. mm. */
export interface PinSetUp {
  /** Its place in the file. */
  readonly path: string;
  readonly at: Vec2;
  readonly diameter: number;
  /** Through the handle from outside to outside. */
  readonly grip: number;
  /** Length that rod is sawn to for a pin that is glued in and then ground flush: it stands out on each side. */
  readonly sawn: number;
  /** Length that rod is sawn to for a pin that is peened over: from, to. */
  readonly peened: { readonly least: number; readonly most: number };
}

/** Rod of one diameter for a knife's pins, mm. */
export interface PinRod {
  readonly diameter: number;
  readonly count: number;
  /** All pins of it, as sawn to be ground flush, with a saw cut each. */
  readonly length: number;
}

/** Every pin, and the rod that they are sawn from. */
export interface PinsSetUp {
  readonly material: string;
  readonly pins: readonly PinSetUp[];
  readonly rods: readonly PinRod[];
}

/**
 * Length to saw a pin to: what it goes through and what stands out on each side.
 *
 * @param tang - Thickness of the tang at the pin, mm.
 * @param beside - Of slab and liner together, on one side, mm.
 * @param out - What stands out on each side, mm.
 *
 * @example
 * pinLength(3.6, 9, 2); // 25.6
 */
export function pinLength(tang: number, beside: number, out: number): number {
  return tang + 2 * (beside + out);
}

/**
 * How thick the handled knife is at a place of the flats, outside to outside: steel with liners and slabs, a bolster or
 * guard, the handle of a hidden tang. The rounding of slab edges is not counted: pins are cut to the flat.
 *
 * @returns mm; the steel alone where nothing covers it.
 *
 * @example
 * gripAt(knife, { x: -40, y: 18 }); // 19.2: 3.2 of steel, 8 on each side
 */
export function gripAt(
  knife: Knife,
  at: Vec2,
  layout: HandleLayout = handleLayout(knife.spec.handle, knife.outline),
): number {
  const steel = knife.body("finished").slab.thicknessAt(at.x);
  const { handle, fittings } = layout;
  for (const placed of [...fittings, ...(handle === undefined ? [] : [handle])]) {
    const { block } = placed;
    if (at.x > block.front || at.x < block.rear) continue;
    return Math.max(steel, 2 * block.sectionAt(at.x).widthAt(at.y - block.centre));
  }
  const { slabs, liners } = knife.spec.handle ?? {};
  const { handleFront, butt } = knife.outline;
  if (slabs === undefined || at.x > handleFront) return steel;
  const law = handleLaw(slabs.thickness, slabs.between ?? "straight", handleFront - butt);
  return steel + 2 * (law.valueAt(handleFront - at.x) + (liners?.thickness ?? 0));
}

/**
 * Lengths of the pins that the handle has; undefined where it has none.
 *
 * @param kerf - Width of the saw's cut, mm.
 *
 * @example
 * const pinned = makeKnife({
 *   ...spec,
 *   tang: { ...spec.tang, holes: [{ kind: "pin", at: { x: -30, y: 18 }, diameter: 4 }] },
 *   handle: { ...spec.handle, pins: { material: { name: "brass" } } },
 * });
 * pinsSetUp(pinned, 2)?.pins[0]?.sawn; // 23.2: 19.2 of handle, 2 on each side
 */
export function pinsSetUp(knife: Knife, kerf: number): PinsSetUp | undefined {
  const { handle } = knife.spec;
  if (handle?.pins === undefined) return undefined;
  const layout = handleLayout(handle, knife.outline);
  const pins = namedHoles(knife.spec)
    .filter(([, hole]) => hole.kind === "pin")
    .map(([path, hole]): PinSetUp => {
      const diameter = hole.pin ?? hole.diameter;
      const grip = gripAt(knife, hole.at, layout);
      return { path, at: hole.at, diameter, grip, ...lengths(grip, diameter) };
    });
  if (pins.length === 0) return undefined;
  const sizes = [...new Set(pins.map(({ diameter }) => diameter))].sort((a, b) => a - b);
  return {
    material: handle.pins.material.name,
    pins,
    rods: sizes.map((diameter) => {
      const cut = pins.filter((pin) => pin.diameter === diameter);
      return {
        diameter,
        count: cut.length,
        length: cut.reduce((sum, { sawn }) => sum + sawn + kerf, 0),
      };
    }),
  };
}

function lengths(grip: number, diameter: number): Pick<PinSetUp, "sawn" | "peened"> {
  const { flushPin, peenLeast, peenMost } = BENCH_DEFAULTS;
  const out = (value: number): number => pinLength(grip, 0, value);
  return {
    sawn: out(flushPin.value),
    peened: { least: out((peenLeast.value * diameter) / 2), most: out((peenMost.value * diameter) / 2) },
  };
}
