import { rebuildKnife } from "../../blade/knife.js";
import { measureBody } from "../../blade/measure-body.js";
import { VOLUME } from "../../blade/moments.js";
import type { KnifeSpec } from "../../blade/spec.js";
import { DEFAULT_TOLERANCES, type InputTolerance, type ToleranceDefaults } from "../../blade/tolerances.js";
import { weighInterval } from "../../blade/weigh-interval.js";
import { materialDensity } from "../../materials/material-density.js";

/** How far the steel of a finished knife may be off what is computed, 95 times of 100, upward and downward. */
export interface SteelBand {
  /** From its sizes, g. */
  readonly sizes: { readonly plus: number; readonly minus: number };
  /** From the density of the steel, as a share of any mass of it. */
  readonly density: { readonly plus: number; readonly minus: number };
}

const DENSITY = "steel.density";
/** Relative error of the mass in the middle: far below any band. */
const AIM = 1e-7;

/**
 * The band of blade and tang alone, what is put on the tang left aside. Sizes and density apart: an error of size is as
 * many grams at every stage, one of the density the same share.
 *
 * @param given - Tolerances of the file.
 *
 * @example
 * steelBand(spec).density.plus; // 0.01
 */
export function steelBand(
  spec: KnifeSpec,
  given: readonly InputTolerance[] = [],
  defaults: ToleranceDefaults = DEFAULT_TOLERANCES,
): SteelBand {
  const { handle: _handle, ...steel } = spec;
  const own = given.find(({ path }) => path === DENSITY);
  const density = materialDensity(spec.steel) ?? 1;
  const others = given.filter(({ path }) => path !== DENSITY && !path.startsWith("handle"));
  const ofSizes = { ...defaults, steelDensity: 0 };
  const { massInterval } = weighInterval(steel, others, ofSizes);
  const knife = rebuildKnife(steel);
  const middle = (measureBody(knife.body("finished"), AIM).value[VOLUME] as number) * knife.steelDensity;
  return {
    sizes: { plus: massInterval[1] - middle, minus: middle - massInterval[0] },
    density:
      own === undefined
        ? { plus: defaults.steelDensity, minus: defaults.steelDensity }
        : { plus: own.plus / density, minus: own.minus / density },
  };
}
