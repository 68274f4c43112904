import { FAMILIES, type FamilyName, HIDDEN_TANG, type TangHeights, type TangSpec } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { FAMILY_STARTERS } from "./knife-types.js";
import { COARSE, type Size, type Steps, sizeIn } from "./size-text.js";

/** Bars are sold in steps of 1/32 in and more. */
const SPINE: Steps = { mm: 0.1, in: 1 / 32 };

/** The three sizes that a knife is called by. */
export interface StarterSizes {
  readonly edgeLength: Size;
  readonly heelHeight: Size;
  /** Thickness at the heel. */
  readonly spine: Size;
}

/** The sizes that are given, and usual ones of the family in place of the others. */
export function starterSizes({
  family,
  units,
  ...given
}: { readonly family: FamilyName; readonly units: FileUnits } & Partial<StarterSizes>): StarterSizes {
  const usual = FAMILY_STARTERS[family];
  return {
    edgeLength: given.edgeLength ?? sizeIn(usual.edgeLength, units, COARSE),
    heelHeight: given.heelHeight ?? sizeIn(usual.heelHeight, units, COARSE),
    spine: given.spine ?? sizeIn(usual.spine, units, SPINE),
  };
}

/** Heights of the tang, mm, as they are where the file gives none. */
export function tangHeights(family: FamilyName, heelHeight: number, form: TangSpec["form"]): TangHeights {
  const full = FAMILIES[family].fullTang;
  const [shares, whole] = form === "full" ? [full, heelHeight] : [HIDDEN_TANG, full.front * heelHeight];
  return { front: shares.front * whole, middle: shares.middle * whole, butt: shares.butt * whole };
}
