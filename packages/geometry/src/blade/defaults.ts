import type { AllowanceSpec, FinishSpec, ForgingSpec } from "./spec.js";

/** A default with where it comes from, so that a report can say so. */
export interface Default<T> {
  readonly value: T;
  readonly basis: string;
}

const practice = <T>(value: T): Default<T> => ({ value, basis: "common practice, no source" });

/** What holds where the knife file says nothing; lengths in mm. */
export const KNIFE_DEFAULTS = {
  ricasso: practice(0),
  flankTaper: practice(0),
  slabEdgeRadius: practice(0),
  finish: {
    flats: practice<FinishSpec["flats"]>("ground"),
    bevels: practice<FinishSpec["bevels"]>("ground"),
  },
  allowances: {
    face: practice(0.5),
    outline: practice(1.5),
    tip: practice(3),
    butt: practice(3),
    forgedEdge: practice(1.6),
    forgedBevel: practice<AllowanceSpec["forgedBevel"]>("line"),
    afterHardening: practice(0.1),
    minEdge: practice(0.6),
    tang: practice<AllowanceSpec["tang"]>("tapered"),
  },
  forging: {
    heats: practice(9),
    weldingHeats: practice(3),
  },
} as const;

type Group = Readonly<Record<string, Default<unknown>>>;

const values = <T>(group: Group): T =>
  Object.fromEntries(Object.entries(group).map(([key, entry]) => [key, entry.value])) as T;

/**
 * How the blade is finished, with what is left out filled in.
 *
 * @example
 * withDefaultFinish({ flats: "forged" }); // { flats: "forged", bevels: "ground" }
 */
export const withDefaultFinish = (given: Partial<FinishSpec> = {}): FinishSpec => ({
  ...values<FinishSpec>(KNIFE_DEFAULTS.finish),
  ...given,
});

/**
 * Allowances in mm, with what is left out filled in.
 *
 * @example
 * withDefaultAllowances({ face: 0.7 }).tip; // 3
 */
export const withDefaultAllowances = (given: Partial<AllowanceSpec> = {}): AllowanceSpec => ({
  ...values<AllowanceSpec>(KNIFE_DEFAULTS.allowances),
  ...given,
});

/**
 * Heats of forging and welding, with what is left out filled in.
 *
 * @example
 * withDefaultForging().heats; // 9
 */
export const withDefaultForging = (given: Partial<ForgingSpec> = {}): ForgingSpec => ({
  ...values<ForgingSpec>(KNIFE_DEFAULTS.forging),
  ...given,
});
