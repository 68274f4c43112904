import type { Drill } from "../stock/bench-tools.js";
import { nearestDrills } from "./nearest-drill.js";

/** A drill that lies on the plate beside the blade: its point scribes at half its diameter. mm. */
export interface ScribingDrill {
  readonly drill: Drill;
  /** Height of the line. */
  readonly height: number;
  /** How much higher than wanted. */
  readonly error: number;
}

/** How many are proposed. */
const PROPOSED = 3;

/**
 * The drills that scribe nearest to a height, nearest first. Measure the drill: it may be worn or under its size.
 *
 * @param height - Above the plate, mm.
 *
 * @example
 * const drills = [{ name: "3 mm", diameter: 3 }, { name: "1/8 in", diameter: 3.175 }];
 * scribingDrills(drills, 1.5).map(({ drill, error }) => [drill.name, error]); // [["3 mm", 0], ["1/8 in", 0.0875]]
 */
export function scribingDrills(drills: readonly Drill[], height: number): ScribingDrill[] {
  if (!(height > 0)) return [];
  return nearestDrills(drills, 2 * height)
    .slice(0, PROPOSED)
    .map((drill) => ({ drill, height: drill.diameter / 2, error: drill.diameter / 2 - height }));
}
