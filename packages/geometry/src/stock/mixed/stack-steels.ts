import { materialDensity } from "../../materials/material-density.js";
import { isSameMaterial } from "../../materials/materials.js";
import { type MixedStackSpec, stackBars } from "./spec.js";

/** All bars of one steel in a stack, whatever their thickness. */
export interface StackSteel {
  readonly steel: string;
  readonly pieces: number;
  /** Of all of them side by side, by the steel's own density, g/mm. */
  readonly massPerLength: number;
}

/**
 * The steels of a stack in the order in which they first lie in it, each with what a millimetre of all its bars weighs.
 *
 * @param stack - Checked by `checkMixedStack`: a steel without a density weighs `NaN`.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.5 }, { steel: { name: "1020" }, thickness: 3 }];
 * stackSteels({ kind: "clad", core, cladding, width: 30 }).map(({ pieces }) => pieces); // [2, 1]
 */
export function stackSteels(stack: MixedStackSpec): readonly StackSteel[] {
  const steels: { readonly steel: string; pieces: number; massPerLength: number }[] = [];
  for (const { steel, thickness } of stackBars(stack)) {
    const massPerLength = thickness * stack.width * (materialDensity(steel) ?? Number.NaN);
    const known = steels.find((one) => isSameMaterial(one.steel, steel.name));
    if (known === undefined) steels.push({ steel: steel.name, pieces: 1, massPerLength });
    else {
      known.pieces++;
      known.massPerLength += massPerLength;
    }
  }
  return steels;
}

/**
 * Density of a stack's bars together, each steel by its own, g/mm³.
 *
 * @example
 * const layers = ["1084", "1095"].map((name) => ({ steel: { name, density: 0.0078 }, thickness: 3 }));
 * stackDensity({ kind: "pattern-welded", layers, width: 40, restacks: [] }); // 0.0078
 */
export function stackDensity(stack: MixedStackSpec): number {
  const mass = stackSteels(stack).reduce((sum, { massPerLength }) => sum + massPerLength, 0);
  return mass / (stack.width * stackBars(stack).reduce((sum, { thickness }) => sum + thickness, 0));
}
