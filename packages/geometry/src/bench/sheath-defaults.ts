/** Sizes of a fold-over sheath, mm. */
export interface SheathSizes {
  /** Thickness of the leather. */
  readonly leather: number;
  /** Width of the welt: from the blade to the finished edge. */
  readonly welt: number;
  /** Left outside the finished edge, to be sanded off with the welt glued in. */
  readonly trim: number;
  /** From the finished edge, the mouth and the fold in to the stitches. */
  readonly stitchInset: number;
  /** From stitch to stitch, as near as the length of the seam allows. */
  readonly stitchPitch: number;
}

const practice = (value: number) => ({ value, basis: "common practice, no source" });

/** What holds where nothing else is asked for. */
export const SHEATH_DEFAULTS = {
  leather: { value: 3.4, basis: "8 to 9 oz, 3.2 to 3.6 mm, from memory" },
  welt: { value: 12, basis: "half an inch is usual, from memory" },
  trim: practice(2),
  stitchInset: practice(4),
  stitchPitch: practice(4),
} as const satisfies Readonly<Record<keyof SheathSizes, { readonly value: number; readonly basis: string }>>;

/**
 * Sizes of a sheath with what is left out filled in.
 *
 * @example
 * withDefaultSheath({ welt: 15 }).leather; // 3.4
 */
export const withDefaultSheath = (given: Partial<SheathSizes> = {}): SheathSizes => ({
  leather: SHEATH_DEFAULTS.leather.value,
  welt: SHEATH_DEFAULTS.welt.value,
  trim: SHEATH_DEFAULTS.trim.value,
  stitchInset: SHEATH_DEFAULTS.stitchInset.value,
  stitchPitch: SHEATH_DEFAULTS.stitchPitch.value,
  ...given,
});
