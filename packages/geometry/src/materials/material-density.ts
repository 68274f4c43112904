import { findMaterial } from "./materials.js";
import { woodDensityAt } from "./wood-moisture.js";

/** A material as a description names it: by the table, or with a density of its own (g/mm³), which then holds. */
export interface NamedMaterial {
  readonly name: string;
  readonly density?: number;
  /** Of a wood from the table: its moisture, as a share of the oven-dry mass. */
  readonly moisture?: number;
}

/**
 * Density of a material, g/mm³: the one given, else that of its row in the table, for a wood at its moisture.
 *
 * @returns undefined where the table does not know the name and no density is given.
 *
 * @example
 * materialDensity({ name: "European ash" }); // 0.00068 at 12 % moisture
 * materialDensity({ name: "European ash", moisture: 0.08 }); // less
 */
export function materialDensity({ name, density, moisture }: NamedMaterial): number | undefined {
  if (density !== undefined) return density;
  const row = findMaterial(name);
  if (row === undefined || row.kind !== "wood" || moisture === undefined) return row?.density;
  return woodDensityAt(row.density, moisture);
}
