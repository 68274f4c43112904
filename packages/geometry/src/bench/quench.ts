import type { Knife } from "../blade/knife.js";
import { measureBody } from "../blade/measure-body.js";
import { weighMoments } from "../blade/weight.js";
import { hardeningSizes } from "../stock/forge/fits-shop.js";
import { FORGE_DEFAULTS, forgeLimits } from "../stock/forge/forge-limits.js";
import type { ShopSpec } from "../stock/shop.js";
import { BENCH_DEFAULTS } from "./defaults.js";

/** Oil for quenching one blade; g, °C, mm, litres. */
export interface QuenchSetUp {
  /** Of blade and tang as they go in. */
  readonly mass: number;
  /** The piece comes out of the oven at this temperature, and the oil is kept at that. */
  readonly from: number;
  readonly oil: number;
  /** What the oil warms up by, K; left out where its amount is not known. */
  readonly rise?: number;
  /** Oil that is usually kept for this mass. */
  readonly usualLitres: number;
  readonly litres?: number;
  /** Depth that the blade ahead of the handle needs, clearance below the point included. */
  readonly depthNeeded: number;
  readonly depth?: number;
}

/**
 * What a quench warms its oil by, all the heat going into the oil: m·c·(T − T_oil)/(V·ρ·c_oil). Heats of steel and oil are
 * from memory: an estimate, no substitute for a thermometer.
 *
 * @param mass - Of the piece, g.
 * @param from - Its temperature, °C.
 * @param oil - Of the oil before, °C.
 * @param litres - Oil.
 * @returns K
 *
 * @example
 * oilRise(400, 815, 60, 15); // 7.52
 */
export function oilRise(mass: number, from: number, oil: number, litres: number): number {
  const { steelHeat, oilDensity, oilHeat } = BENCH_DEFAULTS;
  const heat = (mass / 1000) * steelHeat.value * (from - oil);
  return heat / (litres * oilDensity.value * oilHeat.value);
}

/**
 * Oil and depth that a knife's quench needs, as far as the shop's tank is known.
 *
 * @example
 * quenchSetUp(knife, DEFAULT_SHOP).depthNeeded; // 160, 50 mm below the point
 */
export function quenchSetUp(knife: Knife, shop: ShopSpec): QuenchSetUp {
  const { depth, litres, temperature } = shop.quenchTank ?? {};
  const from = shop.oven?.temperature ?? FORGE_DEFAULTS.ovenTemperature.value;
  const oil = temperature ?? BENCH_DEFAULTS.oilTemperature.value;
  const { mass } = weighMoments(measureBody(knife.body("ready")), knife.steelDensity);
  const { hardenedLength } = hardeningSizes(knife, from);
  return {
    mass,
    from,
    oil,
    ...(litres === undefined ? {} : { litres, rise: oilRise(mass, from, oil, litres) }),
    usualLitres: (mass / 1000) * knife.limits.oilPerKilogram.value,
    depthNeeded: hardenedLength + forgeLimits(shop.limits.forge).tankClearance,
    ...(depth === undefined ? {} : { depth }),
  };
}
