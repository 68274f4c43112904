import { limitBasis } from "../../limits/limit.js";
import { GATE_LIMITS } from "../../limits/shop-limits.js";

/** Limits at the weighing gates; the shop file can change each. */
export interface GateLimits {
  /** A mass that rose by more than this share cannot be a slip of the scale's last digit. */
  readonly massRise: number;
  /** The smallest similar knife that is looked for: share of edge length, heights or tip thickness. */
  readonly leastSimilar: number;
}

/**
 * The limits with what a shop leaves out filled in.
 *
 * @example
 * gateLimits({ massRise: 0.01 }); // { massRise: 0.01, leastSimilar: 0.5 }
 */
export const gateLimits = (given: Partial<GateLimits> = {}): GateLimits => ({
  massRise: given.massRise ?? GATE_LIMITS.massRise.value,
  leastSimilar: given.leastSimilar ?? GATE_LIMITS.leastSimilar.value,
});

/**
 * Where a limit comes from: its default's own basis, or the shop's file.
 *
 * @example
 * gateLimitBasis("massRise", gateLimits({ massRise: 0.01 })); // "the shop's own limit"
 */
export const gateLimitBasis = (name: keyof GateLimits, limits: GateLimits): string =>
  limitBasis(limits[name], GATE_LIMITS[name]);
