import { type FindingLimits, findingLimits } from "../limits/finding-limits.js";
import type { Limit } from "../limits/limit.js";
import { type GivenRanges, KNIFE_TYPES, type KnifeTypeName, type KnifeUse } from "../limits/type-ranges.js";
import type { FamilyName, KnifeSpec } from "./spec.js";

/** What a knife is judged by; none of it changes its shape. */
export interface Judging {
  /** What kind of knife was ordered; left out: what its outline's family leaves no doubt of. */
  readonly type?: KnifeTypeName;
  /** Limits in force; left out: the published ones. */
  readonly limits?: FindingLimits;
  /** What the shop holds usual of types of knives, where that differs. */
  readonly ranges?: GivenRanges;
}

/** What a knife is judged by, with what was left out filled in. */
export interface Judged {
  readonly limits: FindingLimits;
  readonly ranges: GivenRanges;
  /** As ordered, or as its family leaves no doubt of; left out where neither says. */
  readonly type?: KnifeTypeName;
  /** Whether the order names the type. */
  readonly typeStated: boolean;
}

/** Families of which only one type of knife is made. */
const TYPE_OF_FAMILY: Readonly<Partial<Record<FamilyName, KnifeTypeName>>> = {
  vegetable: "kitchen",
  chefs: "chef",
  petty: "petty",
  boning: "boning",
  slicer: "slicer",
  seax: "seax",
};

/** What a knife is judged by: its type as ordered, else by its outline's family, and the limits. */
export function judgedBy({ blade }: KnifeSpec, { type: stated, limits, ranges = {} }: Judging): Judged {
  const { outline } = blade;
  const type = stated ?? ("family" in outline ? TYPE_OF_FAMILY[outline.family] : undefined);
  return {
    limits: limits ?? findingLimits(),
    ranges,
    ...(type === undefined ? {} : { type }),
    typeStated: stated !== undefined,
  };
}

/**
 * How a knife is used; a knife of which nothing says so is one for the field.
 *
 * @example
 * useOf(knife); // "field"
 */
export const useOf = ({ type }: Pick<Judged, "type">): KnifeUse =>
  type === undefined ? "field" : KNIFE_TYPES[type].use;

/** A limit that differs by use. */
export const byUse = (knife: Pick<Judged, "type">, limits: Readonly<Record<KnifeUse, Limit>>): Limit =>
  limits[useOf(knife)];
