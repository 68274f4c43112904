import { type DefaultNumber, limitBasis } from "../defaults.js";

const PRACTICE = "common practice, no source";

/** Limits of stacks of two or more steels, each with its basis; the shop file changes them. */
export const MIXED_LIMIT_DEFAULTS = {
  coreCentring: {
    quantity: "length",
    value: 0.125,
    basis: `${PRACTICE}: a core can be held to the middle within about 5 thousandths of an inch; measure your own blades`,
  },
  minLayerThickness: {
    quantity: "length",
    value: 0.02,
    basis: `${PRACTICE}: thinner layers are no longer told apart`,
  },
  maxGrooveDepth: {
    quantity: "share",
    value: 1 / 3,
    basis: "one maker's rule for ladder patterns: a third of the bar's thickness",
  },
  hardeningGap: {
    quantity: "temperature",
    value: 20,
    basis: `${PRACTICE}: an oven holds about that either way`,
  },
  densityDifference: {
    quantity: "share",
    value: 0.005,
    basis: `${PRACTICE}: less is lost in the band of the weight`,
  },
} as const satisfies Record<string, DefaultNumber>;

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
  const { coreCentring, minLayerThickness, maxGrooveDepth } = MIXED_LIMIT_DEFAULTS;
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
  return limitBasis(limit, MIXED_LIMIT_DEFAULTS[name]);
}
