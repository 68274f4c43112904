import { type HeatRecipe, recipeFor, stackBars } from "@scantling/geometry";
import type { Job } from "../load.js";

/** By the knife's steel; where that is no single one, by its core, or by each steel of the stack that a source is known for. */
export function recipesOf({ spec, shop, knife }: Job): HeatRecipe[] {
  const { stack } = knife;
  const recipe = (steel: string): HeatRecipe | undefined => {
    const found = recipeFor(steel, shop.recipes ?? []);
    return found === undefined ? undefined : { ...found, steel };
  };
  const own = recipe(spec.steel.name);
  if (own !== undefined) return [own];
  if (stack === undefined) return [];
  const bars = stack.kind === "clad" ? [stack.core] : stackBars(stack);
  return [...new Set(bars.map(({ steel }) => steel.name))].flatMap((steel) => recipe(steel) ?? []);
}
