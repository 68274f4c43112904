import type { Drill } from "../stock/bench-tools.js";

/** Sizes closer than this are the same, mm: rounding of inch sizes. */
const SAME = 1e-6;

/**
 * Drills by how near they come to a diameter, nearest first; of two as near the smaller.
 *
 * @param wanted - mm.
 *
 * @example
 * const drills = [{ name: "3 mm", diameter: 3 }, { name: "1/8 in", diameter: 3.175 }];
 * nearestDrills(drills, 3.1)[0]?.name; // "1/8 in"
 */
export function nearestDrills(drills: readonly Drill[], wanted: number): Drill[] {
  const off = ({ diameter }: Drill): number => Math.abs(diameter - wanted);
  return [...drills].sort((a, b) => off(a) - off(b) || a.diameter - b.diameter);
}

/**
 * The smallest drill that is no smaller than a diameter; undefined where none is.
 *
 * @param diameter - mm.
 *
 * @example
 * const drills = [{ name: "3 mm", diameter: 3 }, { name: "1/8 in", diameter: 3.175 }];
 * drillAtLeast(drills, 3.1)?.name; // "1/8 in"
 * drillAtLeast(drills, 4); // undefined
 */
export function drillAtLeast(drills: readonly Drill[], diameter: number): Drill | undefined {
  return nearestDrills(
    drills.filter((drill) => drill.diameter >= diameter - SAME),
    diameter,
  )[0];
}

/**
 * The largest drill that is no larger than a diameter; undefined where none is.
 *
 * @param diameter - mm.
 *
 * @example
 * const drills = [{ name: "3 mm", diameter: 3 }, { name: "1/8 in", diameter: 3.175 }];
 * drillAtMost(drills, 3.1)?.name; // "3 mm"
 */
export function drillAtMost(drills: readonly Drill[], diameter: number): Drill | undefined {
  return nearestDrills(
    drills.filter((drill) => drill.diameter <= diameter + SAME),
    diameter,
  )[0];
}
