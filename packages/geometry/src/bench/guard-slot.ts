import type { Knife } from "../blade/knife.js";
import type { SteelBody } from "../blade/steel-body.js";
import type { Drill } from "../stock/bench-tools.js";
import { BENCH_DEFAULTS } from "./defaults.js";
import { holesAcross } from "./mortise.js";
import { drillAtMost } from "./nearest-drill.js";

/** The slot of a guard that is slid on from the butt. mm. */
export interface GuardSlot {
  /** As the tang where it is largest behind the guard's front; nothing less and `over` more at the most. */
  readonly height: number;
  readonly thickness: number;
  readonly over: number;
  /** What of the shoulder stands over the slot: above and below together, and on each face. */
  readonly coverHeight: number;
  readonly coverThickness: number;
  /** Fillet in the corners of the shoulders, which the front of the slot is eased for; 0: none. */
  readonly relief: number;
  /** Largest owned drill that fits in the slot, and how many holes; the rest is filed. */
  readonly drill?: Drill;
  readonly holes?: number;
}

/** Places between two where the outline or the thickness changes its law. */
const SAMPLES = 16;

/**
 * The slot of a knife's guard; undefined where it has none.
 *
 * @param drills - Those in hand.
 *
 * @example
 * guardSlot(knife, []); // undefined: no guard
 */
export function guardSlot(knife: Knife, drills: readonly Drill[]): GuardSlot | undefined {
  const guard = knife.spec.handle?.guard;
  if (guard === undefined) return undefined;
  const body = knife.body("finished");
  const { minX } = body.footprint;
  // Fillets of the shoulders are let into relieved corners of the slot.
  const relief = knife.spec.tang.shoulderRadius ?? 0;
  const front = Math.min(guard.at, knife.outline.handleFront - relief);
  const stations = between(body, minX, front);
  const height = Math.max(...stations.map((x) => body.footprint.heightAt(x)));
  const thickness = Math.max(...stations.map((x) => body.slab.tangThicknessAt(x)));
  const ahead = Math.max(guard.at, knife.outline.handleFront) + INSIDE;
  const drill = drillAtMost(drills, thickness);
  return {
    height,
    thickness,
    over: BENCH_DEFAULTS.guardSlotOver.value,
    relief,
    coverHeight: body.footprint.heightAt(ahead) - height,
    coverThickness: (body.slab.thicknessAt(ahead) - thickness) / 2,
    ...(drill === undefined ? {} : { drill, holes: holesAcross(height, drill.diameter) }),
  };
}

/** mm. */
const INSIDE = 1e-6;

/** Stations from one x to another, just inside the ends of every stretch. */
function between({ footprint }: SteelBody, from: number, to: number): number[] {
  return footprint.intervals
    .filter(({ x0, x1 }) => x0 < to && x1 > from)
    .flatMap(({ x0, x1 }) => {
      const low = Math.max(x0, from) + INSIDE;
      const high = Math.min(x1, to) - INSIDE;
      return Array.from({ length: SAMPLES + 1 }, (_, i) => low + ((high - low) * i) / SAMPLES);
    })
    .filter((x) => x >= from && x <= to);
}
