import { type DefaultNumber, limitBasis } from "../defaults.js";

/** Limits at the weighing gates; the shop file can change each. */
export interface GateLimits {
  /** A mass that rose by more than this share cannot be a slip of the scale's last digit. */
  readonly massRise: number;
  /** The smallest similar knife that is looked for: share of edge length, heights or tip thickness. */
  readonly leastSimilar: number;
}

/** The limits of the gates, each with where it comes from. */
export const GATE_DEFAULTS = {
  massRise: {
    quantity: "share",
    value: 0.02,
    basis: "common practice, no source: 2 % covers scale, flux and a shop's balance",
  },
  leastSimilar: {
    quantity: "share",
    value: 0.5,
    basis: "common practice, no source: a knife of half the size is another knife",
  },
} as const satisfies Record<string, DefaultNumber>;

/**
 * The limits with what a shop leaves out filled in.
 *
 * @example
 * gateLimits({ massRise: 0.01 }); // { massRise: 0.01, leastSimilar: 0.5 }
 */
export const gateLimits = (given: Partial<GateLimits> = {}): GateLimits => ({
  massRise: given.massRise ?? GATE_DEFAULTS.massRise.value,
  leastSimilar: given.leastSimilar ?? GATE_DEFAULTS.leastSimilar.value,
});

/**
 * Where a limit comes from: its default's own basis, or the shop's file.
 *
 * @example
 * gateLimitBasis("massRise", gateLimits({ massRise: 0.01 })); // "the shop's own limit"
 */
export const gateLimitBasis = (name: keyof GateLimits, limits: GateLimits): string =>
  limitBasis(limits[name], GATE_DEFAULTS[name]);
