import { type DefaultNumber, limitBasis, PRACTICE } from "../../limits/limit.js";
import { FORGE_LIMITS } from "../../limits/shop-limits.js";

/** Limits and shares of the work between billet and forged blade; lengths mm, temperatures °C. */
export interface ForgeLimits {
  /** Share of the thinning that goes into height while the bevels are hammered in, 0 to 1. */
  readonly bevelSpreadShare: number;
  /** The most that a section may change at a shoulder in one pass, as big over small. */
  readonly shoulderRatio: number;
  /** Least radius in the corner of a shoulder. */
  readonly cornerRadius: number;
  /** More passes than this at one shoulder are too many. */
  readonly shoulderPasses: number;
  /** Room to leave in the oven beyond the hot blade. */
  readonly ovenClearance: number;
  /** Depth of quenchant to leave below the hardened length. */
  readonly tankClearance: number;
}

/** Where the shop gives none; each with its basis. */
export const FORGE_DEFAULTS = {
  bevelSpreadShare: {
    quantity: "share",
    value: 0.45,
    basis: "spread on flat dies with a bite as long as the piece is high, from memory, unconfirmed",
  },
  ...FORGE_LIMITS,
  fullerRadius: { quantity: "length", value: 6, basis: `${PRACTICE}: a round bar of 12 mm` },
  ovenTemperature: {
    quantity: "temperature",
    value: 850,
    basis: `${PRACTICE}: carbon steels are hardened from 750 to 860 °C, where the size does not change`,
  },
} as const satisfies Record<string, DefaultNumber>;

/**
 * The limits of a shop, with defaults where it gives none.
 *
 * @param given - `limits.forge` of the shop.
 *
 * @example
 * forgeLimits({ shoulderRatio: 1.4 }).cornerRadius; // 1.5
 */
export function forgeLimits(given: Partial<ForgeLimits> = {}): ForgeLimits {
  return {
    bevelSpreadShare: FORGE_DEFAULTS.bevelSpreadShare.value,
    shoulderRatio: FORGE_DEFAULTS.shoulderRatio.value,
    cornerRadius: FORGE_DEFAULTS.cornerRadius.value,
    shoulderPasses: FORGE_DEFAULTS.shoulderPasses.value,
    ovenClearance: FORGE_DEFAULTS.ovenClearance.value,
    tankClearance: FORGE_DEFAULTS.tankClearance.value,
    ...given,
  };
}

/**
 * Where a limit in force comes from: the default's own basis, or the shop where it says something else.
 *
 * @example
 * forgeBasis("cornerRadius", 2); // "the shop's own limit"
 */
export function forgeBasis(name: keyof typeof FORGE_DEFAULTS, value: number): string {
  return limitBasis(value, FORGE_DEFAULTS[name]);
}
