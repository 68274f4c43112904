import { isSameMaterial } from "../materials.js";
import type { HeatRecipe } from "./heat-step.js";
import { hardnessAfter, TEMPER_SCATTER, TEMPER_TABLES } from "./tempering.js";

/**
 * The band of hardness to be expected of a blade that is tempered by the shop's own recipe: from the softest to the hardest that
 * any published table says of those temperatures, and how far good tables differ beyond that; whole HRC outward.
 *
 * @param recipes - The shop's own.
 * @returns undefined where the shop has no recipe of its own for tempering it, or no table knows that.
 *
 * @example
 * const temper = { step: "temper", low: 204, high: 204, source: "own", mark: "looked up" } as const;
 * expectedHardness("O1", [{ steel: "O1", steps: [temper] }]); // { low: 60, high: 64 }
 */
export function expectedHardness(
  steel: string,
  recipes: readonly HeatRecipe[],
): { readonly low: number; readonly high: number } | undefined {
  const own = recipes.find((recipe) => isSameMaterial(recipe.steel, steel));
  const steps = (own?.steps ?? []).filter(({ step }) => step === "temper");
  const ends = steps.flatMap(({ low, high }) => [low, high]);
  const tables = TEMPER_TABLES.filter((table) => isSameMaterial(table.steel, steel));
  const told = tables.flatMap(({ points }) => {
    const values = ends.map((temperature) => hardnessAfter(points, temperature));
    return values.every((value) => value !== undefined)
      ? values.map(({ low, high }) => (low + high) / 2)
      : [];
  });
  if (told.length === 0) return undefined;
  const [low, high] = [Math.min(...told) - TEMPER_SCATTER, Math.max(...told) + TEMPER_SCATTER];
  return { low: Math.floor(low + UNSEEN), high: Math.ceil(high - UNSEEN) };
}

/** No tester shows less, HRC: a recipe in °C beside a table in °F is half a degree off. */
const UNSEEN = 0.05;
