import type { KnifeSpec, MaterialSpec } from "../blade/spec.js";
import { withValueAt } from "../blade/spec-path.js";

/** What is measured by a size that can be changed. */
export type FitKind = "length" | "mass" | "angle" | "density" | "share";

/** One number of a description that can be changed; mm, g, rad, g/mm³ or a share. */
export interface FitSize {
  /** Its place in the description: `blade.thickness[1].is`. What is not there yet can be a tang's `buttThickness`, or the density of a named material. */
  readonly path: string;
  readonly drawn: number;
  /** What it can be set to at the bench, coarse first: whole numbers of these. */
  readonly steps: readonly number[];
}

/** Something that may be changed, between a least and a greatest value. */
export interface FitDimension {
  /** Unique among the dimensions of a problem. */
  readonly name: string;
  readonly kind: FitKind;
  /** One size, or several that are changed in proportion. */
  readonly sizes: readonly FitSize[];
  /** Of the size; of several the share of what is drawn: 1 is as drawn. */
  readonly least: number;
  readonly most: number;
}

/** Whether a dimension is a share of what is drawn, as it is where it has several sizes. */
export const isInProportion = ({ sizes }: FitDimension): boolean => sizes.length > 1;

/** Where a dimension stands in the drawing: its size, or 1 where it is in proportion. */
export const drawnAt = (dimension: FitDimension): number =>
  isInProportion(dimension) ? 1 : (dimension.sizes[0]?.drawn ?? 0);

/** The sizes of a dimension at one of its values. */
export const sizesAt = (dimension: FitDimension, value: number): number[] =>
  isInProportion(dimension) ? dimension.sizes.map(({ drawn }) => drawn * value) : [value];

/** How a material is called whose density is told and which has still to be found. */
export const MATERIAL_TO_FIND = "material still to be chosen";

const DENSITY = /^(handle\..*)\.density$/u;

/**
 * A description with the sizes of a dimension set; what does not lie on their way stays the very same object.
 *
 * @param values - one for each size; left out: as drawn.
 */
export function withDimension(
  spec: KnifeSpec,
  { sizes }: FitDimension,
  values: readonly number[] | undefined,
): KnifeSpec {
  if (values === undefined) return spec;
  return sizes.reduce((before, { path }, i) => {
    const material = DENSITY.exec(path)?.[1];
    const value = values[i] ?? 0;
    if (material === undefined) return withValueAt(before, path, value);
    const found: MaterialSpec = { name: MATERIAL_TO_FIND, density: value };
    return withValueAt(before, material, found);
  }, spec);
}
