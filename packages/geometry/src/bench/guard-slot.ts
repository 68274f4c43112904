import type { Knife } from "../blade/knife.js";
import type { SteelBody } from "../blade/steel-body.js";
import type { Drill } from "../stock/bench-tools.js";
import { BENCH_DEFAULTS } from "./defaults.js";
import { drillAtMost } from "./nearest-drill.js";

/** The slot of a guard that is slid on from the butt. mm. */
export interface GuardSlot {
  /** Sizes over all of the guard that is slotted: along the blade, up, across. */
  readonly outer: { readonly length: number; readonly height: number; readonly width: number };
  /** As the tang where it is largest behind the guard's front; nothing less and `over` more at the most. */
  readonly height: number;
  readonly thickness: number;
  readonly over: number;
  /** What of the shoulder stands over the slot: above and below together, and on each face. */
  readonly coverHeight: number;
  readonly coverThickness: number;
  /** Fillet in the corners of the shoulders, which the front of the slot is eased for; 0: none. */
  readonly relief: number;
  /** Largest owned drill that fits in the slot, and how many holes with steel between them; the rest is filed. */
  readonly drill?: Drill;
  readonly holes?: number;
}

/**
 * Holes side by side that a slot in metal is drilled with: as many as leave 0.5 mm between neighbours.
 *
 * @param height - Of the slot, mm.
 * @param drill - Its diameter, mm.
 *
 * @example
 * holesApart(20, 4); // 4: the first 2 mm from one end, then 4.5 mm or more from middle to middle
 * holesApart(8, 4); // 1
 */
export function holesApart(height: number, drill: number): number {
  return Math.max(1, 1 + Math.floor((height - drill) / (drill + BENCH_DEFAULTS.slotHolesApart.value) + SAME));
}

/** Share of a hole that is none: heights are read a little inside the ends of a tang. */
const SAME = 1e-4;

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
    outer: { length: guard.length, height: guard.height, width: guard.width },
    height,
    thickness,
    over: BENCH_DEFAULTS.guardSlotOver.value,
    relief,
    coverHeight: body.footprint.heightAt(ahead) - height,
    coverThickness: (body.slab.thicknessAt(ahead) - thickness) / 2,
    ...(drill === undefined ? {} : { drill, holes: holesApart(height, drill.diameter) }),
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
