import { isSameMaterial } from "../materials.js";
import type { HeatSource } from "./heat-step.js";

/** Time at hardening temperature that a source counts by thickness; minutes a mm. */
interface SoakRule extends HeatSource {
  readonly steel: string;
  readonly minutesPerMm: number;
}

const SOAK_RULES: readonly SoakRule[] = [
  {
    steel: "1095",
    minutesPerMm: 1.5,
    source: "a kiln supplier's page: 1.5 min a mm",
    mark: "secondary copy",
  },
  {
    steel: "O1",
    minutesPerMm: 1.181,
    source: "two distributors' sheets: 30 min an inch",
    mark: "secondary copy",
  },
];

/** How long a section soaks by one source, minutes. */
export interface ThicknessSoak extends HeatSource {
  readonly minutes: number;
}

/**
 * How long a steel is held at hardening temperature by its thickest section, counted from when the oven has come back to it.
 * Only for steels that a source counts so; steel that was normalised before wants less than annealed steel.
 *
 * @param thickness - Of the thickest section, mm.
 *
 * @example
 * soakByThickness("1095", 4).map(({ minutes }) => minutes); // [6]
 * soakByThickness("5160", 4).length; // 0
 */
export const soakByThickness = (steel: string, thickness: number): ThicknessSoak[] =>
  SOAK_RULES.filter((rule) => isSameMaterial(rule.steel, steel)).map(({ minutesPerMm, source, mark }) => ({
    minutes: minutesPerMm * thickness,
    source,
    mark,
  }));
