import { handleLayout } from "../blade/handle-layout.js";
import type { Knife } from "../blade/knife.js";
import { namedHoles } from "../blade/named-holes.js";
import type { HoleSpec } from "../blade/spec.js";
import type { Drill } from "../stock/bench-tools.js";
import { BENCH_DEFAULTS, BENCH_LIMITS } from "./defaults.js";
import { drillAtLeast, nearestDrills } from "./nearest-drill.js";
import { gripAt } from "./pins.js";

/** A drill for a hole and what it leaves around what goes through. mm. */
export interface DrillChoice {
  readonly drill: Drill;
  /** Diameter of the hole less that of the pin; of a hole without a pin, less the hole as drawn. */
  readonly clearance: number;
}

/** What is drilled for one hole of the steel. mm, rad. */
export interface HoleSetUp {
  /** Its place in the file. */
  readonly path: string;
  readonly kind: HoleSpec["kind"];
  readonly at: HoleSpec["at"];
  readonly to?: HoleSpec["at"];
  /** Of the hole in the steel as drawn, and of the pin through it. */
  readonly diameter: number;
  readonly pin?: number;
  /** Smallest owned drill that makes the hole in the steel; left out where none is known or large enough. */
  readonly steel?: DrillChoice;
  /** Pin holes: the drill for slabs and fittings, slack and never a press fit. */
  readonly handle?: DrillChoice;
  /** Pin holes: how large the hole in the tang may be where it is drilled before the handle. */
  readonly before?: { readonly least: number; readonly most: number; readonly drill?: DrillChoice };
  /** Pin holes through a full tang that leans: whether it wants a shim under it. */
  readonly lean?: HoleLean;
}

/** A pair of holes drilled square to two faces that lean, one from each. mm, rad. */
export interface HoleLean {
  /** Of each face from the centre plane at the hole. */
  readonly lean: number;
  /** How far each hole's outer end lies beside where it should: S·tan β. */
  readonly shift: number;
  /** Between the two outer ends: 2·S·tan β. */
  readonly mismatch: number;
  /** What the hole gives: the clearance of the handle's drill, or the usual one where no drill is known. */
  readonly clearance: number;
  readonly needsShim: boolean;
}

/**
 * Whether a tang has to be shimmed when slabs are drilled on it.
 *
 * @param lean - Of each face from the centre plane, rad.
 * @param slab - What lies on the tang on each side, mm.
 * @param clearance - Hole less pin, mm.
 *
 * @example
 * holeLean(0.0086, 8, 0.05).mismatch; // 0.1376: more than the clearance, so it needs a shim
 */
export function holeLean(lean: number, slab: number, clearance: number): HoleLean {
  const shift = slab * Math.tan(Math.abs(lean));
  return { lean, shift, mismatch: 2 * shift, clearance, needsShim: 2 * shift > clearance };
}

/**
 * The drill for a handle's hole: of those that leave at least 0.02 mm, the one nearest to the pin and 0.05 mm.
 *
 * @param pin - Diameter of the pin, measured, mm.
 *
 * @example
 * const drills = [{ name: "3/16 in", diameter: 4.7625 }, { name: "#12", diameter: 4.8006 }];
 * handleDrill(drills, 4.7625)?.drill.name; // "#12"
 */
export function handleDrill(drills: readonly Drill[], pin: number): DrillChoice | undefined {
  const least = pin + BENCH_DEFAULTS.leastClearance.value;
  const slack = drills.filter(({ diameter }) => diameter >= least);
  const [drill] = nearestDrills(slack, pin + BENCH_DEFAULTS.handleHoleOver.value);
  return drill === undefined ? undefined : { drill, clearance: drill.diameter - pin };
}

/**
 * Whether a drill leaves a pin more play than 0.15 mm, diameter over diameter. Common practice, no source.
 *
 * @example
 * isLoose({ clearance: 0.35 }); // true: 1/4 in around 6 mm
 */
export const isLoose = ({ clearance }: Pick<DrillChoice, "clearance">): boolean =>
  clearance > BENCH_LIMITS.pinPlay.value + 1e-9;

/**
 * Drills for every hole of the knife, in the order of the file.
 *
 * @param drills - Those in hand.
 *
 * @example
 * const pinned = makeKnife({ ...spec, tang: { ...spec.tang, holes: [{ kind: "pin", at: { x: -30, y: 18 }, diameter: 4 }] } });
 * holeSetUps(pinned, [{ name: "#21", diameter: 4.0386 }])[0]?.handle?.drill.name; // "#21"
 */
export function holeSetUps(knife: Knife, drills: readonly Drill[]): HoleSetUp[] {
  return namedHoles(knife.spec).map(([path, hole]) => {
    const { kind, at, to, diameter } = hole;
    const pin = kind === "pin" ? (hole.pin ?? diameter) : undefined;
    const steel = drillAtLeast(drills, diameter);
    const handle = pin === undefined ? undefined : handleDrill(drills, pin);
    const lean = pin === undefined ? undefined : leanAt(knife, hole, handle);
    return {
      path,
      kind,
      at,
      ...(to === undefined ? {} : { to }),
      diameter,
      ...(pin === undefined ? {} : { pin, before: beforeHandle(drills, pin) }),
      ...(steel === undefined
        ? {}
        : { steel: { drill: steel, clearance: steel.diameter - (pin ?? diameter) } }),
      ...(handle === undefined ? {} : { handle }),
      ...(lean === undefined ? {} : { lean }),
    };
  });
}

function beforeHandle(drills: readonly Drill[], pin: number): NonNullable<HoleSetUp["before"]> {
  const least = pin * BENCH_DEFAULTS.tangHoleLeast.value;
  const most = pin * BENCH_DEFAULTS.tangHoleMost.value;
  const drill = drillAtLeast(drills, least);
  if (drill === undefined || drill.diameter > most + 1e-6) return { least, most };
  return { least, most, drill: { drill, clearance: drill.diameter - pin } };
}

/** Undefined where nothing lies on the tang there, or nothing leans. */
function leanAt(knife: Knife, { at }: HoleSpec, handle: DrillChoice | undefined): HoleLean | undefined {
  const { handleFront } = knife.outline;
  if (at.x >= handleFront || knife.spec.tang.form !== "full") return undefined;
  const { slab } = knife.body("finished");
  // Toward the butt the tang gets thinner: x falls and so does the thickness.
  const lean = Math.atan(slab.slopeAt(at.x) / 2);
  if (Math.abs(lean) < 1e-9) return undefined;
  const grip = gripAt(knife, at, handleLayout(knife.spec.handle, knife.outline));
  const beside = (grip - slab.thicknessAt(at.x)) / 2;
  if (!(beside > 0)) return undefined;
  return holeLean(lean, beside, handle?.clearance ?? BENCH_DEFAULTS.handleHoleOver.value);
}
