import { BENCH_LIMITS } from "./bench-limits.js";
import { BLADE_LIMITS } from "./blade-limits.js";
import { HARDENING_LIMITS } from "./hardening-limits.js";
import { type Limit, limitBasis } from "./limit.js";
import { LOSS_LIMITS } from "./loss-limits.js";
import { PRESS_LIMITS } from "./press-limits.js";
import { STEEL_LIMITS } from "./steel-limits.js";

/**
 * Where a value becomes unwise: every limit that the shop file sets by its name under `limits.findings`. Lengths mm, angles
 * rad, temperatures °C, shares 0 to 1; `count` is a plain number, such as diameters of a hole.
 */
export const FINDING_LIMITS = {
  ...BLADE_LIMITS,
  ...HARDENING_LIMITS,
  ...BENCH_LIMITS,
  ...PRESS_LIMITS,
  ...STEEL_LIMITS,
  ...LOSS_LIMITS,
} as const;

/** The name of a limit under `limits.findings`. */
export type FindingLimitName = keyof typeof FINDING_LIMITS;

/** What a shop sets itself of {@link FINDING_LIMITS}. */
export type GivenLimits = Readonly<Partial<Record<FindingLimitName, number>>>;

/** Every limit in force, with where it comes from. */
export type FindingLimits = Readonly<Record<FindingLimitName, Limit>>;

/** Names of all limits under `limits.findings`, in the order of their tables. */
export const FINDING_LIMIT_NAMES = Object.keys(FINDING_LIMITS) as readonly FindingLimitName[];

/**
 * The limits in force: those that the shop sets, the published ones for the others. One that differs from the published one
 * says that it is the shop's own.
 *
 * @example
 * findingLimits({ holeWall: 4 }).holeWall; // { value: 4, basis: "the shop's own limit" }
 * findingLimits().holeWall.value; // 3
 */
export function findingLimits(given: GivenLimits = {}): FindingLimits {
  return Object.fromEntries(FINDING_LIMIT_NAMES.map((name) => [name, findingLimit(name, given)])) as Record<
    FindingLimitName,
    Limit
  >;
}

/**
 * One of them.
 *
 * @example
 * findingLimit("tightHeight").value; // 0.03
 */
export function findingLimit(name: FindingLimitName, given: GivenLimits = {}): Limit {
  const published = FINDING_LIMITS[name];
  const value = given[name] ?? published.value;
  return { value, basis: limitBasis(value, published) };
}
