import { limitBasis } from "../../limits/limit.js";
import { MIXED_LIMITS } from "../../limits/shop-limits.js";

/** Limits of stacks of two or more steels that a shop may set; mm and shares. */
export interface MixedLimits {
  /** How far the core may be expected to lie off the middle, either way, mm. */
  readonly coreCentring: number;
  /** Thinner layers at the face are warned of, mm. */
  readonly minLayerThickness: number;
  /** Deepest groove as a share of the bar's thickness. */
  readonly maxGrooveDepth: number;
}

/**
 * The shop's limits, with what is left out filled in.
 *
 * @example
 * withDefaultMixedLimits({ coreCentring: 0.2 }).minLayerThickness; // 0.02
 */
export function withDefaultMixedLimits(given: Partial<MixedLimits> = {}): MixedLimits {
  const { coreCentring, minLayerThickness, maxGrooveDepth } = MIXED_LIMITS;
  return {
    coreCentring: coreCentring.value,
    minLayerThickness: minLayerThickness.value,
    maxGrooveDepth: maxGrooveDepth.value,
    ...given,
  };
}

/**
 * Where a limit comes from: the default's own basis, or the shop file where that says something else.
 *
 * @example
 * mixedBasis("coreCentring", 0.2); // "the shop's own limit"
 */
export function mixedBasis(name: keyof MixedLimits, limit: number): string {
  return limitBasis(limit, MIXED_LIMITS[name]);
}
