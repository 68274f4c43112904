import { GeometryError } from "../../errors/errors.js";

/** Where the spread on flat dies comes from, for reports. */
export const SPREAD_BASIS = "spread on flat dies after Tomlinson and Stringer, from memory, unconfirmed";

/** Bite over width up to which the spread is known: the curve has its top there and is not followed beyond. */
export const GREATEST_BITE_RATIO = 10 / 3;

const RATIO_WITHIN = 1e-9;

/**
 * Share of the thinning on flat dies that goes into width, the rest going into length. An estimate: fitted to mill
 * work on roughly square stock, and from memory, unconfirmed (Tomlinson and Stringer, J. Iron Steel Inst. 193, 1959).
 *
 * @param bite - Contact of the die along the bar, mm; above 0.
 * @param width - Width of the piece before the pass, mm; above 0.
 * @returns 0.14 + 0.36 (b/w) − 0.054 (b/w)², from 0.14 to 0.74.
 * @throws {GeometryError} `bite-out-of-range` where the bite is not above 0 or longer than 10/3 of the width.
 *
 * @example
 * spreadShare(20, 40); // 0.3065
 */
export function spreadShare(bite: number, width: number): number {
  const ratio = bite / width;
  if (!(ratio > 0 && ratio <= GREATEST_BITE_RATIO + RATIO_WITHIN))
    throw new GeometryError(
      "bite-out-of-range",
      `the spread is known for a bite up to 10/3 of the width, not for ${bite} mm on ${width} mm`,
    );
  return 0.14 + 0.36 * ratio - 0.054 * ratio ** 2;
}

/** What a pass between flat dies makes of a piece. */
export interface Spread {
  /** Width after the pass, mm. */
  readonly width: number;
  /** Length after over length before; volume is conserved. */
  readonly lengthening: number;
}

/**
 * Width and lengthening of a pass, with a given share of the thinning going into width.
 *
 * @param width - Before the pass, mm.
 * @param before - Height before, mm.
 * @param after - Height after, mm.
 * @param share - 0 (all into length) to 1 (all into width), such as {@link spreadShare} gives.
 *
 * @example
 * spreadOfPass(40, 10, 8, 0.3065).width; // 42.8315
 * spreadOfPass(40, 10, 8, 0.3065).lengthening; // 1.167366
 */
export function spreadOfPass(width: number, before: number, after: number, share: number): Spread {
  const ratio = before / after;
  return { width: width * ratio ** share, lengthening: ratio ** (1 - share) };
}
