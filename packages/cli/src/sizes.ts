import { crossingsAtX, type Knife, type Outline, pathBounds, rearmostOf } from "@scantling/geometry";

/** The sizes by which a knife is ordered, mm. */
export interface KnifeSizes {
  /** Heel to tip, along x. */
  readonly edgeLength: number;
  /** Height of the spine above the heel. */
  readonly heelHeight: number;
  /** From the rearmost point to the foremost. */
  readonly overallLength: number;
}

/** Those of the steel, read off the outline itself, so that they hold however it was given. */
export function outlineSizes(outline: Outline): KnifeSizes {
  const { minX, maxX } = pathBounds(outline.path);
  return {
    edgeLength: outline.edgeLength,
    heelHeight: crossingsAtX(outline.path, 0).at(-1)?.point.y ?? 0,
    overallLength: maxX - minX,
  };
}

/** Whether the file says how far back the knife reaches: a handle told by the mass of its parts may reach behind a hidden tang. */
export const isRearKnown = ({ spec }: Pick<Knife, "spec">): boolean =>
  spec.tang.form !== "hidden" || spec.handle?.block !== undefined || spec.handle?.pommel !== undefined;

/** Those of the whole knife: a handle or a pommel may reach farther back than the tang. */
export function sizesOf(
  knife: Pick<Knife, "outline" | "spec">,
): KnifeSizes & { readonly handleLength: number } {
  const { outline } = knife;
  const sizes = outlineSizes(outline);
  const rear = rearmostOf(knife);
  return {
    ...sizes,
    overallLength: sizes.overallLength + outline.butt - rear,
    handleLength: outline.handleFront - rear,
  };
}
