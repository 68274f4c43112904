import type { Knife } from "../blade/knife.js";
import type { HandleSpec } from "../blade/spec.js";
import type { HeatRecipe } from "../materials/heat-treatment/heat-step.js";
import { recipeFor, USUAL_TEMPER } from "../materials/heat-treatment/recipes.js";
import { findMaterial, isSameMaterial } from "../materials/materials.js";
import { OIL_COATS } from "./job-defaults.js";

/** What decides which tasks a knife needs. */
export interface JobFacts {
  /** How often a stack is welded; 0 for a solid bar. */
  readonly welds: number;
  /** Whether holes are drilled: for that the steel is annealed. */
  readonly drilled: boolean;
  /** Whether the blade is of several steels, whose lines are brought out. */
  readonly etched: boolean;
  readonly handle: boolean;
  readonly coats: number;
  /** Cycles, and minutes in the oven each. */
  readonly temper: { readonly times: number; readonly minutes: number };
  readonly sheath: boolean;
}

/** The steel of a knife as far as the work depends on it. */
export interface JobSteel {
  readonly welds: number;
  readonly mixed: boolean;
  /** Of the edge: it is tempered by this steel's recipe. */
  readonly edge: string;
}

/** What the order says beside the knife itself. */
export interface JobWishes {
  /** Coats of oil; left out: those of a wooden handle, see `oiledHandle`. */
  readonly coats?: number;
  readonly sheath?: boolean;
}

/**
 * Which tasks a knife needs: of the steel, of the tang's holes, of the handle and what it is finished with.
 *
 * @param usualCoats - Of oil, on a wooden handle; left out: the published default.
 *
 * @example
 * jobFacts(knife, { welds: 0, mixed: false, edge: "1084" }, [], {}).coats; // 6, on ash
 */
export function jobFacts(
  knife: Knife,
  steel: JobSteel,
  recipes: readonly HeatRecipe[],
  wishes: JobWishes,
  usualCoats: number = OIL_COATS.value,
): JobFacts {
  const { handle } = knife.spec;
  return {
    welds: steel.welds,
    drilled: knife.holes.length > 0,
    etched: steel.mixed,
    handle: hasHandle(handle),
    coats: wishes.coats ?? (oiledHandle(handle) === "yes" ? usualCoats : 0),
    temper: temperOf(steel.edge, recipes),
    sheath: wishes.sheath === true,
  };
}

const hasHandle = (handle: HandleSpec | undefined): boolean =>
  handle !== undefined &&
  (handle.slabs !== undefined || handle.block !== undefined || (handle.parts?.length ?? 0) > 0);

/**
 * Whether a handle is oiled: one of a wood from the table is; of one whose material is not known, or that is given by its mass
 * alone, nobody can tell.
 *
 * @example
 * oiledHandle({ slabs: { material: { name: "G10" }, thickness: 8 } }); // "no"
 * oiledHandle({ parts: [{ name: "handle", mass: 40, at: { x: -60, y: 20 } }] }); // "unknown"
 */
export function oiledHandle(handle: HandleSpec | undefined): "yes" | "no" | "unknown" {
  if (!hasHandle(handle)) return "no";
  const wood = handle?.slabs ?? handle?.block;
  const row = wood === undefined ? undefined : findMaterial(wood.material.name);
  if (row === undefined) return "unknown";
  return row.kind === "wood" ? "yes" : "no";
}

/**
 * All tempers of the shop's own recipe, one after the other; else the longest that any source asks for: of several nobody knows
 * which is right.
 */
function temperOf(steel: string, recipes: readonly HeatRecipe[]): JobFacts["temper"] {
  const steps = (recipeFor(steel, recipes)?.steps ?? []).filter(({ step }) => step === "temper");
  const all = steps.map(({ times = USUAL_TEMPER.times, soak }) => ({
    times,
    minutes: soak?.high ?? USUAL_TEMPER.soak,
  }));
  const isOwn = recipes.some(
    (recipe) => isSameMaterial(recipe.steel, steel) && recipe.steps.some(({ step }) => step === "temper"),
  );
  if (isOwn) {
    const times = all.reduce((sum, one) => sum + one.times, 0);
    return { times, minutes: all.reduce((sum, one) => sum + one.times * one.minutes, 0) / times };
  }
  const [first = { times: USUAL_TEMPER.times, minutes: USUAL_TEMPER.soak }] = all;
  return all.reduce((a, b) => (b.times * b.minutes > a.times * a.minutes ? b : a), first);
}
